"""The form for looking at: as a solid with its tapes, as views, as data."""

from __future__ import annotations

import json

import numpy as np
from numpy.typing import NDArray

from tapeline.export.solid import Drawn, Solid
from tapeline.export.view import SIDES, view
from tapeline.form import Form

__all__ = ["form_document", "solid", "views"]

CLOTH = (214, 200, 176)
"""The stand's cover: linen."""
TAPED = (160, 40, 40)
"""Lines of tapes that were taken."""
ESTIMATED = (50, 90, 160)
"""Lines of those that were not."""
MM_PER_DOT = 1.6
GAP_MM = 40.0


def form_document(made: Form) -> str:
    """Landmarks, levels and tapes as JSON, in mm and radians; the mesh is in the glTF file."""
    return json.dumps(
        {
            "figure": str(made.figure),
            "arms": round(made.arms, 6),
            "residual_mm": round(made.residual_mm, 4),
            "levels_mm": {name: round(height, 2) for name, height in made.levels.items()},
            "points_mm": {name: np.round(point, 2).tolist() for name, point in made.points.items()},
            "tapes": {
                name: {
                    "given": reading.given,
                    "wanted": round(reading.wanted, 4),
                    "read": round(reading.read, 4),
                    "line_mm": np.round(reading.line, 2).tolist(),
                }
                for name, reading in made.readings.items()
            },
        },
        indent=2,
    )


def solid(made: Form) -> Solid:
    """The form in linen, with the lines of its tapes."""
    colours = np.tile(np.array(CLOTH, np.uint8), (len(made.vertices), 1))
    lines = tuple(
        Drawn(name, reading.line, TAPED if reading.given else ESTIMATED)
        for name, reading in made.readings.items()
        if name not in {"height", "shoulder_slope"}
    )
    return Solid("form", made.vertices, made.triangles, colours, lines)


def views(made: Form) -> NDArray[np.uint8]:
    """Front, left side and back beside each other."""
    solids = [solid(made)]
    points = np.vstack([solid.vertices for solid in solids])
    low, high = points[:, 1].min() - GAP_MM, points[:, 1].max() + GAP_MM
    shown = []
    for side in ("front", "left", "back"):
        across = points[:, 0] if side != "left" else points[:, 2]
        reach = float(np.abs(across).max()) + GAP_MM
        shown.append(view(solids, SIDES[side], MM_PER_DOT, (-reach, reach, low, high)))
    return np.concatenate(shown, axis=1)

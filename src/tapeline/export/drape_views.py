"""A garment at rest on the form, for looking at: coloured by what was read at each place, with its seams as lines."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, replace
from itertools import pairwise
from typing import Any

import numpy as np
from numpy.typing import NDArray

from tapeline.drape import Draped
from tapeline.export.form_views import CLOTH
from tapeline.export.lettering import lettered
from tapeline.export.shades import Scale, scale_for
from tapeline.export.solid import Drawn, Solid
from tapeline.export.view import SIDES, view

__all__ = ["MAPS", "drape_places", "drape_solids", "drape_views", "legend"]

Array = NDArray[np.float64]

SEAM = (26, 26, 26)
INSIDE = (150, 150, 150)
"""The wrong side of the cloth, where one looks into a sleeve or under the hem."""
BEHIND_MM = 4.0
"""The form is shown so much smaller: triangles are flat, and the form's bulge would come through between corners."""
FAR_MM = 999.0
"""Distances are only measured near the form; a place further off has a number beyond this."""
MM_PER_DOT = 1.3
GAP_MM = 40.0
EDGES = ("neckline", "hem", "crease", "armhole")
"""Edges of pieces that may lie open: drawn where no seam is."""


@dataclass(frozen=True, slots=True)
class Map:
    """What may be shown in colours."""

    title: str
    unit: str
    means: str
    read: Callable[[Draped], Array]
    """The value at each node."""


MAPS: Mapping[str, Map] = {
    "round": Map(
        "Stretch across the cloth (round the body)",
        "%",
        "0 is as cut; below 0 the cloth is pushed together",
        lambda draped: draped.strain.across * 100,
    ),
    "along": Map(
        "Stretch along the cloth (down the body)",
        "%",
        "0 is as cut; below 0 the cloth is pushed together",
        lambda draped: draped.strain.along * 100,
    ),
    "strongest": Map(
        "Strongest stretch, in whichever direction", "%", "0 is as cut", lambda draped: draped.strain.most * 100
    ),
    "air": Map("Air between cloth and form", "mm", "0 lies on the form", lambda draped: draped.near),
    "pressure": Map(
        "How hard the cloth presses on the form",
        "Pa",
        "0 hangs free or only lies on the form",
        lambda draped: draped.pressure * 1000,
    ),
}
"""What may be shown, by the word for it."""


def _scale(draped: Draped, name: str) -> tuple[Array, Scale]:
    values = MAPS[name].read(draped)
    if name != "air" or values.max() < FAR_MM:
        return values, scale_for(values)
    known = scale_for(values[values < FAR_MM])
    return values, replace(known, most=float(values.max()))


def legend(draped: Draped, name: str) -> str:
    """The colours in one sentence of words and numbers."""
    shown, (values, scale) = MAPS[name], _scale(draped, name)
    words = scale.words(f" {shown.unit}")
    far = values >= FAR_MM if name == "air" else np.zeros(len(values), bool)
    reach = f"{values[~far].min():.1f} to {values[~far].max():.1f} {shown.unit} in all"
    if far.any():
        reach += f", and {far.sum()} of {len(values)} nodes further off than is measured"
    return f"pale is {words[0]}, dark is {words[-1]}; {shown.means}; {reach}"


def drape_solids(draped: Draped, name: str) -> list[Solid]:
    """The form, the garment coloured by a map with its seams and open edges, and the garment's wrong side."""
    values, scale = _scale(draped, name)
    form = Solid("form", draped.form.vertices, draped.form.triangles, _plain(CLOTH, len(draped.form.vertices)))
    form = Solid(form.name, form.vertices - BEHIND_MM * form.normals, form.triangles, form.colours)
    title = f"garment: {MAPS[name].title}; {legend(draped, name)}"
    lines = tuple(Drawn(seam, draped.x[nodes], SEAM) for seam, nodes in _lines(draped))
    # A shaded map would be read wrongly: dark is much, not turned away from the light.
    garment = Solid(title, draped.x, draped.faces, scale.colours(values), lines, shaded=False)
    inside = Solid("garment, wrong side", draped.x, draped.faces[:, [0, 2, 1]], _plain(INSIDE, len(draped.x)))
    return [form, garment, inside]


def drape_views(draped: Draped, name: str) -> NDArray[np.uint8]:
    """Front, left side and back beside each other at one scale; title above, the colours with their values below."""
    solids = drape_solids(draped, name)
    points = np.vstack([solid.vertices for solid in solids])
    low, high = draped.x[:, 1].min() - GAP_MM, points[:, 1].max() + GAP_MM
    shown, words, at = [], [], 0.0
    for side, says in (("front", "front"), ("left", "from the wearer's left"), ("back", "back")):
        across = points[:, 0] if side != "left" else points[:, 2]
        reach = float(np.abs(across).max()) + GAP_MM
        shown.append(view(solids, SIDES[side], MM_PER_DOT, (-reach, reach, low, high)))
        words.append((says, at + shown[-1].shape[1] / 2, 44.0))
        at += shown[-1].shape[1]
    seen = np.concatenate(shown, axis=1)
    width = seen.shape[1]
    dots = np.concatenate([np.full((70, width, 3), 255, np.uint8), seen, _bar(draped, name, width)])
    dots = lettered(dots, [(f"{MAPS[name].title}, {MAPS[name].unit}", width / 2, 14.0)], 20, bold=True, anchor="mt")
    return lettered(dots, words, 16, anchor="mt")


def _bar(draped: Draped, name: str, width: int) -> NDArray[np.uint8]:
    """The colours with their values, and in words."""
    _, scale = _scale(draped, name)
    dots = np.full((130, width, 3), 255, np.uint8)
    long = round(width * 0.6)
    left = (width - long) // 2
    dots[9:41, left - 1 : left + long + 1] = SEAM
    dots[10:40, left : left + long] = scale.colours(np.linspace(scale.ticks[0], scale.ticks[-1], long))
    places = np.linspace(left, left + long - 1, len(scale.ticks))
    for place in places:
        dots[40:47, round(place)] = SEAM
    ticks = [(text, float(place), 51.0) for text, place in zip(scale.words(), places, strict=True)]
    dots = lettered(dots, ticks, 15, anchor="mt")
    says = legend(draped, name)
    says = says[0].upper() + says[1:] + "."
    lines = "Black lines are seams and open edges; grey is the wrong side; linen is the form."
    return lettered(dots, [(says, width / 2, 80.0), (lines, width / 2, 104.0)], 14, anchor="mt")


def drape_places(draped: Draped) -> dict[str, Any]:
    """The mesh and what was read at each node, for programs: mm, shares and kPa; None where it was not measured."""
    air = np.round(draped.near, 2)
    return {
        "points_mm": np.round(draped.x, 2).tolist(),
        "triangles": draped.faces.tolist(),
        "round": np.round(draped.strain.across, 5).tolist(),
        "along": np.round(draped.strain.along, 5).tolist(),
        "strongest": np.round(draped.strain.most, 5).tolist(),
        "air": [None if value >= FAR_MM else value for value in air.tolist()],
        "pressure": np.round(draped.pressure, 6).tolist(),
        "lines": [{"name": name, "nodes": nodes.tolist()} for name, nodes in _lines(draped)],
    }


def _lines(draped: Draped) -> Iterator[tuple[str, NDArray[np.int64]]]:
    """Seams by name, then the open edges of pieces: runs of nodes, each side of a triangle once."""
    node, sewn = draped.fabric.node, draped.sewn
    of_seam = {name: frozenset(node[pairs].ravel().tolist()) for name, pairs in sewn.seams.items()}
    done: set[tuple[int, int]] = set()
    edges = [
        (panel.name, edge, node[sewn.of(panel.name)[ids]].tolist())
        for panel in sewn.panels
        for (edge, _), ids in panel.edges.items()
    ]
    for seam, nodes in of_seam.items():
        for _, _, run in edges:
            yield from _runs(seam, run, nodes.__contains__, done)
    for panel, edge, run in edges:
        if edge.startswith(EDGES):
            yield from _runs(f"{panel} {edge}", run, lambda _: True, done)


def _runs(
    name: str, run: list[int], belongs: Callable[[int], bool], done: set[tuple[int, int]]
) -> Iterator[tuple[str, NDArray[np.int64]]]:
    """The parts of a run that belong to a line and were not drawn yet."""
    part: list[int] = []
    for one, two in pairwise(run):
        key = (min(one, two), max(one, two))
        if belongs(one) and belongs(two) and key not in done:
            done.add(key)
            part = part or [one]
            part.append(two)
        elif part:
            yield name, np.array(part)
            part = []
    if part:
        yield name, np.array(part)


def _plain(colour: tuple[int, int, int], count: int) -> NDArray[np.uint8]:
    return np.tile(np.array(colour, np.uint8), (count, 1))

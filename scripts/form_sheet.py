"""A sheet of twelve invented wearers from slim to very full, and a tall man among them: scripts/form_sheet.py OUT.png.

For looking at: a form that has its tapes may still be one that no maker would trust.
"""

from __future__ import annotations

import sys
from pathlib import Path

import numpy as np

ROOT = Path(__file__).resolve().parent.parent
sys.path[:0] = [str(ROOT), str(ROOT / "src")]

from tapeline.export.form_views import solid  # noqa: E402 - found only now that the path is set
from tapeline.export.png import png  # noqa: E402 - found only now that the path is set
from tapeline.export.view import SIDES, view  # noqa: E402 - found only now that the path is set
from tapeline.form import fit_form  # noqa: E402 - found only now that the path is set
from tapeline.measures import Figure, Wearer  # noqa: E402 - found only now that the path is set

WORDS = ("upper_chest", "waist", "hip", "shoulder_width", "back_length", "hip_depth", "arm_length")
WEARERS = (
    ("slim woman", Figure.WOMAN, 80, 79, 61, 87, 37, 40.5, 20.5, 59),
    ("small woman", Figure.WOMAN, 84, 81, 68, 90, 36, 36.5, 18, 51),
    ("woman of the middle", Figure.WOMAN, 92, 88, 75, 99, 39, 40.5, 20.5, 58),
    ("tall woman", Figure.WOMAN, 92, 88, 74, 101, 41, 45.5, 23.5, 66),
    ("full hips", Figure.WOMAN, 88, 85, 72, 118, 38, 40, 21, 57),
    ("full bust", Figure.WOMAN, 108, 94, 80, 104, 39, 40.5, 20, 58),
    ("full woman", Figure.WOMAN, 112, 104, 98, 116, 41, 42, 21, 58),
    ("fuller woman", Figure.WOMAN, 128, 114, 118, 132, 43, 43, 22, 58),
    ("very full woman", Figure.WOMAN, 146, 128, 136, 150, 45, 44, 23, 60),
    ("man of the middle", Figure.MAN, 102, 103, 88, 101, 46, 46, 20, 65),
    ("tall man", Figure.MAN, 100, 102, 84, 99, 48, 51, 23, 73),
    ("very full man", Figure.MAN, 132, 128, 134, 124, 49, 49, 21, 65),
)
"""Name, figure, fullest girth, then `WORDS`, in cm. All invented."""
MM_PER_DOT = 4.0
COLUMNS = 3
BOX = (760.0, 520.0)
"""Half the width of a view from front or back, and from the side, mm."""


def sheet() -> np.ndarray[tuple[int, ...], np.dtype[np.uint8]]:
    """Front, side and back of each, three wearers a row, in the order of `WEARERS`."""
    shown = []
    for name, figure, fullest, *others in WEARERS:
        tapes = dict(zip((figure.fullest, *WORDS), (10.0 * float(cm) for cm in (fullest, *others)), strict=True))
        form = fit_form(Wearer(name, figure, tapes))
        body = solid(form)
        low = form.levels["hip"] - 480
        views = [
            view([body], SIDES[side], MM_PER_DOT, (-half, half, low, low + 1300))
            for side, half in (("front", BOX[0]), ("left", BOX[1]), ("back", BOX[0]))
        ]
        print(f"{name}: {form.residual_mm:.3f} mm off at most, {form.inverted} inverted")
        shown.append(np.concatenate(views, axis=1))
    rows = [np.concatenate(shown[i : i + COLUMNS], axis=1) for i in range(0, len(shown), COLUMNS)]
    return np.concatenate(rows, axis=0)


if __name__ == "__main__":
    if len(sys.argv) != 2:
        sys.exit("form_sheet: scripts/form_sheet.py OUT.png")
    Path(sys.argv[1]).write_bytes(png(sheet()))

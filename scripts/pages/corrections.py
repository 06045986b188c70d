"""docs/images/correction-*.svg: what each correction changes, laid over the garment as it was."""

from __future__ import annotations

from collections.abc import Iterable
from functools import reduce
from html import escape

from scripts.pages.drawn import INK, MARK, line, svg
from tapeline.alter import unfold
from tapeline.docket import docket_from_text
from tapeline.geometry import Rigid, Vector
from tapeline.pattern import Garment
from tapeline.project import draw_garment

__all__ = ["corrections"]

GAP, LEAST_WIDE = 40.0, 800.0
"""So that all pictures have about the same scale."""
SHOWN = {
    "sloping_shoulders": (1.5, ("back", "front")),
    "square_shoulders": (1.5, ("back", "front")),
    "left_shoulder_lower": (2, ("back", "front")),
    "forward_shoulders": (1.5, ("back", "front", "sleeve")),
    "full_bust": ((1, 2), ("back", "front")),
    "rounded_back": (2, ("back",)),
    "erect_back": (1.5, ("back",)),
    "shoulder_blades": (1, ("back",)),
    "sway_back": (2, ("back",)),
    "full_waist": (3, ("front",)),
    "large_arm": (4, ("sleeve",)),
}
"""By how many centimetres each is shown, and on which pieces; a full bust by width and length."""
WEARER = """
[wearer]
figure = "woman"
size = "92"
[wearer.tapes]
upper_chest = 87
[garment]
style = "tee"
waist = 1
"""


def corrections() -> dict[str, str]:
    """Every picture, by its file's name."""
    usual = _garment("")
    return {
        f"correction-{key.replace('_', '-')}.svg": _picture(key, usual, _garment(_said(key, by)), names)
        for key, (by, names) in SHOWN.items()
    }


def _said(key: str, by: object) -> str:
    value = "{{ width = {}, length = {} }}".format(*by) if isinstance(by, tuple) else by
    return f"[garment.corrections]\n{key} = {value}\n"


def _garment(corrected: str) -> Garment:
    return draw_garment(docket_from_text(WEARER + corrected, "corrected.toml"))[0]


def _picture(key: str, usual: Garment, corrected: Garment, names: Iterable[str]) -> str:
    """The pieces as they were, dashed, and corrected; backs are laid on each other at the hip line."""
    lines, x = [], GAP
    higher = usual.points["back.hip_level"].y - corrected.points["back.hip_level"].y
    whole = reduce(unfold, names, usual) if key == "left_shoulder_lower" else usual
    pairs = [
        (
            whole.piece(name).seam_line,
            corrected.piece(name).seam_line.moved(Rigid.shift(Vector(0, higher if name == "back" else 0))),
        )
        for name in names
    ]
    top = max(knot.y for pair in pairs for path in pair for knot in path.knots)
    low = min(knot.y for pair in pairs for path in pair for knot in path.knots)
    for pair in pairs:
        knots = [knot for path in pair for knot in path.knots]
        flip = Rigid(1, 0, 0, -1, x - min(knot.x for knot in knots), top + GAP)
        lines.append(line(pair[0].moved(flip), INK, 2.4, ' stroke-dasharray="14 8"'))
        lines.append(line(pair[1].moved(flip), MARK, 3.4))
        x += max(knot.x for knot in knots) - min(knot.x for knot in knots) + GAP
    says = f"{escape(key.replace('_', ' ').capitalize())}: the pieces as they were, dashed, and as they are corrected"
    return svg(max(x, LEAST_WIDE), top - low + 2 * GAP, says, lines)

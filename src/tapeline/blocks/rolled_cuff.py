"""The rolled cuff: a short sleeve cut on below its edge, folded inside once and turned back over itself.

Below the edge come the cuff's outer layer and its inner one, each a mirror image of what lies above its fold, so that
all layers of a slanting seam lie on each other. A fold is straight; where the seams slant, it meets its other end in a
point under the arm, as wide as the two slants. Rules: common practice in the trade, no published source.
"""

from __future__ import annotations

from dataclasses import dataclass

from tapeline.draft import Draft, Drawn, Place, Sheet, part_from, turned
from tapeline.lengths import Length, cm
from tapeline.pattern import Mark

__all__ = ["IN_A_POINT", "TURNED_IN", "EndedSleeve", "rolled_cuff"]

TURNED_IN = cm(1)
"""Above the sleeve's edge, inside, the inner layer is turned under and stitched: the cuff hides the stitches."""
LEAST_ABOVE = cm(1)
"""Of the underarm seam, above what the cuff covers."""
MOST_SLANT_MM = 9.0
"""On 10 cm of each underarm seam: more, and the edge has a point under the arm that shows."""
TEN_MM = 100.0
IN_A_POINT = "the fold of a rolled cuff is straight, so that it can be folded; it meets itself in a point under the arm"


@dataclass(frozen=True, slots=True)
class EndedSleeve:
    """Both underarm seams as far as there is cloth, the edge at their ends, and where the cloth is folded."""

    front: Drawn
    back: Drawn
    hem: Drawn
    marks: tuple[Mark, ...] = ()


def rolled_cuff(d: Draft, s: Sheet, width: Length, seams: tuple[Drawn, Drawn], cap_foot: Place) -> EndedSleeve:
    """The cuff below a straight edge, at whose ends both underarm seams end: the front one, then the back one."""
    front, back = seams
    d.require(
        "cuff-too-deep",
        cap_foot.reading_down_to(front.end).length,
        width + LEAST_ABOVE,
        says="the cuff, turned back, would cover the whole underarm seam",
        where="garment.sleeve.end.rolled",
        hint="make garment.sleeve.end.rolled smaller, or garment.sleeve.length longer",
    )
    slant = abs(front.path.arrives.x / front.path.arrives.y) * TEN_MM
    d.remark(
        "rolled-edge-pointed",
        Length(slant, "slant_on_10_cm"),
        above=Length(MOST_SLANT_MM),
        says="the sleeve comes in so much that the straight edge of its cuff has a point under the arm",
        where="garment.sleeve.shape",
        hint='make garment.sleeve.shape "easy" or "straight"',
    )
    s.section("The rolled cuff")
    corners = (
        s.point("front_edge", "The front underarm seam at the sleeve's edge", front.end),
        s.point("back_edge", "The back underarm seam at the sleeve's edge", back.end),
    )
    edge = s.straight("cuff_edge", "The sleeve's edge: turned back here, last of all", *corners)
    level = s.point("cuff_covers", "As far up as the cuff covers the sleeve", corners[0].up(width))
    sides: list[Drawn] = []
    folds: list[Place] = []
    for name, seam in (("front", front), ("back", back)):
        start = s.point(f"{name}_covered", "On the underarm seam", seam.crossing_level(level))
        covered = part_from(s, f"{name}_under_cuff", "What the cuff covers of the seam", seam, start)
        outer = turned(s, f"{name}_outer", "Its mirror image about the edge", covered.reversed, edge)
        folds.append(s.point(f"{name}_fold", "The upper edge of the cuff, when it is worn", outer.end))
        sides += [outer]
    fold = s.straight("cuff_fold", "The cuff's own edge: the inner layer is folded in here", *folds)
    inner = [
        turned(s, f"{name}_inner", "The mirror image of the outer layer, about the fold", outer.reversed, fold)
        for name, outer in zip(("front", "back"), sides, strict=True)
    ]
    whole = [
        s.joined(f"underarm_{name}_cuff", "The underarm seam with both layers of the cuff", seam, outer, under)
        for name, seam, outer, under in zip(("front", "back"), (front, back), sides, inner, strict=True)
    ]
    ends = [
        s.point(f"{name}_cuff_end", "Where the inner layer comes up to the edge again", one.end)
        for name, one in zip(("front", "back"), whole, strict=True)
    ]
    hem = s.straight("cuff_hem", "Turned under by 1 and stitched inside, above the edge", *ends)
    return EndedSleeve(whole[0], whole[1], hem, (Mark("cuff_edge", edge.path), Mark("cuff_fold", fold.path)))

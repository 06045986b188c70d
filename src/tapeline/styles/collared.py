"""A collar on a top that opens: what its neckline must be, and how collar and facing are sewn."""

from __future__ import annotations

from tapeline.blocks.collar import Collar
from tapeline.blocks.neck_shapes import STRAIGHT, NeckLine
from tapeline.draft import edge, seam
from tapeline.lengths import Length
from tapeline.pattern import EdgeRef, Seam
from tapeline.problems import InputError, Problem, Severity
from tapeline.styles.top import NecklineChoices

__all__ = ["collar_seams", "facing_seams", "no_point", "placket_seams"]


TURN_OF_CLOTH = "the upper collar is a little larger, so that it goes over the turned edge and draws the seam under"


def no_point(c: NecklineChoices) -> None:
    """A collar follows a round neckline; raises `InputError` (`collar-on-v`) for another."""
    if c.shape.fullness == STRAIGHT or c.shape.line is not NeckLine.SWEEP:
        raise InputError(
            Problem(
                "collar-on-v",
                Severity.ERROR,
                "a collar is drawn for a round neckline: on a v it would end askew, round a corner it would stand up",
                "garment.neckline.shape",
                "choose round or scoop in garment.neckline.shape. Nothing was drafted.",
            )
        )


def collar_seams(made: Collar, *, lap: EdgeRef | None, before: EdgeRef | None = None) -> tuple[Seam, ...]:
    """Collar to neckline; a stand goes on over the lap, a collar without one ends at the centre front.

    Args:
        made: The collar.
        lap: The upper edge of what laps over the centre, walked to the centre.
        before: What the neckline has between the front and the centre: the top of a placket, walked from the centre.
    """
    round_the_neck = (
        edge("back", "neckline"),
        edge("front", "neckline").backward,
        *(() if before is None else (before.backward,)),
    )
    ends = layer_seams(made)
    if made.stand is None:
        return (seam("neckline", edge("collar", "neckline").backward, *round_the_neck), *ends)
    over = () if lap is None else (lap.backward,)
    return (
        seam("neckline", edge("stand", "neckline").backward, *round_the_neck, *over),
        seam("collar", edge("collar", "stand").backward, edge("stand", "collar")),
        seam("stand_end", edge("stand", "front_end"), edge("stand", "front_end")),
        *ends,
    )


def layer_seams(made: Collar) -> tuple[Seam, ...]:
    """Upper layer to under layer, the upper one a little longer round the edge; both are caught in one seam."""
    if made.under is None:
        return (
            seam("collar_outer", edge("collar", "outer"), edge("collar", "outer")),
            seam("collar_end", edge("collar", "front_end"), edge("collar", "front_end")),
        )
    caught = "stand" if made.stand else "neckline"

    def over(name: str, line: str) -> Seam:
        longer = Length(made.leaf.edge(line).length - under.edge(line).length, "turn_of_cloth")
        return seam(name, edge("collar", line), edge("under_collar", line), ease=longer, reason=TURN_OF_CLOTH)

    under = made.under
    return (
        over("collar_outer", "outer"),
        over("collar_end", "front_end"),
        seam("under_collar", edge("under_collar", caught), edge("collar", caught)),
    )


def facing_seams() -> tuple[Seam, ...]:
    """The facing, folded back, meets neckline and lap from within."""
    return (
        seam("facing_neckline", edge("front", "facing_neckline"), edge("front", "neckline").backward),
        seam("facing_lap", edge("front", "facing_lap").backward, edge("front", "lap")),
    )


def placket_seams() -> tuple[Seam, ...]:
    """Each strip to its side of the slit and to the slit's foot, and folded onto itself."""
    foot = edge("front", "placket_foot")
    return (
        seam("placket", edge("placket", "placket"), edge("front", "placket").backward),
        seam("placket_turned", edge("placket", "placket_turned").backward, edge("placket", "placket")),
        seam("placket_foot", edge("placket", "foot"), foot.backward),
        seam("placket_foot_lap", edge("placket", "foot_lap"), foot.backward),
        seam(
            "placket_foot_turned", edge("placket", "foot_turned"), edge("placket", "foot"), edge("placket", "foot_lap")
        ),
        seam("placket_facing", edge("placket", "facing_neckline"), edge("placket", "neckline").backward),
        seam("placket_lap", edge("placket", "facing_lap").backward, edge("placket", "lap")),
    )

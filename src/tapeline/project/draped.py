"""A drafted garment on the wearer's form: draped and read."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import asdict, replace
from typing import TYPE_CHECKING, Any

from tapeline.problems import InputError, Problem, Severity, worst_first
from tapeline.project.drafted import Drafted

if TYPE_CHECKING:
    from tapeline.drape import Draped, Hand

__all__ = ["drape_document", "drape_findings", "drape_garment"]

STRONG_PULL = 0.10
"""Mean stretch round a part of the body beyond which it is felt all day (house rule)."""
SWINGS_MM = 25.0
STANDS_AWAY_MM = 20.0
RIB_ALONG = 0.20
TRUST = (
    "Trust pull where the cloth lies on the form, to about a point, as far as the cloth's own numbers are right.",
    "Do not trust where folds fall, what layers do that lie on each other, armpits, or how a hem curls.",
)


def drape_garment(
    drafted: Drafted,
    side_mm: float | None = None,
    cloth: str = "",
    *,
    washed: bool = False,
    told: Callable[[str], None] | None = None,
) -> Draped:
    """Drape a docket's garment on the wearer's form.

    Args:
        drafted: The garment; one that does not hold together is not draped.
        side_mm: How long the sides of the triangles are; 16 mm where nothing is said.
        cloth: The named cloth it hangs like, where the docket's kind is not one of them.
        washed: The cloth has shrunk by what the docket says after it was cut.
        told: Is called with a few words at each stage; what it raises stops the work.

    Raises `InputError` for what cannot be draped, and when the result would say nothing.
    """
    from tapeline.drape.drape import SIDE_MM, drape
    from tapeline.form import fit_form

    if not drafted.holds:
        says = "the garment does not hold together, so that it cannot be sewn"
        raise InputError(Problem("drape-not-true", Severity.ERROR, says, hint="see tapeline true; nothing was draped"))
    hands = _hands(drafted, cloth, washed=washed)
    tell = told or _silent
    tell("fitting the form")
    form = fit_form(drafted.docket.wearer)
    return drape(drafted.garment, hands, form, SIDE_MM if side_mm is None else side_mm, tell)


def _silent(_: str) -> None:
    """Nobody listens."""


def _hands(drafted: Drafted, cloth: str, *, washed: bool) -> dict[str, Hand]:
    """The docket's stretch on the named cloth's other values; the rib stretches as the style says."""
    from tapeline.drape import hand_of
    from tapeline.drape.cloth import HAND_PULL

    own = drafted.docket.cloth
    shell = hand_of(cloth or own.kind)
    across, along = own.stretch_across / 100, own.stretch_along / 100
    # No cloth stretches by nothing: a way of which the docket says so stretches as the named cloth does.
    shell = shell.stretching(across or shell.across.stretch(HAND_PULL), along or shell.along.stretch(HAND_PULL))
    if washed:
        shell = replace(shell, shrinks_along=own.shrink_length / 100, shrinks_across=own.shrink_width / 100)
    rib = hand_of("rib")
    for seam in drafted.garment.seams:
        if seam.stretch:
            rib = rib.stretching(seam.stretch / 100, RIB_ALONG)
            break
    kinds = {piece.cut.cloth for piece in drafted.garment.pieces}
    return {kind: rib if kind == "rib" else shell for kind in kinds}


def drape_findings(draped: Draped) -> list[Problem]:
    """What the draped garment says in words, worst first."""
    return worst_first(_findings(draped))


def _findings(draped: Draped) -> Iterator[Problem]:
    from tapeline.drape.reading import neck_gap, seams_run, zones

    for zone in zones(draped):
        reading = draped.form.readings.get(draped.form.figure.fullest if zone.name == "chest" else zone.name)
        if reading is None or zone.round <= STRONG_PULL:
            continue
        more = reading.read * zone.round / (1 + zone.round)
        yield Problem(
            "drape-pull",
            Severity.DOUBT,
            f"round the {zone.name} the cloth is stretched by {zone.round:.0%}",
            zone.name,
            f"{more / 10:.1f} cm more round the {zone.name} would take it out: a looser style, or the tape again",
        )
    for runs in seams_run(draped):
        if runs.seam.startswith("side") and abs(runs.forward) > SWINGS_MM:
            way = "forward" if runs.forward > 0 else "back"
            yield Problem(
                "drape-side-swings",
                Severity.DOUBT,
                f"the side seam swings {way} by {abs(runs.forward) / 10:.1f} cm from underarm to hem",
                runs.seam,
                "look at the length of front and back: a rounded back, a full bust or an erect back is a correction",
            )
    gap = neck_gap(draped)
    if gap is not None and gap[0] > STANDS_AWAY_MM:
        yield Problem(
            "drape-neck-gap",
            Severity.DOUBT,
            f"the neckline stands {gap[0]:.0f} mm off the neck on the mean, {gap[1]:.0f} mm at most",
            "neckline",
            "a shorter band, a narrower neckline, or the neck tape again",
        )


def drape_document(draped: Draped) -> dict[str, Any]:
    """Everything that was read, as one JSON object; lengths in mm, stretch as a share, pressure in kPa."""
    from tapeline.drape.reading import hem_falls, neck_gap, seams_run, zones

    falls, gap = hem_falls(draped), neck_gap(draped)
    return {
        "side_mm": draped.side_mm,
        "nodes": draped.fabric.count,
        "cloths": [{"name": hand.name, "weight": hand.weight, "source": hand.source} for hand in draped.sewn.hands],
        "sewn_to_mm": draped.gap_mm,
        "still_changes": draped.change,
        "held_by_nothing": draped.unheld,
        "zones": [asdict(zone) for zone in zones(draped)],
        "hem": asdict(falls) if falls else None,
        "seams": [asdict(runs) for runs in seams_run(draped)],
        "neck_gap": {"mean": gap[0], "most": gap[1]} if gap else None,
        "findings": [p.data for p in drape_findings(draped)],
        "trust": list(TRUST),
    }

"""Slips of pen and unit: what a tape that cannot be right was probably meant to be.

A slip is proposed only when the tape, put right, is one that the other tapes could expect.
"""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from itertools import combinations

from tapeline.measures.estimate import Estimate
from tapeline.measures.figures import Figure
from tapeline.measures.survey import Survey, survey_of
from tapeline.measures.tapes import TAPES
from tapeline.units import Unit

__all__ = ["Slip", "other_unit", "suggested", "suggests", "swapped_by_limits", "swapped_by_survey", "value_slip"]

_BELIEVED = 2.5
"""Standard deviations within which a tape that was put right raises no doubt."""
_SWAP_MAY_COST = 2.0
"""How much further from the mean the tapes may lie with two changed back than with the suspect left out: the suspect
could have been anything, while the swap explains it exactly. By trial: a higher cost takes single slips for swaps."""


@dataclass(frozen=True, slots=True)
class Slip:
    """What probably happened, and the tapes put right."""

    says: str
    hint: str
    put_right: Mapping[str, float]
    """All the tapes as they were probably meant."""
    names: tuple[str, ...]
    """The tapes that it changes."""

    @property
    def changed(self) -> dict[str, float]:
        """Those tapes, put right."""
        return {name: self.put_right[name] for name in self.names}


def other_unit(figure: Figure, tapes: Mapping[str, float], unit: Unit) -> Slip | None:
    """The whole docket in the other unit: at least half of it cannot be, and in the other unit all of it can."""
    lengths = {name: value for name, value in tapes.items() if not TAPES[name].angle}
    changed = {name: value * unit.other.mm / unit.mm for name, value in lengths.items()}
    if 2 * len(_outside(figure, lengths)) < len(lengths) or _outside(figure, changed):
        return None
    example = next(iter(lengths))
    words = {Unit.CM: "centimetres", Unit.INCH: "inches"}
    as_typed = f"{lengths[example] / unit.mm:g}"
    says = (
        f"the docket's unit is {unit.value}, but its tapes read like {words[unit.other]}: "
        f"{example} would be {as_typed} {unit.sign}"
    )
    return Slip(says, f'set unit = "{unit.other.value}"', {**tapes, **changed}, tuple(lengths))


def value_slip(figure: Figure, tapes: Mapping[str, float], name: str, unit: Unit) -> Slip | None:
    """One tape in another unit, or with its decimal mark in another place: the likeliest that could be believed."""
    tape, value = TAPES[name], tapes[name]
    if tape.angle or value <= 0:
        return None
    typed = f"{value / unit.mm:g}"
    times = {
        f"{typed} was read in {_word(unit.other)} and typed as {_word(unit)}": unit.other.mm / unit.mm,
        f"{typed} was read in mm and typed as {_word(unit)}": 1 / unit.mm,
        f"{typed} was read in m and typed as {_word(unit)}": 1000 / unit.mm,
        f"{typed} has its decimal mark too far to the left": 10.0,
        f"{typed} lacks its decimal mark": 0.1,
    }
    survey = survey_of(figure)
    others = {key: v for key, v in tapes.items() if key != name and not _outside(figure, {key: v})}
    best: tuple[float, str, float] | None = None
    for what, factor in times.items():
        meant = value * factor
        if not tape.limits[figure].hold(meant):
            continue
        off = abs(survey.expect(name, others).deviations(meant)) if survey and survey.knows(name) else 0.0
        if off <= _BELIEVED and (best is None or off < best[0]):
            best = off, what, meant
    if best is None:
        return None
    _, what, meant = best
    hint = f"did you mean {tape.show(meant, unit)} (if {what})?"
    return Slip(f"{name} = {what}", hint, {**tapes, name: meant}, (name,))


def swapped_by_limits(figure: Figure, tapes: Mapping[str, float], outside: Sequence[str], unit: Unit) -> Slip | None:
    """Two tapes that changed places, where at least one of them cannot be as it stands."""
    survey = survey_of(figure)
    for one in outside:
        if survey and value_slip(figure, tapes, one, unit):
            continue
        for other in tapes:
            # That a tape within its limits was part of it takes more than limits to say.
            if other == one or TAPES[other].angle or (other not in outside and survey is None):
                continue
            slip = _swap(tapes, one, other, unit)
            if not _outside(figure, slip.changed) and (survey is None or _believed(survey, slip)):
                return slip
    return None


def swapped_by_survey(figure: Figure, tapes: Mapping[str, float], suspect: str, unit: Unit) -> Slip | None:
    """Two tapes that changed places: with them changed back no doubt is left, and no better by leaving out one."""
    survey = survey_of(figure)
    if survey is None:
        return None
    lengths = [name for name in tapes if not TAPES[name].angle and survey.knows(name)]
    pairs = [(one, other) for one, other in combinations(lengths, 2) if not math.isclose(tapes[one], tapes[other])]
    swaps = [swap for pair in pairs if not _outside(figure, (swap := _swap(tapes, *pair, unit)).changed)]
    if not swaps:
        return None
    slip = min(swaps, key=lambda swap: survey.distance(swap.put_right))
    without = survey.distance({name: value for name, value in tapes.items() if name != suspect})
    if survey.distance(slip.put_right) > without + _SWAP_MAY_COST or not _believed(survey, slip):
        return None
    return slip


def _believed(survey: Survey, slip: Slip) -> bool:
    """Whether the tapes put right raise no doubt; tapes that cannot be for another reason are not asked."""
    sound = {name: v for name, v in slip.put_right.items() if TAPES[name].limits[survey.figure].hold(v)}
    return all(abs(off) <= _BELIEVED for off in survey.deviations(sound).values())


def suggested(figure: Figure, tapes: Mapping[str, float], name: str, unit: Unit) -> str:
    """What the other tapes that can be suggest for one: `the other tapes suggest 71 to 79 cm`; empty without survey."""
    survey = survey_of(figure)
    others = {key: value for key, value in tapes.items() if key != name and not _outside(figure, {key: value})}
    if survey is None or not survey.knows(name) or not others:
        return ""
    return suggests(name, survey.expect(name, others), unit)


def suggests(name: str, estimate: Estimate, unit: Unit) -> str:
    """The same of an estimate."""
    low, high = (TAPES[name].show(end, unit) for end in estimate.span())
    return f"the other tapes suggest {low.removesuffix(' ' + unit.sign)} to {high}"


def _swap(tapes: Mapping[str, float], one: str, other: str, unit: Unit) -> Slip:
    put_right = {**tapes, one: tapes[other], other: tapes[one]}
    shown = [f"{name} {TAPES[name].show(put_right[name], unit)}" for name in (one, other)]
    return Slip(
        f"{one} and {other} look as if they had changed places",
        f"did you mean {shown[0]} and {shown[1]}? Otherwise take both again",
        put_right,
        (one, other),
    )


def _outside(figure: Figure, tapes: Mapping[str, float]) -> list[str]:
    return [name for name, value in tapes.items() if not TAPES[name].limits[figure].hold(value)]


def _word(unit: Unit) -> str:
    """A unit as it is spoken: nobody reads in in."""
    return "inches" if unit is Unit.INCH else "cm"

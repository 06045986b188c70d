"""Each tape held against what the wearer's other tapes suggest.

A tape far from what the others suggest is first of all a tape to take again: most such tapes are slips, and some are
wearers who differ from most. So a doubt stops nothing, and an error can be allowed by name:
`allow = ["tape-unlikely:waist"]`.
"""

from __future__ import annotations

import math
from dataclasses import replace

from tapeline.measures.estimate import Estimate
from tapeline.measures.slips import Slip, suggested, suggests, swapped_by_survey, value_slip
from tapeline.measures.survey import Survey, survey_of
from tapeline.measures.tapes import TAPES
from tapeline.measures.wearer import Wearer, allowed
from tapeline.problems import Problem, Severity, worst_first

__all__ = ["DOUBT_FROM", "ERROR_FROM", "doubts", "suggestion"]

DOUBT_FROM = 2.5
"""Standard deviations from what the other tapes suggest: one honest tape in eighty lies further off."""
ERROR_FROM = 4.0
"""The same: one honest tape in some ten thousand lies further off."""


def doubts(wearer: Wearer) -> list[Problem]:
    """The tapes to take again, worst first.

    The one tape whose removal makes the rest most likely is named; then the rest is looked at again without it, so that
    one slip does not cast doubt on seven good tapes. (Leaving out a tape brings the rest closer to the mean by exactly
    the square of its own standard deviations, so the tape to name is the one furthest off.)

    Codes: `tape-doubt` (a doubt), `tape-unlikely` (an error; a doubt where the survey has no experience),
    `tapes-swapped` (the one or the other), `survey-extrapolates` (a note). What the maker allows is a note.

    >>> from tapeline.measures import size_wearer
    >>> marit = size_wearer("88").with_tape("waist", 820)
    >>> print(doubts(marit)[0])
    error: waist is 82 cm; wearers with the other tapes have 70.2 cm on average  [tape-unlikely]
      in tapes.waist
      hint: take the waist again: the other tapes suggest 64.5 to 75.9 cm; if it is right, allow "tape-unlikely:waist"
    """
    survey = survey_of(wearer.figure)
    if survey is None:
        return []
    # Outside the limits a tape has been spoken of already, and was allowed: the others are looked at without it.
    rest = {
        name: value
        for name, value in wearer.tapes.items()
        if survey.knows(name) and TAPES[name].limits[wearer.figure].hold(value)
    }
    problems = []
    beyond = False
    while rest:
        expected = {name: _expected(survey, name, rest) for name in rest}
        suspect = _suspect(survey, rest, expected)
        if suspect is None:
            break
        swap = swapped_by_survey(wearer.figure, rest, suspect, wearer.unit)
        names = swap.names if swap else (suspect,)
        beyond = beyond or expected[suspect].extrapolates
        error = abs(expected[suspect].deviations(rest[suspect])) > ERROR_FROM and not beyond
        rest_without = {name: value for name, value in rest.items() if name not in names}
        if swap:
            problem = _swapped(swap, wearer, rest_without, error=error)
        else:
            problem = _doubt(wearer, suspect, rest, expected[suspect], error=error)
        problems.append(allowed(problem, suspect, wearer.allow))
        rest = rest_without
    if beyond or survey.extrapolates(rest):
        problems.append(_outside_survey(wearer))
    return worst_first(problems)


def suggestion(wearer: Wearer, name: str) -> Estimate | None:
    """What the wearer's other tapes suggest for one tape, taken or not; None where no survey knows.

    >>> from tapeline.measures import size_wearer
    >>> round(suggestion(size_wearer("88"), "waist").mm)
    702
    """
    survey = survey_of(wearer.figure)
    return survey.expect(name, wearer.tapes) if survey and survey.knows(name) else None


def _suspect(survey: Survey, tapes: dict[str, float], expected: dict[str, Estimate]) -> str | None:
    """The tape to take again: of the doubtful ones the furthest off that leaves no doubt behind, or the furthest off.

    Inside the survey the two are nearly always the same. Outside it the spread depends on who the others speak of, and
    one slip can make good tapes look further off than itself.
    """
    off = {name: abs(expected[name].deviations(value)) for name, value in tapes.items()}
    doubtful = sorted((name for name in tapes if off[name] > DOUBT_FROM), key=lambda name: -off[name])
    for name in doubtful:
        rest = {key: value for key, value in tapes.items() if key != name}
        if all(abs(_expected(survey, key, rest).deviations(value)) <= DOUBT_FROM for key, value in rest.items()):
            return name
    return doubtful[0] if doubtful else None


def _expected(survey: Survey, name: str, tapes: dict[str, float]) -> Estimate:
    """What the others suggest for one tape; `extrapolates` when they speak of somebody outside the survey.

    Out there nobody was measured, and a normal distribution pulls every tape back to its middle: so the spread grows
    with how far the others are from the middle on average (1 for the people of the survey).
    """
    estimate = survey.expect(name, tapes)
    others = {key: value for key, value in tapes.items() if key != name}
    fullest = survey.figure.fullest
    beyond = survey.extrapolates({fullest: others.get(fullest, survey.expect(fullest, others).value)})
    if not beyond:
        return replace(estimate, extrapolates=False)
    wider = max(1.0, math.sqrt(survey.distance(others) / len(others)))
    return replace(estimate, spread=estimate.spread * wider, extrapolates=True)


def _doubt(wearer: Wearer, name: str, rest: dict[str, float], expected: Estimate, *, error: bool) -> Problem:
    mean = TAPES[name].show(expected.value, wearer.unit)
    says = f"{name} is {wearer.show(name)}; wearers with the other tapes have {mean} on average"
    hint = f"take the {name.replace('_', ' ')} again: {suggests(name, expected, wearer.unit)}"
    slip = value_slip(wearer.figure, rest, name, wearer.unit)
    code, severity = ("tape-unlikely", Severity.ERROR) if error else ("tape-doubt", Severity.DOUBT)
    hint = f"{hint}; {slip.hint}" if slip else hint
    if error:
        hint = f'{hint}; if it is right, allow "{code}:{name}"'
    return Problem(code, severity, says, f"tapes.{name}", hint)


def _swapped(swap: Slip, wearer: Wearer, others: dict[str, float], *, error: bool) -> Problem:
    severity = Severity.ERROR if error else Severity.DOUBT
    # Both are in question, so the others speak for each of them.
    spans = [f"{name}: {suggested(wearer.figure, others, name, wearer.unit)}" for name in swap.names]
    hint = f"{swap.hint}; {'; '.join(spans)}"
    return Problem("tapes-swapped", severity, swap.says, f"tapes.{swap.names[0]}", hint)


def _outside_survey(wearer: Wearer) -> Problem:
    fullest = wearer.figure.fullest
    return Problem(
        "survey-extrapolates",
        Severity.NOTE,
        f"{fullest} {wearer.show(fullest)} lies outside the people of the survey: "
        "estimates and doubts continue its lines and are less sure than they say",
        f"tapes.{fullest}",
        "take the optional tapes that matter to the garment instead of having them estimated",
    )

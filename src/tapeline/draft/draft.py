"""A `Draft` is one garment in the making: the wearer's tapes, the sizes found, and every step taken."""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field, replace
from itertools import pairwise
from typing import Any, TypeVar

from tapeline.draft.correcting import refuse_contrary, refuse_undrawn, refuse_uneased
from tapeline.draft.place import Reading, needs_of
from tapeline.draft.sheet import Sheet
from tapeline.geometry import solve, solve_one
from tapeline.lengths import Length
from tapeline.measures import TAPES, Estimate, Wearer, survey_of
from tapeline.pattern import (
    Cloth,
    Corrections,
    Garment,
    Girth,
    Join,
    Piece,
    Seam,
    Size,
    Source,
    Step,
    StepKind,
    chosen_lengths,
)
from tapeline.problems import InputError, Problem, Severity

__all__ = ["Draft"]

Made = TypeVar("Made")

_BESIDE_THE_FRAME = {"armhole_depth": "body_armhole_depth"}
"""Labels of tapes whose name the frame needs for the size with ease in it."""


@dataclass
class Draft:
    """Everything drawn so far for one wearer.

    The one thing that grows in Tapeline: pages add to it in order, and what it holds is taken as values at the end.
    """

    wearer: Wearer
    by_hand: Mapping[str, float] = field(default_factory=dict)
    """Sizes in mm that the docket sets in place of a rule."""
    steps: list[Step] = field(default_factory=list)
    sizes: dict[str, Size] = field(default_factory=dict)
    notes: list[Problem] = field(default_factory=list)
    """What the pages found worth saying while drawing."""
    corrections: Corrections = field(default_factory=Corrections)
    """What a fitting showed of the wearer."""
    corrected: set[str] = field(default_factory=set)
    """Keys of the corrections that a page has drawn."""
    eases: dict[str, tuple[Length, str]] = field(default_factory=dict)
    """By seam: how much longer a correction makes its first side, and why."""
    cloth: Cloth = field(default_factory=Cloth)
    """What the garment is cut from."""

    def sheet(self, name: str) -> Sheet:
        """Paper for one piece."""
        return Sheet(self.record, name)

    def section(self, title: str) -> None:
        """Begin a group of sizes."""
        self.record(Step(StepKind.SECTION, title, title))

    def record(self, step: Step) -> None:
        """Add a step to the construction."""
        self.steps.append(step)

    def require(self, code: str, larger: Length, smaller: Length, *, says: str, where: str, hint: str) -> None:
        """Stop where a body or a size set by hand breaks a rule: never a crossed outline, never a silent clamp."""
        if larger.mm <= smaller.mm:
            both = f"{larger.equation()}, and {smaller.equation()}"
            raise InputError(Problem(code, Severity.ERROR, f"{says}: {both}", where, f"{hint}. Nothing was drafted."))

    def remark(self, code: str, value: Length, above: Length, *, says: str, where: str, hint: str) -> None:
        """Say something where a choice goes past what the rule is made for."""
        if value.mm > above.mm:
            self.notes.append(Problem(code, Severity.DOUBT, f"{says}: {value.equation()}", where, hint))

    def note(self, code: str, says: str, *, where: str, hint: str) -> None:
        """Say something that is to be known, and is no doubt."""
        self.notes.append(Problem(code, Severity.NOTE, says, where, hint))

    # Sizes ------------------------------------------------------------------------------------------------------

    def tape(self, name: str) -> Length:
        """A tape of the wearer, by name; every required tape is there."""
        label = self._tape_label(name)
        length = Length(self.wearer[name], label)
        return self._keep(Size(label, f"{TAPES[name].title}, taped", length, Source.TAPED))

    def chosen(self, choices: Any) -> None:  # noqa: ANN401 - any style's choices
        """Write down what the maker chose, before it is used."""
        self.section("The choices")
        for length, says in chosen_lengths(choices):
            self._keep(Size(length.name, says.capitalize(), length, Source.CHOICE))
        for one in self.corrections.made():
            self._keep(Size(one.name, one.says.capitalize(), one.by, Source.CHOICE))
        refuse_contrary(self.corrections)

    def correction(self, key: str) -> Length:
        """By how much something is corrected, under its own name; nothing unless the docket says so.

        A page that asks is a page that draws it: a correction that nobody asked for is refused at the end.
        """
        self.corrected.add(key)
        return self.corrections.one(key).by

    def eased(self, seam: str, longer: Length, reason: str) -> None:
        """The first side of a seam is longer than the second by a correction, and why."""
        self.eases[seam] = (longer, reason)

    def taped(self, name: str) -> bool:
        """Whether that tape was taken."""
        return self.wearer.given(name)

    def body(self, name: str, says: str) -> Length:
        """A size of the body: its tape when taken, otherwise what the survey expects of such a wearer."""
        label = self._tape_label(name)
        if self.wearer.given(name):
            return self._keep(Size(label, says, Length(self.wearer[name], label), Source.TAPED))
        estimate = self._estimate(name)
        size = Size(label, says, Length(estimate.mm, label), Source.SURVEY, estimate.sd_mm)
        tapes = self._surveyed_tapes()
        return self._keep(size, Reading(size.length, ("expected by the survey from all tapes that it knows",), tapes))

    def _tape_label(self, name: str) -> str:
        """A man's bust is a chest; where the frame has a size of the same name, the tape gets another."""
        return self.wearer.figure.fullest if name == "bust" else _BESIDE_THE_FRAME.get(name, name)

    def _surveyed_tapes(self) -> tuple[str, ...]:
        """Labels of the tapes that the survey expects others from, each written down."""
        survey = survey_of(self.wearer.figure)
        used = [name for name in self.wearer.tapes if survey is not None and name in survey.predictors]
        return tuple(self._angle(name) if TAPES[name].angle else self.tape(name).name for name in used)

    def expected_at(self, upper_chest: Length, name: str) -> Length:
        """What the survey expects of a wearer with that upper chest, of whom nothing else is known."""
        survey = survey_of(self.wearer.figure)
        if survey is None:
            raise self._no_estimate(name)
        found = survey.expect(name, {"upper_chest": upper_chest.mm})
        label = f"usual_{name}"
        says = f"What the survey expects at an upper chest of {upper_chest.show()}, where both frames agree"
        return self._keep(Size(label, says, Length(found.mm, label), Source.SURVEY))

    def _estimate(self, name: str) -> Estimate:
        survey = survey_of(self.wearer.figure)
        if survey is None or not survey.knows(name):
            raise self._no_estimate(name)
        return survey.expect(name, self.wearer.tapes)

    def _no_estimate(self, name: str) -> InputError:
        words = name.replace("_", " ")
        return InputError(
            Problem(
                "no-estimate",
                Severity.ERROR,
                f"there is no tape for {words}, and no survey of the figure {self.wearer.figure} to estimate it from",
                where=f"tapes.{name}",
                hint=f"take the tape: {TAPES[name].take} Nothing was drafted.",
            )
        )

    def size(
        self,
        name: str,
        says: str,
        rule: Length | Reading,
        *,
        estimate: Length | None = None,
        taped: Callable[[], Length | Reading] | None = None,
        tape: str = "",
        source: str = "",
    ) -> Length:
        """A size of the frame: by hand, else from its tape, else from the survey's estimate, else by the rule.

        `rule` is the rule of proportion; `estimate` a formula of surveyed sizes, or None where the docket asks for
        the rule; `taped` makes the size from the tape named `tape` (its own name unless given).
        """
        tape = tape or name
        answers: list[tuple[Source, Length | Reading]] = [(Source.RULE, rule)]
        if estimate is not None:
            answers.insert(0, (Source.SURVEY, estimate))
        if taped is not None and self.wearer.given(tape):
            answers.insert(0, (Source.TAPED, taped()))
        if name in self.by_hand:
            answers.insert(0, (Source.BY_HAND, Length(self.by_hand[name])))
        chosen, answer = answers[0]
        length = _length(answer).named(name)
        others = tuple(_length(other).named(which.value) for which, other in answers[1:])
        spread = self._spread(length) if chosen is Source.SURVEY else None
        return self._keep(Size(name, says, length, chosen, spread, others), answer, source)

    def measured(self, name: str, says: str, reading: Reading | Length) -> Length:
        """A length read off the paper, or worked out from lengths already found."""
        length = _length(reading).named(name)
        return self._keep(Size(name, says, length, Source.RULE), reading)

    def _keep(self, size: Size, answer: Reading | Length | None = None, source: str = "") -> Length:
        if size.name in self.sizes:
            return self.sizes[size.name].length
        self.sizes[size.name] = size
        how = answer.how if isinstance(answer, Reading) else ()
        needs = answer.needs if isinstance(answer, Reading) else size.length.needs()
        self.record(Step(StepKind.SIZE, size.name, size.says, how, (size.length,), needs, source or size.source.value))
        return size.length

    def fall(self, tape: str, run: Length) -> Reading:
        """How far a line at a taped slope falls over a level run."""
        angle = self.wearer[tape]
        said = self.wearer.show(tape)
        return Reading(Length(run.mm * math.tan(angle)), (f"how far {said} falls over ", run), (self._angle(tape),))

    def _angle(self, tape: str) -> str:
        """Write down a taped angle, once; its label."""
        if all(step.label != tape for step in self.steps):
            says, how = f"{TAPES[tape].title}, taped", (self.wearer.show(tape),)
            self.record(Step(StepKind.SIZE, tape, says, how, source=Source.TAPED.value))
        return tape

    def _spread(self, length: Length) -> float | None:
        """The spread of a size that grows out of one estimate: the estimate's, scaled by the formula."""
        spreads = [
            abs(length.slope(name)) * sd
            for name in length.leaves()
            if name in self.sizes and (sd := self.sizes[name].sd_mm) is not None
        ]
        return max(spreads, default=None)

    def garment(
        self,
        style: str,
        *,
        pieces: tuple[Piece, ...],
        seams: tuple[Seam, ...],
        joins: tuple[Join, ...],
        girths: tuple[Girth, ...],
    ) -> Garment:
        """Everything drawn, as values."""
        refuse_undrawn(self.corrections, self.corrected, style)
        sewn = tuple(
            replace(seam, ease=self.eases[seam.name][0], reason=self.eases[seam.name][1])
            if seam.name in self.eases
            else seam
            for seam in seams
        )
        made = Garment(style, pieces, sewn, joins, girths, tuple(self.sizes.values()), tuple(self.steps))
        refuse_uneased(made, self.eases.keys())
        return made

    def again(self, corrections: Corrections) -> Draft:
        """The same wearer's draft, begun anew with other corrections."""
        return Draft(self.wearer, self.by_hand, corrections=corrections, cloth=self.cloth)

    # Trying out -------------------------------------------------------------------------------------------------

    def scratch(self) -> Draft:
        """Paper to try things on; what is drawn there is not kept."""
        return Draft(self.wearer, self.by_hand, sizes=dict(self.sizes), corrections=self.corrections, cloth=self.cloth)

    def found(
        self,
        name: str,
        says: str,
        make: Callable[[Draft, Length], Length],
        equals: Length,
        between: tuple[Length, Length],
    ) -> Reading:
        """The size with which a line drawn on scratch paper comes out at a length."""

        def miss(mm: float) -> float:
            return make(self.scratch(), Length(mm, name)).mm - equals.mm

        mm = solve_one(miss, between[0].mm, between[1].mm, name.replace("_", " "))
        return Reading(Length(mm), (says + " ", equals), needs_of(equals))

    def found_together(
        self,
        names: tuple[str, str],
        says: str,
        make: Callable[[Draft, tuple[Length, Length]], Made],
        misses: Callable[[Made], tuple[Length, Length]],
        *,
        start: tuple[Length, Length],
        slopes: tuple[float, float],
    ) -> tuple[Length, Length]:
        """Two sizes with which what is drawn on scratch paper misses nothing.

        `slopes` say roughly how much longer each comes out for a millimetre more of its size.
        """

        def miss(values: Sequence[float]) -> tuple[float, float]:
            first, second = misses(make(self.scratch(), (Length(values[0], names[0]), Length(values[1], names[1]))))
            return first.mm, second.mm

        what = " and ".join(n.replace("_", " ") for n in names)
        one, two = solve(miss, (start[0].mm, start[1].mm), what, slopes)
        return (
            self.measured(names[0], says.capitalize(), Length(one)),
            self.measured(names[1], says.capitalize(), Length(two)),
        )

    @staticmethod
    def share(at: float, table: Sequence[tuple[float, float]]) -> float:
        """A share read from a table of pairs, in proportion between its rows."""
        at = min(max(at, table[0][0]), table[-1][0])
        (x0, y0), (x1, y1) = next(pair for pair in pairwise(table) if at <= pair[1][0])
        return round(y0 + (y1 - y0) * (at - x0) / (x1 - x0), 3)


def _length(answer: Length | Reading) -> Length:
    return answer.length if isinstance(answer, Reading) else answer

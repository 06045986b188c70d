"""Docket in, garment out: drafted, with everything that was found about it."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property

from tapeline.docket import Docket
from tapeline.draft import Draft
from tapeline.finish import turn_up_doubts
from tapeline.measures import Wearer, doubts
from tapeline.pattern import Cloth, Garment
from tapeline.problems import InputError, Problem, Severity, worst_first
from tapeline.truing import Truing, true

__all__ = ["Drafted", "draft", "draw_garment"]


# Without slots: what is found by truing is worked out once, when it is asked for. A drawing can be shown before that.
@dataclass(frozen=True)
class Drafted:
    """A garment drafted and trued."""

    docket: Docket
    garment: Garment
    about_tapes: tuple[Problem, ...]
    """Doubts about them."""
    about_drafting: tuple[Problem, ...]
    """What the pages found worth saying while drawing."""

    @cached_property
    def notes(self) -> tuple[Problem, ...]:
        """What reading, the tapes, the cloth and drafting gave to say, each at its line of the docket."""
        docket = self.docket
        about_cloth = (*shrinkage(docket.cloth), *turn_up_doubts(self.garment, docket.finish, docket.unit))
        return (*docket.notes, *docket.placed((*self.about_tapes, *about_cloth, *self.about_drafting)))

    @cached_property
    def truing(self) -> Truing:
        """What was found where the garment was looked over."""
        docket = self.docket
        return true(
            self.garment,
            docket.wearer,
            docket.cloth,
            meaning={name: (least.mm, most.mm) for name, (least, most) in docket.style.meaning.items()},
            pull_on=docket.style.pull_on,
            unit=docket.unit,
        )

    @property
    def problems(self) -> tuple[Problem, ...]:
        """Everything to look at, worst first."""
        return tuple(worst_first((*self.notes, *self.truing.findings)))

    @property
    def holds(self) -> bool:
        """Whether the garment may be cut."""
        return all(problem.severity is not Severity.ERROR for problem in self.problems)


def draw_garment(docket: Docket, wearer: Wearer | None = None) -> tuple[Garment, tuple[Problem, ...]]:
    """Draft a docket's garment, for its own wearer or for another."""
    d = Draft(wearer or docket.wearer, docket.by_hand, corrections=docket.corrections, cloth=docket.cloth)
    garment = docket.style.drawn(d, docket.choices, surveyed=docket.surveyed)
    return garment, tuple(d.notes)


def draft(docket: Docket) -> Drafted:
    """From a docket to a trued garment.

    Raises `InputError` when the tapes or the choices cannot be drafted; findings about a garment that was drafted
    are its `problems`.
    """
    about_tapes = doubts(docket.wearer)
    if any(problem.severity is Severity.ERROR for problem in about_tapes):
        raise InputError([*docket.placed(about_tapes)])
    garment, notes = draw_garment(docket)
    return Drafted(docket, garment, tuple(about_tapes), notes)


def shrinkage(cloth: Cloth) -> list[Problem]:
    """What washing would do to a garment cut from unwashed cloth: nothing is added to the pattern for it."""
    shrinks = [
        f"{share:g} % in {way}"
        for share, way in ((cloth.shrink_length, "length"), (cloth.shrink_width, "width"))
        if share
    ]
    if not shrinks:
        return []
    says = f"the cloth shrinks by {' and '.join(shrinks)}; the pattern is not made larger for that"
    return [Problem("cloth-shrinks", Severity.NOTE, says, "cloth", "wash the cloth before cutting it")]

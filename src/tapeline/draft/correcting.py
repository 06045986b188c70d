"""Verbs of correcting: a place or a length is changed by what the docket corrects, and stays as it is by nothing.

Refused are two corrections that undo each other, and one that the style has nothing for.
"""

from __future__ import annotations

from collections.abc import Iterable
from collections.abc import Set as AbstractSet

from tapeline.draft.place import Place
from tapeline.lengths import Length
from tapeline.pattern import CONTRARY, Corrections, Garment
from tapeline.problems import InputError, Problem, Severity

__all__ = ["corrected", "refuse_contrary", "refuse_undrawn", "refuse_uneased", "set_lower"]

SEWN_MM = 0.1
"""Below a pencil line."""


def corrected(length: Length, *, more: tuple[Length, ...] = (), less: tuple[Length, ...] = ()) -> Length:
    """A length with what is added and taken away; corrections by nothing do not stand in its formula.

    >>> from tapeline.lengths import cm
    >>> corrected(cm(20), more=(cm(0), Length(15, "rounded_back")), less=(cm(0),)).equation()
    '20 + rounded back = 20 + 1.5 = 21.5 cm'
    """
    for by in more:
        length = length + by if by.mm else length
    for by in less:
        length = length - by if by.mm else length
    return length


def set_lower(place: Place, *by: Length, higher: tuple[Length, ...] = ()) -> Place:
    """A place moved down by some corrections and up by others; the place itself where all of them are nothing."""
    for one in by:
        place = place.down(one) if one.mm else place
    for one in higher:
        place = place.up(one) if one.mm else place
    return place


def refuse_contrary(corrections: Corrections) -> None:
    """Raise `corrections-contrary` for each pair of which a body has one and the docket corrects both.

    >>> from tapeline.lengths import cm
    >>> refuse_contrary(Corrections(rounded_back=cm(1), erect_back=cm(1)))
    Traceback (most recent call last):
    tapeline.problems.InputError: error: rounded back and erect back are both corrected: each undoes the other ...
    """
    made = {one.key for one in corrections.made()}
    _refuse(
        Problem(
            "corrections-contrary",
            Severity.ERROR,
            f"{_words(one)} and {_words(other)} are both corrected: each undoes the other",
            f"garment.corrections.{other}",
            f"leave out garment.corrections.{one} or garment.corrections.{other}. Nothing was drafted.",
        )
        for one, other in CONTRARY
        if {one, other} <= made
    )


def refuse_undrawn(corrections: Corrections, drawn: AbstractSet[str], style: str) -> None:
    """Raise `correction-undrawn` for each correction that no page of the style asked for: it would change nothing."""
    _refuse(
        Problem(
            "correction-undrawn",
            Severity.ERROR,
            f"the style {style} has nothing that a correction of {_words(one.key)} could change",
            f"garment.corrections.{one.key}",
            f"leave out garment.corrections.{one.key}, or choose another style. Nothing was drafted.",
        )
        for one in corrections.made()
        if one.key not in drawn
    )


def refuse_uneased(garment: Garment, eased: AbstractSet[str]) -> None:
    """Raise `correction-undrawn` where a style draws a seam its own way, without the ease that is asked for."""
    _refuse(
        Problem(
            "correction-undrawn",
            Severity.ERROR,
            f"the style {garment.style} draws its seam {_words(seam.name)} without the ease that a correction asks for",
            "garment.corrections",
            "leave out corrections.full_bust or corrections.shoulder_blades, or choose another style. "
            "Nothing was drafted.",
        )
        for seam in garment.seams
        if seam.name in eased and abs(garment.run_length(seam.a) - garment.run_length(seam.b) - seam.ease.mm) > SEWN_MM
    )


def _words(key: str) -> str:
    return key.replace("_", " ").replace(".", " ")


def _refuse(problems: Iterable[Problem]) -> None:
    found = list(problems)
    if found:
        raise InputError(found)

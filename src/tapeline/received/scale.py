"""How many millimetres a unit of the file is: what its text says, then its header, then the usual."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from tapeline.problems import Problem, Severity
from tapeline.received.pairs import Pair
from tapeline.received.piece import ReceivedPiece
from tapeline.received.things import NotUnderstoodError, number_of
from tapeline.units import Unit

__all__ = ["Scale", "scale_of"]

_SAID = {"METRIC": 1.0, "MM": 1.0, "ENGLISH": 25.4, "IMPERIAL": 25.4, "INCH": 25.4, "INCHES": 25.4}
"""What `Units:` says: METRIC counts millimetres, ENGLISH inches (from memory of the convention)."""
_COUNTED = {1: 25.4, 2: 304.8, 4: 1.0, 5: 10.0, 6: 1000.0}
"""`$INSUNITS` by the DXF reference: inch, foot, millimetre, centimetre, metre."""
SMALLEST_MM, LARGEST_MM = 60.0, 4000.0
"""The largest piece of a garment is hardly smaller or larger (our own choice)."""


@dataclass(frozen=True, slots=True)
class Scale:
    """Millimetres in a unit of the file, and why."""

    mm: float
    unit: Unit
    why: str
    """Empty when the file or the maker says it; else what it is taken from."""
    against: str = ""
    """What else says otherwise."""

    def problems(self, name: str, pieces: Sequence[ReceivedPiece]) -> list[Problem]:
        """A doubt where the file does not say its unit, or not clearly, or where its pieces are too large or small."""
        wide, high = max((piece.size_mm for piece in pieces), key=max)
        then = f"the largest piece then is {wide / 10:.1f} x {high / 10:.1f} cm"
        hint = "measure one piece; --unit mm or --unit inch says which it is."
        if self.why:
            return [Problem("received-unit", Severity.DOUBT, f"{self.why}; {then}", name, hint)]
        if self.against:
            return [Problem("received-unit", Severity.DOUBT, f"{self.against}; {then}", name, hint)]
        if not SMALLEST_MM <= max(wide, high) <= LARGEST_MM:
            says = f"in the unit of the file the largest piece is {wide / 10:.4g} x {high / 10:.4g} cm"
            return [Problem("received-unit", Severity.DOUBT, says, name, hint)]
        return []


def scale_of(header: Mapping[bytes, Pair], said: str, asked: Unit | None) -> Scale:
    """The scale of a file.

    >>> scale_of({}, "METRIC", None).mm, scale_of({}, "METRIC", Unit.INCH).mm, scale_of({}, "", None).mm
    (1.0, 25.4, 1.0)
    """
    text, counted = _SAID.get(said.strip().upper()), _COUNTED.get(_whole(header, b"$INSUNITS") or 0)
    if asked is not None:
        return Scale(25.4 if asked is Unit.INCH else 1.0, asked, "")
    if text is not None:
        unlike = counted is not None and counted != text
        against = f"its text says {said.strip()}, which is taken, and its header another unit" if unlike else ""
        return Scale(text, _unit(text), "", against)
    if counted is not None:
        return Scale(counted, _unit(counted), "")
    measured = _whole(header, b"$MEASUREMENT")
    unread = f'it says "Units: {said[:24]}", which is not understood' if said else "the file does not say its unit"
    if measured == 0:
        return Scale(25.4, Unit.INCH, f"{unread}; inches are taken, as its header is English")
    return Scale(1.0, Unit.CM, f"{unread}; millimetres are taken")


def _whole(header: Mapping[bytes, Pair], name: bytes) -> int | None:
    if name not in header:
        return None
    try:
        return int(number_of(header[name].value))
    except NotUnderstoodError:
        return None


def _unit(mm: float) -> Unit:
    return Unit.INCH if mm in (25.4, 304.8) else Unit.CM

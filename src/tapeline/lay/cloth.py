"""The cloth as it lies on the table: width, how it is spread, which way pieces may face, stripes, flaws, price."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass, fields
from enum import StrEnum

from tapeline.problems import Problem, Severity

__all__ = ["Direction", "Flaw", "LayCloth", "Spread"]


class Spread(StrEnum):
    """How the cloth is spread on the table."""

    OPEN = "open"
    """One layer, right side up."""
    FOLDED = "folded"
    """Folded lengthwise, selvedge on selvedge: two layers, half the width, one edge of the lay is the fold."""
    TUBULAR = "tubular"
    """Knitted as a tube: two layers, half the girth, both edges of the lay are folds."""
    FACE_TO_FACE = "face-to-face"
    """Two layers of the whole width, right sides together."""

    @property
    def layers(self) -> int:
        """How many are cut at once."""
        return 1 if self is Spread.OPEN else 2


class Direction(StrEnum):
    """Which ways the pieces may face along the cloth."""

    ONE_WAY = "one-way"
    """All face the same way: nap, pile, a print with a top."""
    BY_GARMENT = "by-garment"
    """All pieces of one garment face the same way; the next garment may face the other."""
    TWO_WAY = "two-way"
    """Every piece may face either way."""


@dataclass(frozen=True, slots=True)
class Flaw:
    """A place to keep clear of: a box on the spread cloth, in mm from the beginning and from the lower edge.

    On two layers a flaw in either is a flaw of both.
    """

    x: float
    y: float
    length: float
    width: float


@dataclass(frozen=True, slots=True)
class LayCloth:
    """One cloth, as a lay plan has to know it; lengths in mm, shares in per cent.

    >>> cloth = LayCloth(width_mm=1500, selvedge_mm=10, spread=Spread.FOLDED)
    >>> cloth.strip_mm, cloth.spread.layers
    (740.0, 2)
    """

    name: str = "shell"
    """As the pieces' cutting list names it: shell, rib, interlining, lining."""
    width_mm: float = 1400.0
    """From selvedge to selvedge; of a tube its girth, that is twice its flat width."""
    selvedge_mm: float = 0.0
    """Left free at each selvedge; a tube has none."""
    spread: Spread = Spread.OPEN
    direction: Direction = Direction.TWO_WAY
    tilt: float = 0.0
    """How far the grain may lean from the length of the cloth, radians, either way."""
    gap_mm: float = 0.0
    """Kept free between pieces; the edges of the strip may be touched."""
    shrink_length: float = 0.0
    """Shrinkage along the grain, per cent: pieces are laid so much larger that they come out right."""
    shrink_width: float = 0.0
    repeat_along_mm: float = 0.0
    """Crosswise stripes and checks repeat after so much of the length; 0 for none."""
    repeat_across_mm: float = 0.0
    """Lengthwise stripes and checks repeat after so much of the width; 0 for none."""
    line_along_mm: float = 0.0
    """Where the first dominant crosswise line lies, from the beginning."""
    line_across_mm: float = 0.0
    """Where the first dominant lengthwise line lies, from the lower edge of the strip."""
    flaws: tuple[Flaw, ...] = ()
    price: float | None = None
    """Of one metre of one layer, in any money."""

    @property
    def strip_mm(self) -> float:
        """Height of the strip that pieces are laid in."""
        if self.spread is Spread.TUBULAR:
            return self.width_mm / 2
        if self.spread is Spread.FOLDED:
            return self.width_mm / 2 - self.selvedge_mm
        return self.width_mm - 2 * self.selvedge_mm

    def bought_mm(self, length_mm: float) -> float:
        """How much cloth a lay of a length takes off the roll."""
        return length_mm * (2 if self.spread is Spread.FACE_TO_FACE else 1)

    def problems(self) -> Iterator[Problem]:
        """Every number that no cloth has."""
        yield from (_refused(self.name, *wrong) for wrong in self._wrong())

    def _wrong(self) -> Iterator[tuple[str, float, str]]:
        numbers = {f.name: getattr(self, f.name) for f in fields(self)}
        for name, (least, most, says) in _RANGES.items():
            value = numbers[name]
            if value is not None and not (_number(value) and least <= value <= most):
                turn = math.degrees if name == "tilt" and _number(value) else float
                yield name, turn(value), f"{says} lies between {turn(least):g} and {turn(most):g}"
        if _number(self.strip_mm) and self.strip_mm <= 0 < self.width_mm:
            yield "selvedge", self.selvedge_mm, f"it leaves nothing of a cloth {self.width_mm:g} mm wide"
        for flaw in self.flaws:
            sizes = (flaw.x, flaw.y, flaw.length, flaw.width)
            if not all(map(_number, sizes)) or min(flaw.length, flaw.width) <= 0:
                yield "flaw", math.nan, f"{flaw} has no place and size on the cloth"
            elif flaw.x + flaw.length <= 0 or flaw.y + flaw.width <= 0 or flaw.y >= self.strip_mm:
                yield "flaw", flaw.y, f"{flaw} lies beside the cloth, whose strip is {self.strip_mm:g} mm high"


_RANGES: dict[str, tuple[float, float, str]] = {
    "width_mm": (10.0, 10000.0, "the width in mm"),
    "selvedge_mm": (0.0, 500.0, "the selvedge in mm"),
    "tilt": (0.0, math.radians(45), "the tilt in degrees"),
    "gap_mm": (0.0, 200.0, "the gap in mm"),
    "shrink_length": (-5.0, 25.0, "the shrinkage in length in per cent"),
    "shrink_width": (-5.0, 25.0, "the shrinkage in width in per cent"),
    "repeat_along_mm": (0.0, 2000.0, "the repeat along in mm"),
    "repeat_across_mm": (0.0, 2000.0, "the repeat across in mm"),
    "line_along_mm": (0.0, 2000.0, "the place of the first line in mm"),
    "line_across_mm": (0.0, 2000.0, "the place of the first line in mm"),
    "price": (0.0, 1e6, "the price of a metre"),
}


def _number(value: object) -> bool:
    return isinstance(value, (int, float)) and not isinstance(value, bool) and math.isfinite(value)


def _refused(cloth: str, name: str, value: float, says: str) -> Problem:
    word = name.removesuffix("_mm").replace("_", " ")
    hint = "give a number in between. Nothing was laid" if " lies between " in says else "Nothing was laid"
    return Problem("lay-cloth", Severity.ERROR, f"{word} of the {cloth} is {value:g}: {says}", f"cloth {cloth}", hint)

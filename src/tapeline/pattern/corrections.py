"""`Corrections`: what a fitting showed that tapes and proportions do not say, and by how much it is corrected.

Amounts and their limits: common practice in the trade, no published source.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, fields, is_dataclass
from functools import cache
from typing import Any

from tapeline.lengths import Length, cm
from tapeline.pattern.choice import Choice, choice

__all__ = ["CONTRARY", "ONE_SIDE", "Correction", "Corrections", "FullBust"]

NOTHING = cm(0)


@dataclass(frozen=True, slots=True)
class FullBust:
    """Width goes from the back to the front, length is put in across the front."""

    width: Length = choice(NOTHING, 0, 4, "the side seam swings to the front: goes from back to front, at each side")
    length: Length = choice(NOTHING, 0, 2.5, "the front hem rides up: longer over the bust, eased in at the side")


@dataclass(frozen=True, slots=True)
class Corrections:
    """Each says what is seen in the fitting room, and what is done by the amount."""

    sloping_shoulders: Length = choice(
        NOTHING, 0, 2.5, "folds fall from neck to armpit: shoulder points and armholes lower"
    )
    square_shoulders: Length = choice(
        NOTHING, 0, 2, "folds lie across below the neck: shoulder points and armholes higher"
    )
    left_shoulder_lower: Length = choice(
        NOTHING, 0, 2.5, "folds fall at the left side alone: shoulder point and armhole lower there"
    )
    right_shoulder_lower: Length = choice(
        NOTHING, 0, 2.5, "folds fall at the right side alone: shoulder point and armhole lower there"
    )
    forward_shoulders: Length = choice(
        NOTHING, 0, 2, "the shoulder seam runs back at the tip: moved forward there, from front to back"
    )
    full_bust: FullBust = FullBust()
    rounded_back: Length = choice(
        NOTHING, 0, 3, "the neckline slips back and the hem rides up behind: longer across the blades"
    )
    erect_back: Length = choice(NOTHING, 0, 2, "folds lie across the back below the neck: shorter across the blades")
    shoulder_blades: Length = choice(
        NOTHING, 0, 1.5, "the back pulls over the blades: wider there, as much eased in at the shoulder"
    )
    sway_back: Length = choice(
        NOTHING, 0, 4, "folds lie over the hollow of the back: taken out at the centre back's waist"
    )
    full_waist: Length = choice(NOTHING, 0, 6, "the front pulls at the waist, its hem rides up: out at each front side")
    large_arm: Length = choice(
        NOTHING, 0, 8, "the sleeve binds round the arm: wider, with a lower cap for the same armhole"
    )

    def made(self) -> Iterator[Correction]:
        """Those that are more than nothing.

        >>> [one.key for one in Corrections(full_bust=FullBust(length=cm(1)), sway_back=cm(2)).made()]
        ['full_bust.length', 'sway_back']
        """
        return (one for one in self.every() if one.by.mm)

    def every(self) -> Iterator[Correction]:
        """All there are, those by nothing too."""
        return _all(self, ())

    def one(self, key: str) -> Correction:
        """The correction of a key; `KeyError` when there is none.

        >>> Corrections(sway_back=cm(2)).one("sway_back").by.equation()
        'sway back = 2 cm'
        """
        # Asked for each while a garment is drawn: looked up, not looked for.
        group: Any = self
        *above, last = key.split(".")
        for name in above:
            group = getattr(group, name, None)
        kind: type = type(group)
        limits = _limits(kind).get(last)
        if limits is None:
            raise KeyError(key)
        return Correction(key, getattr(group, last).named(key.replace(".", "_")), limits.says)


@dataclass(frozen=True, slots=True)
class Correction:
    """One of them."""

    key: str
    """Of the docket, below `garment.corrections`: `full_bust.width`."""
    by: Length
    """Under its own name."""
    says: str

    @property
    def name(self) -> str:
        """As a size is called: `full_bust_width`."""
        return self.key.replace(".", "_")


ONE_SIDE = ("left_shoulder_lower", "right_shoulder_lower")
"""These make a garment whose sides are not alike."""
CONTRARY = (
    ("sloping_shoulders", "square_shoulders"),
    ("left_shoulder_lower", "right_shoulder_lower"),
    ("rounded_back", "erect_back"),
)
"""Of each pair a body has one."""


def _all(group: Any, above: tuple[str, ...]) -> Iterator[Correction]:  # noqa: ANN401 - corrections, or some of them
    for f in fields(group):
        value, path = getattr(group, f.name), (*above, f.name)
        if is_dataclass(value) and not isinstance(value, Length):
            yield from _all(value, path)
            continue
        limits: Choice = f.metadata["choice"]
        yield Correction(".".join(path), value.named("_".join(path)), limits.says)


@cache
def _limits(kind: type) -> dict[str, Choice]:
    """By name, of a group of corrections; nothing is known of anything else."""
    return {f.name: f.metadata["choice"] for f in fields(kind) if "choice" in f.metadata} if is_dataclass(kind) else {}

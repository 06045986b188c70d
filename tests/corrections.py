"""Corrections for tests: every one there is, within its limits, alone and two together."""

from __future__ import annotations

from dataclasses import fields, replace
from typing import Any

from hypothesis import strategies as st

from tapeline.lengths import Length, cm
from tapeline.pattern import CONTRARY, ONE_SIDE, Choice, Corrections, choices_of

__all__ = ["KEYS", "correction", "corrections"]


def _limits(group: Any, above: str = "") -> dict[str, Choice]:
    found = {f"{above}{name}": limits for name, limits in choices_of(group).items()}
    for f in fields(group):
        if "choice" not in f.metadata:
            found |= _limits(type(f.default), f"{above}{f.name}.")
    return found


LIMITS = _limits(Corrections)
KEYS = tuple(key for key in LIMITS if key not in ONE_SIDE)
"""As in the docket: `full_bust.width`; those that make both sides alike."""


def correction(**cm_by_key: float) -> Corrections:
    """Corrections by so many centimetres; a dot in a key is written as two underscores."""
    made = Corrections()
    for key, amount in cm_by_key.items():
        first, _, rest = key.replace("__", ".").partition(".")
        value: Length | Any = cm(amount)
        if rest:
            value = replace(getattr(made, first), **{rest: value})
        changes: dict[str, Any] = {first: value}
        made = replace(made, **changes)
    return made


@st.composite
def corrections(draw: st.DrawFn, most: int = 2) -> Corrections:
    """One correction or some together that do not undo each other, each by no more than its limit."""
    keys = draw(st.lists(st.sampled_from(KEYS), min_size=1, max_size=most, unique=True))
    for one, other in CONTRARY:
        if one in keys and other in keys:
            keys.remove(other)
    amounts = {key.replace(".", "__"): draw(st.floats(0.1, LIMITS[key].most)) for key in keys}
    return correction(**amounts)

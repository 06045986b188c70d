"""The same docket in cm and in inches, however its numbers are written, drafts the same garment."""

from __future__ import annotations

from fractions import Fraction
from typing import Any

from hypothesis import given, settings
from hypothesis import strategies as st

from tapeline.docket import docket_from
from tapeline.measures import Figure, Wearer
from tapeline.project import draw_garment
from tests.wearers import wearers

MOST_APART_MM = 1e-6
"""Inch and cm are the same to the last digits of a float; solving may add a little."""

looseness = st.one_of(
    st.sampled_from(["close", "slight", "easy", "loose"]),
    st.fixed_dictionaries({"side": st.integers(0, 60), "drop": st.integers(0, 60), "shoulder": st.integers(0, 20)}),
)
"""Words, or numbers in mm."""
waist = st.integers(-10, 20)


def sixteenths(mm: float) -> Fraction:
    """Rounded to what a tape in inches shows."""
    return Fraction(round(mm / 25.4 * 16), 16)


def written(inches: Fraction, unit: str, way: int) -> object:
    """An exact number of inches, in one of the ways in which a docket may say it."""
    mm = inches * Fraction(254, 10)
    if unit == "inch":
        whole, part = divmod(inches, 1)
        mixed = f"{whole} {part}" if part else str(whole)
        return [float(inches), mixed if inches >= 0 else float(inches), f"{float(mm)} mm"][way]
    return [float(mm / 10), f"{float(mm / 10):.5f} cm".replace(".", ","), f"{float(inches)} in"][way]


def table(unit: str, way: int, wearer: Wearer, loose: Any, at_waist: int) -> dict[str, Any]:
    """The docket's tables in a unit."""

    def number(mm: float) -> object:
        return written(sixteenths(mm), unit, way)

    tapes = {name: number(mm) for name, mm in wearer.tapes.items()}
    chosen = loose if isinstance(loose, str) else {name: number(mm) for name, mm in loose.items()}
    return {
        "allow": ["tape-range", "tape-unlikely", "tape-doubt", "tapes-swapped"],
        "wearer": {"figure": str(wearer.figure), "unit": unit, "tapes": tapes},
        "garment": {"looseness": chosen, "waist": number(at_waist)},
    }


@given(wearers((Figure.WOMAN,)), looseness, waist, st.integers(0, 2), st.integers(0, 2))
@settings(max_examples=25)
def test_cm_and_inches_draft_the_same(wearer: Wearer, loose: Any, at_waist: int, way_a: int, way_b: int) -> None:
    """Every point lies at the same place, whichever unit and spelling the tapes were written in."""
    dockets = [
        docket_from(table(unit, way, wearer, loose, at_waist), "a.toml")
        for unit, way in (("cm", way_a), ("inch", way_b))
    ]
    one, other = (draw_garment(docket)[0].points for docket in dockets)
    assert one.keys() == other.keys()
    assert all((one[label] - other[label]).length < MOST_APART_MM for label in one)

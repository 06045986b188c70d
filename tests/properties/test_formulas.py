"""Every formula that is printed, worked out again from its printed numbers."""

from __future__ import annotations

import ast
import re
from itertools import product

import pytest
from hypothesis import given

from tapeline.docket import docket_from_text
from tapeline.draft import Draft
from tapeline.lengths import Length
from tapeline.measures import Wearer, size_wearer
from tapeline.pattern import Garment
from tapeline.units import Unit
from tests.properties.drafts import draw, examples
from tests.wearers import wearers

HALF_A_LAST_PLACE = 0.005
"""Printed numbers are rounded to two places."""
NUMBER = re.compile(r"\d+(?:\.\d+)?(?:e-?\d+)?")


def printed(garment: Garment, unit: Unit) -> list[str]:
    """All equations on the drawing, with more than a result."""
    equations = [text for step in garment.steps for text in step.equations(unit)]
    return [text for text in equations if text.count(" = ") >= 1]


def worked_out(numbers: str) -> float:
    """The answer of a formula in numbers; `but at least` and `but at most` choose the larger and the smaller."""
    while found := re.search(
        r"\(?([^()]+(?:\([^()]*\)[^()]*)*), but at (least|most) ([^()]+(?:\([^()]*\)[^()]*)*)\)?", numbers
    ):
        one, word, other = found.groups()
        chosen = (max if word == "least" else min)(worked_out(one), worked_out(other))
        numbers = numbers[: found.start()] + repr(chosen) + numbers[found.end() :]
    return float(_value(ast.parse(numbers, mode="eval").body))


def _value(node: ast.expr) -> float:
    match node:
        case ast.Constant(value=int() | float() as value):
            return float(value)
        case ast.UnaryOp(op=ast.USub(), operand=operand):
            return -_value(operand)
        case ast.BinOp(left=left, op=op, right=right):
            a, b = _value(left), _value(right)
            match op:
                case ast.Add():
                    return a + b
                case ast.Sub():
                    return a - b
                case ast.Mult():
                    return a * b
                case ast.Div():
                    return a / b
    raise AssertionError(f"not a formula: {ast.dump(node)}")


def rounding(symbols: str, numbers: str) -> float:
    """How far the answer may be off because the numbers that are printed are rounded.

    Plain factors stand in both texts beside a stroke or a star and are exact.
    """
    exact = {m.group(1) for m in re.finditer(r"[*/] (\d+(?:\.\d+)?(?:/\d+)?)", symbols)}
    spots = [m for m in NUMBER.finditer(numbers) if m.group() not in exact]
    answer, most = worked_out(numbers), 0.0
    for spot in spots:
        moves = []
        for sign in (-1, 1):
            changed = repr(float(spot.group()) + sign * HALF_A_LAST_PLACE)
            moves.append(abs(worked_out(numbers[: spot.start()] + changed + numbers[spot.end() :]) - answer))
        most += max(moves)
    return most + HALF_A_LAST_PLACE + 1e-9


def check(equations: list[str], unit: Unit) -> int:
    """Work out every equation; how many had numbers to work out."""
    count = 0
    for text in equations:
        parts = text.split(" = ")
        result = parts[-1]
        assert result.endswith(f" {unit.sign}"), text
        if len(parts) < 2 or not re.search(r" [*/+-] |but at", parts[-2]):
            continue
        symbols, numbers = parts[0], parts[-2]
        off = abs(worked_out(numbers) - float(result.removesuffix(f" {unit.sign}")))
        assert off <= rounding(symbols, numbers), f"{text}: off by {off}"
        count += 1
    return count


@examples(40)
@given(wearers())
def test_every_printed_formula_gives_its_printed_answer(wearer: Wearer) -> None:
    """Numbers put into the formulas give the result beside them, in centimetres and in inches."""
    for style, unit in product(("tee", "block"), Unit):
        assert check(printed(draw(wearer, style), unit), unit) > 20


@pytest.mark.parametrize("frame", ["survey", "proportional"])
def test_formulas_of_a_docket_name_its_choices(frame: str) -> None:
    """Drafted from a docket, formulas hold too, and what a formula is made of has a step of its own."""
    text = f"""
    wearer = {{ figure = "woman", size = "104" }}
    [garment]
    frame = "{frame}"
    looseness = {{ side = 2.3, drop = 1.7, shoulder = 0.6 }}
    waist = 1.1
    [garment.sleeve]
    ease = 0.7
    cap = {{ share = 0.28, extra = -0.4 }}
    """
    docket = docket_from_text(text)
    garment = docket.style.page(Draft(docket.wearer, docket.by_hand), docket.choices, surveyed=docket.surveyed)
    assert check(printed(garment, Unit.CM), Unit.CM) > 20
    labels = {step.label for step in garment.steps}
    for step in garment.steps:
        for length in step.lengths:
            assert set(length.needs()) <= labels, f"{step.label}: {set(length.needs()) - labels}"


def test_the_slope_of_a_formula_is_its_exact_difference() -> None:
    """How much a size grows per unit of a tape is what it grows when the tape does."""
    wearer = size_wearer("92")
    before = {size.name: size.length for size in draw(wearer, surveyed=False).sizes}
    after = {
        size.name: size.length
        for size in draw(wearer.with_tape("upper_chest", wearer["upper_chest"] + 1), surveyed=False).sizes
    }
    for name in ("armhole_depth", "half_back_width", "half_chest_width", "neck_width"):
        grown: Length = before[name]
        assert after[name].mm - grown.mm == pytest.approx(grown.slope("upper_chest"), abs=1e-9), name

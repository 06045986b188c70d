"""The data: valid by the schema, and the model's own numbers."""

from __future__ import annotations

import json
import math
from dataclasses import replace
from typing import Any

import pytest
from jsonschema import Draft202012Validator

from tapeline.export import document, schema, text
from tapeline.geometry import area
from tapeline.lengths import Length
from tapeline.pattern import StepKind
from tapeline.problems import Problem, Severity
from tapeline.units import Unit
from tests.export.garments import tee, trued
from tests.export.readback import area_of, length_of

DOCKET = {"wearer": {"name": "Marit Sjöström", "tapes": {"bust": 94}}, "garment": {"style": "tee"}}


def made(sleeve: str = "short", **choices: Any) -> dict[str, Any]:
    """The document of a tee, written and read again."""
    finished = tee(sleeve)
    truing = trued(finished)
    found: dict[str, Any] = json.loads(text(document(finished, truing, truing.findings, DOCKET, **choices)))
    return found


@pytest.mark.parametrize("sleeve", ["short", "long"])
def test_it_is_valid_by_its_schema(sleeve: str) -> None:
    """A second reader, the JSON Schema, agrees; the schema itself is sound."""
    Draft202012Validator.check_schema(schema())
    Draft202012Validator(schema()).validate(made(sleeve))


@pytest.mark.parametrize(
    ("path", "value"),
    [
        (("unit",), "cm"),
        (("girths", "chest"), 3),
        (("pieces", "front", "grain"), [[0, 0]]),
        (("pieces", "front", "seam_line"), "0,0"),
        (("steps", 0, "kind"), "dance"),
        (("surplus",), 1),
    ],
)
def test_the_schema_tells_a_wrong_document(path: tuple[str | int, ...], value: object) -> None:
    """It is no rubber stamp: a planted fault is seen."""
    document_: Any = made()
    place = document_
    for key in path[:-1]:
        place = place[key]
    place[path[-1]] = value
    assert not Draft202012Validator(schema()).is_valid(document_)


def test_the_keys_are_the_agreed_ones() -> None:
    """Programs can count on these names."""
    found = made()
    assert list(found) == [
        "tapeline",
        "docket",
        "unit",
        "sizes",
        "pieces",
        "seams",
        "girths",
        "points",
        "steps",
        "problems",
    ]
    assert found["unit"] == "mm"
    assert found["docket"] == DOCKET
    assert set(found["pieces"]) == {"back", "front", "sleeve", "neckband"}
    for name in ("back", "front"):
        assert set(found["pieces"][name]["edges"]) == {"centre", "neckline", "shoulder", "armhole", "side", "hem"}
    assert set(found["pieces"]["sleeve"]["edges"]) == {
        "cap_front",
        "cap_back",
        "underarm_front",
        "underarm_back",
        "hem",
    }
    assert found["points"]["back.nape"] == [0, 0]
    assert {"mm", "source", "sd_mm", "formula"} <= set(found["sizes"]["armhole_depth"])


@pytest.mark.parametrize("sleeve", ["short", "long"])
def test_lengths_and_areas_are_the_models(sleeve: str) -> None:
    """Paths measured anew have the lengths that the document states and the model has, within 0.01 %."""
    found, finished = made(sleeve), tee(sleeve)
    for piece in finished.pieces:
        data = found["pieces"][piece.piece.name]
        for edge in piece.piece.edges:
            written = data["edges"][edge.name]
            assert length_of(written["path"]) == pytest.approx(edge.length, rel=1e-4)
            assert written["length_mm"] == pytest.approx(edge.length, abs=1e-4)
            assert written["fold"] == edge.fold
        assert area_of(data["seam_line"]) == pytest.approx(abs(area(piece.piece.seam_line)), rel=1e-4)
        assert area_of(data["cut_line"]) == pytest.approx(abs(area(piece.cut_line)), rel=1e-4)


def test_a_seam_can_be_proved_from_the_document_alone() -> None:
    """Lengths of the edges named on both sides differ by the ease, within 0.1 mm."""
    found = made()

    def side(names: str) -> float:
        pairs = [name.split(".") for name in names.split(" + ")]
        return sum(length_of(found["pieces"][piece]["edges"][edge]["path"]) for piece, edge in pairs)

    assert len(found["seams"]) >= 5
    for seam in found["seams"]:
        assert side(seam["a"]) == pytest.approx(seam["a_mm"], abs=0.05)
        assert side(seam["b"]) == pytest.approx(seam["b_mm"], abs=0.05)
        assert seam["a_mm"] - seam["b_mm"] == pytest.approx(seam["ease_mm"], abs=0.1)


def test_all_five_girths_are_there() -> None:
    """A short sleeve has no wrist: it is null, not left out; a long one has it, and ease is garment less tape."""
    short, long = made()["girths"], made("long")["girths"]
    assert list(short) == list(long) == ["chest", "waist", "hip", "upper_arm", "wrist"]
    assert short["wrist"] is None
    for girth in long.values():
        assert girth["garment_mm"] - girth["tape_mm"] == pytest.approx(girth["ease_mm"], abs=1e-3)


def test_steps_carry_words_formula_and_place() -> None:
    """Every step of the construction, in order; words in inches for who works in inches, millimetres alike."""
    finished = tee()
    for unit in Unit:
        steps = made(unit=unit)["steps"]
        assert [step["label"] for step in steps] == [step.label for step in finished.garment.steps]
        for data, step in zip(steps, finished.garment.steps, strict=True):
            assert data["equations"] == list(step.equations(unit))
            assert ("point" in data) == (step.point is not None)
            assert ("path" in data) == (step.path is not None)
            if step.kind is StepKind.POINT and step.point is not None:
                assert data["point"] == pytest.approx([step.point.x, step.point.y], abs=1e-4)


def test_problems_come_along() -> None:
    """As data, with their hints."""
    finished = tee()
    problem = Problem("ease-small", Severity.DOUBT, "the chest has 1 cm of ease", "garment", "take looseness easy")
    found = document(finished, trued(finished), [problem], {})["problems"]
    assert found == [
        {"code": "ease-small", "severity": "doubt", "says": problem.says, "where": "garment", "hint": problem.hint}
    ]


def test_what_is_no_number_is_never_written() -> None:
    """A NaN or an endless length stops the writing with a plain error; JSON has no word for it (RFC 8259, 6)."""
    finished = tee()
    size = finished.garment.sizes[0]
    for wrong in (math.nan, math.inf):
        sizes = (replace(size, length=Length(wrong, size.name)),)
        bad = replace(finished, garment=replace(finished.garment, sizes=sizes))
        with pytest.raises(ValueError, match="no length"):
            document(bad, trued(finished), [], {})
    with pytest.raises(ValueError, match="JSON"):
        text({"docket": {"bust": math.nan}})

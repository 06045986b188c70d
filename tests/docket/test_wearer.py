"""The docket's wearer: sizes in place of tapes, what is allowed, and what is noted."""

from __future__ import annotations

import pytest

from tapeline.docket import Docket, docket_from_text
from tapeline.measures import size_wearer
from tapeline.problems import InputError, Severity
from tapeline.project import draft

MARIT = """
[wearer]
name = "Marit"
figure = "woman"
[wearer.tapes]
bust = 94
upper_chest = 89
waist = 77
hip = 101
shoulder_width = 39.5
back_length = 40
hip_depth = 20.5
arm_length = 58
"""


def read(text: str) -> Docket:
    """A docket."""
    return docket_from_text(text, "a.toml")


def codes(text: str) -> list[str]:
    """What is wrong with a docket."""
    with pytest.raises(InputError) as refused:
        read(text)
    return [problem.code for problem in refused.value.problems]


@pytest.mark.parametrize("size", ['"88"', "88", '"m"', '" M "'])
def test_a_size_stands_in_for_tapes(size: str) -> None:
    """A label may be a number or a word, in any case; the docket says that nobody was measured."""
    docket = read(f'wearer = {{ figure = "woman", size = {size} }}')
    label = size.strip('" ').upper()
    assert dict(docket.wearer.tapes) == dict(size_wearer(label).tapes)
    assert [(note.code, note.severity) for note in docket.notes] == [("size-standard", Severity.NOTE)]


def test_a_tape_beside_a_size_replaces_its_own() -> None:
    """The others stay those of the size, and the note says which was taped."""
    docket = read('wearer = { figure = "woman", size = "88", tapes = { waist = 74, wrist = 16 } }')
    assert (docket.wearer["waist"], docket.wearer["hip"]) == (740, size_wearer("88")["hip"])
    assert docket.wearer["wrist"] == 160
    assert docket.notes[0].says.endswith("taped: waist, wrist")


def test_a_frame_is_by_survey_for_adults_and_by_rule_for_children() -> None:
    """Of children there is no survey; nobody has to know that to write a docket."""
    child = MARIT.replace('"woman"', '"child"').replace("94", "66").replace("89", "65").replace("77", "60")
    child = (
        child.replace("101", "70").replace("39.5", "31").replace("40", "29").replace("20.5", "14").replace("58", "43")
    )
    assert read(MARIT).surveyed
    assert not read(MARIT + '[garment]\nframe = "proportional"').surveyed
    assert not read(child).surveyed
    assert codes(child + '[garment]\nframe = "survey"') == ["frame-without-survey"]


def test_a_childs_chest_is_its_bust() -> None:
    """Either word is understood, and both together are not."""
    child = 'figure = "child"\ntapes = { %s, upper_chest = 65, waist = 60, hip = 70, shoulder_width = 31, '
    child = f"[wearer]\n{child}back_length = 29, hip_depth = 14, arm_length = 43 }}"
    assert read(child % "chest = 66").wearer["bust"] == read(child % "bust = 66").wearer["bust"] == 660
    assert codes(child % "chest = 66, bust = 67") == ["tape-unknown"]


@pytest.mark.parametrize("allow", ['["tape-unlikely"]', '["tape-unlikely:waist"]', '"tape-unlikely:waist, tape-doubt"'])
def test_what_the_maker_looked_at_is_let_pass(allow: str) -> None:
    """An unlikely tape stops the draft until it is allowed; then it is a note at its line."""
    unlikely = MARIT.replace("waist = 77", "waist = 99")
    with pytest.raises(InputError) as refused:
        draft(read(unlikely))
    assert refused.value.problems[0].code == "tape-unlikely"
    assert refused.value.problems[0].where == "a.toml, line 8: waist = 99"
    notes = draft(read(f"allow = {allow}\n{unlikely}")).notes
    assert [note.where for note in notes if note.code == "tape-unlikely"] == ["a.toml, line 9: waist = 99"]
    assert all(note.severity is not Severity.ERROR for note in notes)


def test_a_tape_outside_its_limits_may_be_allowed() -> None:
    """Limits are common practice, not a law: who has looked at it is believed."""
    tall = MARIT.replace("arm_length = 58", "arm_length = 79")
    assert codes(tall) == ["tape-range"]
    docket = read(f'allow = ["tape-range:arm_length"]\n{tall}')
    assert [(note.code, note.severity) for note in docket.notes] == [("tape-range", Severity.NOTE)]


@pytest.mark.parametrize("allow", ["true", "3", "[1]", '["tape-unlikely:wasit"]', '["everything"]', "{ a = 1 }"])
def test_what_cannot_be_allowed_is_said(allow: str) -> None:
    """A word that allows nothing would be silence where the maker expects an effect."""
    assert codes(f"allow = {allow}\n{MARIT}")[0] in {"docket-type", "allow-unknown"}


def test_what_later_stages_say_is_placed_at_the_line() -> None:
    """A stage that speaks of `tapes.hip` or of an allowance is heard at the docket's own line."""
    docket = read(f"{MARIT}[finish]\nallowance = {{ neckline = 1 }}")
    from tapeline.problems import Problem

    def where(place: str) -> str:
        return docket.placed([Problem("x", Severity.NOTE, "x", place)])[0].where

    assert where("tapes.hip") == "a.toml, line 9: hip = 101"
    assert where("tapes") == "a.toml, line 5: [wearer.tapes]"
    assert where("allowance of neckline: 70 mm") == "a.toml, line 15: neckline = 1"
    assert where("back.armhole") == "back.armhole"


@pytest.mark.parametrize("name", ["x" * 81, "a\\nb", " ", "\\u0007"], ids=["too long", "two lines", "blank", "a bell"])
def test_a_name_has_to_fit_on_a_piece(name: str) -> None:
    """It is written on paper: one line of signs that can be seen."""
    assert codes(MARIT.replace("Marit", name)) == ["docket-text"]


def test_a_docket_knows_what_was_written() -> None:
    """Its table is the TOML as it was read, for the data to carry along."""
    assert read(MARIT).table["wearer"]["tapes"]["bust"] == 94

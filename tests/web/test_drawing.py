"""The drawing of the page: its marks, its handles, and what an edit does to the words of a docket."""

from __future__ import annotations

import re
import tomllib
import xml.etree.ElementTree as ET
from pathlib import Path

import pytest

from tapeline.docket.edit import with_value
from tapeline.pattern import StepKind
from tapeline.web.drawing import drawing
from tapeline.web.explained import explained
from tapeline.web.handles import Handle, handles
from tapeline.web.unfolded import unfolded
from tapeline.web.view import View, look

TEE_FILE = Path(__file__).parents[2] / "examples" / "tee.toml"
TEE = TEE_FILE.read_text(encoding="utf-8")
MORE_MM = 4.0
"""A choice is made larger by this much; a handle has to follow."""


def seen(text: str = TEE) -> View:
    """The docket as the page sees it, drafted."""
    view = look(text, "tee.toml")
    assert view.drafted is not None, view.problems
    return view


def of(view: View) -> list[Handle]:
    """The handles of a drafted view."""
    assert view.drafted is not None
    assert view.docket is not None
    return handles(view.drafted.garment, view.docket.choices)


LONG = TEE.replace('length = "short"', 'length = "long"')
"""Its sleeve comes to the wrist, so it has a handle there as well."""


DROPPED = (TEE_FILE.parent / "oversized-tee.toml").read_text(encoding="utf-8")
"""Its sleeve begins below the shoulder."""
HOODED, CHILDS = (
    (TEE_FILE.parent / name).read_text(encoding="utf-8")
    for name in ("hooded-sweatshirt.toml", "childs-hooded-top.toml")
)
"""Two hoods, and pockets: one across the front, and one on the breast."""
WITH_PATCH = CHILDS.replace('kind = "none"', 'kind = "breast"')
PIECED = (TEE_FILE.parent / "colour-block-tee.toml").read_text(encoding="utf-8")
"""Its back and front are cut apart."""
SLIT = (TEE_FILE.parent / "tunic.toml").read_text(encoding="utf-8")
"""Its sides are."""
DRAWN = (LONG, DROPPED, HOODED, WITH_PATCH, PIECED, SLIT)
EVERY = [(text, number) for text in DRAWN for number in range(len(of(seen(text))))]


@pytest.mark.parametrize(
    ("text", "number"),
    EVERY,
    ids=lambda value: value if isinstance(value, int) else value.partition("style = ")[2].split()[0].strip('"'),
)
def test_a_handle_goes_where_its_choice_takes_the_point(text: str, number: int) -> None:
    """Drafted anew with the choice 4 mm larger, the point lies as much further along the handle's way."""
    view = seen(text)
    handle = of(view)[number]
    larger = with_value(unfolded(view, handle.keys), handle.keys, f"{(handle.now_mm + MORE_MM) / 10:.4f}")
    after = seen(larger).drafted
    assert after is not None
    moved = after.garment.points[handle.label] - handle.at
    assert moved.dot(handle.way) == pytest.approx(MORE_MM, abs=1e-3)
    assert abs(moved.cross(handle.way)) < 0.02 * MORE_MM


def test_a_handle_lies_on_the_part_that_has_its_point() -> None:
    """Where a piece was cut apart, its neckline is pulled on the yoke, and its hem on the lower part."""
    view = seen(PIECED)
    assert view.drafted is not None
    on = {handle.label: handle.on for handle in of(view)}
    assert on["back.neckline_centre"] == "yoke"
    assert on["back.underarm"] == "back"
    assert on["back.hem_centre"] == on["back.side_waist"] == "back_lower"
    assert on["front.hem_centre"] == "front_lower"
    for handle in of(view):
        if handle.on != handle.label.partition(".")[0]:
            assert view.drafted.garment.piece(handle.on).seam_line.distance_to(handle.at) < 0.1


def test_the_sleeve_has_a_handle_at_the_wrist_when_it_comes_there() -> None:
    """A long sleeve is pulled wider at the wrist, a short one is not; the cap is pulled higher on both."""
    long, short = ({handle.keys[1:] for handle in of(seen(text))} for text in (LONG, TEE))
    assert ("sleeve", "cap", "extra") in long & short
    assert long - short == {("sleeve", "wrist_ease")}


def test_the_block_has_handles_too() -> None:
    """A style without the tee's choices has the handles of those it has."""
    found = {handle.keys for handle in of(seen(TEE.replace('style = "tee"', 'style = "block"')))}
    assert found == {
        ("garment", "looseness", "side"),
        ("garment", "looseness", "drop"),
        ("garment", "looseness", "shoulder"),
        ("garment", "sleeve", "length"),
        ("garment", "sleeve", "cap", "extra"),
    }


def test_every_step_on_a_sheet_is_a_mark() -> None:
    """Each point and line of the draft can be pointed at, and says what it needs."""
    view = seen()
    assert view.drafted is not None
    root = ET.fromstring(drawing(view) or "")
    marks = {mark.attrib["data-step"]: mark.attrib["data-needs"] for mark in root.iter() if "data-step" in mark.attrib}
    steps = [step for step in view.drafted.garment.steps if step.kind in (StepKind.POINT, StepKind.LINE)]
    assert marks == {step.label: " ".join(step.needs) for step in steps}


def test_every_edge_is_drawn_as_what_becomes_of_it() -> None:
    """A fold is drawn as a fold line, every other edge as a seam line, once each."""
    view = seen()
    assert view.finished is not None
    root = ET.fromstring(drawing(view) or "")
    for piece in view.finished.pieces:
        group = next(g for g in root if g.get("data-piece") == piece.piece.name)
        kinds = [
            path.get("class", "").split()[0] for path in group.iter() if path.tag.endswith("path") or path.tag == "path"
        ]
        folds = [edge for edge in piece.piece.edges if edge.fold]
        assert kinds.count("seam-line") == len(piece.piece.edges) - len(folds)
        # The cut line runs along the fold as well, and is drawn broken there.
        assert kinds.count("fold-line") == len(folds)


def test_a_name_is_text_and_nothing_else() -> None:
    """Script in a name stays text in the drawing."""
    text = TEE.replace('name = "Marit"', "name = '<script>alert(1)</script>\"'")
    made = drawing(seen(text)) or ""
    assert "<script" not in made
    assert "&lt;script&gt;" in made


def test_one_number_of_a_word_keeps_the_others() -> None:
    """Who changes one number of `looseness = "loose"` keeps its other four, and the garment is else the same."""
    view = seen(TEE.replace('looseness = "slight"', 'looseness = "loose"'))
    text = with_value(unfolded(view, ("garment", "looseness", "side")), ("garment", "looseness", "side"), "4")
    assert tomllib.loads(text)["garment"]["looseness"] == {"side": 4, "drop": 5, "shoulder": 2, "hem": 0, "scoop": 0}


def test_a_word_in_inches_is_written_out_in_inches() -> None:
    """The numbers of a word are written in the docket's unit: 3 cm are 1.1811 inches."""
    text = TEE.replace('looseness = "slight"', 'looseness = "easy"').replace('unit = "cm"', 'unit = "inch"')
    # The tapes stay in centimetres, said so.
    text = re.sub(r"(?m)^((?:bust|upper_chest|waist|hip|[a-z]+_[a-z]+) = )([\d.]+)( |$)", r'\1"\2 cm"\3', text, count=8)
    text = text.replace("allowance = 1", "").replace("hem = 2.5", "").replace("width = 150", "")
    looseness = tomllib.loads(unfolded(seen(text), ("garment", "looseness", "side")))["garment"]["looseness"]
    assert looseness["drop"] == pytest.approx(3 / 2.54, abs=1e-4)


def test_what_moves_a_size_is_told_in_millimetres() -> None:
    """A quarter of the bust: each centimetre more on the bust tape is 2.5 mm."""
    view = seen()
    assert view.drafted is not None
    movers = explained(view.drafted, "chest_quarter")["movers"]
    assert [(mover["tape"], round(mover["mm"], 3)) for mover in movers] == [("bust", 2.5)]

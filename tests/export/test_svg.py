"""The drawing, read back by a reader of XML and measured anew."""

from __future__ import annotations

import subprocess
import sys
from typing import Any
from xml.etree import ElementTree as ET

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tapeline import project
from tapeline.docket import read_docket
from tapeline.export import svg
from tapeline.finish import Finished
from tapeline.geometry import area
from tapeline.pattern import StepKind
from tapeline.units import Unit
from tests.cli.process import EXAMPLES
from tests.export.garments import tee
from tests.export.readback import area_of, length_of

SVG = "{http://www.w3.org/2000/svg}"
WITHIN = 1e-4
"""0.01 %"""


def by_id(finished: Finished, **choices: Any) -> dict[str, Any]:
    """Every element that has an id, which must be its own."""
    found: dict[str, Any] = {}
    for element in ET.fromstring(svg(finished, **choices)).iter():
        name = element.get("id")
        if name is not None:
            assert name not in found, f"{name} stands twice"
            found[name] = element
    return found


@pytest.mark.parametrize("sleeve", ["short", "long"])
def test_lengths_and_areas_are_the_models(sleeve: str) -> None:
    """Every seam line has its edge's length, and every cut line its area, within 0.01 %."""
    finished = tee(sleeve)
    elements = by_id(finished)
    for piece in finished.pieces:
        name = piece.piece.name
        for edge in piece.piece.edges:
            assert length_of(elements[f"{name}.{edge.name}"].get("d")) == pytest.approx(edge.length, rel=WITHIN)
        drawn = area_of(elements[f"{name}.cut-line"].get("d"))
        assert drawn == pytest.approx(abs(area(piece.cut_line)), rel=WITHIN)


def test_a_unit_of_the_drawing_is_a_millimetre() -> None:
    """Width and height are in mm, and the same as the view box."""
    root = ET.fromstring(svg(tee()))
    _, _, width, height = (root.get("viewBox") or "").split()
    assert (root.get("width"), root.get("height")) == (f"{width}mm", f"{height}mm")


def test_y_is_flipped_once() -> None:
    """Necks are on top: a front's shoulder lies above its hem on the page, and letters are not mirrored."""
    elements = by_id(tee())
    heights = {name: float(elements[f"front.{name}"].get("d").split(",")[1].split()[0]) for name in ("shoulder", "hem")}
    assert heights["shoulder"] < heights["hem"]
    assert "scale(" not in svg(tee())


def test_pieces_and_lines_are_named() -> None:
    """One group for each piece; edges are named after the piece and the edge; notches are numbered."""
    finished = tee()
    elements = by_id(finished)
    assert [name for name in elements if name.startswith("piece-")] == [
        f"piece-{p.piece.name}" for p in finished.pieces
    ]
    for piece in finished.pieces:
        group = elements[f"piece-{piece.piece.name}"]
        assert group.tag == f"{SVG}g"
        ticks = [e for e in group.iter() if e.get("class") == "notch"]
        assert len(ticks) == sum(len(tick.lines) for tick in piece.ticks)
        words = {e.text for e in group.iter(f"{SVG}text")}
        assert piece.piece.title in words
        assert "grain" in words
        assert ("on the fold" in words) == piece.piece.on_fold


@pytest.mark.parametrize("unit", list(Unit))
def test_every_line_says_why_it_is_there(unit: Unit) -> None:
    """The title of an edge holds the words and equations of its step; its data name the step and what it needs."""
    finished = tee()
    elements = by_id(finished, unit=unit, points=True)
    steps = {step.label: step for step in finished.garment.steps if step.kind is not StepKind.SECTION}
    told = 0
    for step in steps.values():
        element = elements.get(step.label) if step.path is not None else elements.get(f"step.{step.label}")
        if element is None:
            element = elements.get(f"step.{step.label}")
        if step.kind is StepKind.SIZE:
            continue
        assert element is not None, step.label
        assert element.get("data-step") == step.label
        assert element.get("data-needs") == " ".join(step.needs)
        title = element.findtext(f"{SVG}title") or ""
        assert step.says in title
        assert all(equation in title for equation in step.equations(unit))
        told += 1
    assert told > 40
    for piece in finished.pieces:
        for edge in piece.piece.edges:
            assert elements[f"{piece.piece.name}.{edge.name}"].findtext(f"{SVG}title")


def test_points_are_drawn_only_when_asked_for() -> None:
    """The usual drawing has none; with `points` each has a mark at its place."""
    finished = tee()
    assert "<circle" not in svg(finished)
    elements = by_id(finished, points=True)
    crown, foot = (elements[f"step.sleeve.{name}"].find(f"{SVG}circle") for name in ("crown", "hem_level"))
    points = finished.garment.points
    down = float(foot.get("cy")) - float(crown.get("cy"))
    assert down == pytest.approx(points["sleeve.crown"].y - points["sleeve.hem_level"].y, abs=1e-3)


def test_the_drawing_is_told_in_words() -> None:
    """A screen reader finds a title and a description with every piece and the length of its edges."""
    finished = tee()
    root = ET.fromstring(svg(finished))
    words = root.findtext(f"{SVG}desc") or ""
    for row in finished.cutting_list:
        assert row.title in words
    armhole = finished.garment.piece("front").edge("armhole").length
    assert f"armhole {armhole / 10:.1f} cm" in words
    assert root.get("role") == "img"
    assert set((root.get("aria-labelledby") or "").split()) <= set(by_id(finished))


def test_words_tell_each_piece_by_its_own_edges() -> None:
    """Pieces of several cloths are told in the order they are drawn, each with its own edges and cloth."""
    finished = project.finished(project.draft(read_docket(EXAMPLES / "hooded-sweatshirt.toml")))
    told = (ET.fromstring(svg(finished)).findtext(f"{SVG}desc") or "").split(". ")
    for piece in (one.piece for one in finished.pieces):
        (own,) = (sentence for sentence in told if sentence.startswith(f"{piece.title} ("))
        assert f"in {piece.cut.cloth})" in own
        assert own.partition("): ")[2].removesuffix(".").split(", ") == [
            f"{edge.name.replace('_', ' ')} {edge.length / 10:.1f} cm" for edge in piece.edges
        ]


@given(st.text(min_size=1, max_size=30))
def test_any_name_of_a_wearer_can_be_read_back(name: str) -> None:
    """Marks of XML, quotes and accents come back as they were; only what XML cannot hold is left out."""
    from dataclasses import replace

    finished = tee()
    root = ET.fromstring(svg(replace(finished, title=replace(finished.title, wearer=name))))
    kept = "".join(
        c for c in name if c in "\t\n" or (c >= " " and not "\ud800" <= c <= "\udfff" and c not in "\ufffe\uffff")
    )
    assert root.findtext(f"{SVG}title") == f"tee for {kept}"


def test_the_same_garment_gives_the_same_drawing() -> None:
    """In another process too, whatever the order of its sets."""
    code = "import sys; from tests.export.garments import tee; from tapeline.export import svg; "
    code += "sys.stdout.buffer.write(svg(tee()).encode())"
    environment = {"PYTHONPATH": ":".join(sys.path), "PYTHONHASHSEED": "11"}
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, check=True, env=environment)
    assert done.stdout.decode() == svg(tee())

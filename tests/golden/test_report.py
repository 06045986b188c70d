"""The page on which old and new golden drawings lie on each other."""

from __future__ import annotations

import re
from html.parser import HTMLParser
from pathlib import Path

import pytest

from scripts import golden_report
from scripts.goldens.apart import apart
from scripts.goldens.page import Golden, page
from scripts.goldens.reading import DrawnPiece, pieces_in
from tapeline.geometry import Point, Rigid, Vector
from tapeline.lengths import cm
from tests.golden.dump import dump
from tests.golden.test_drafts import MARIT
from tests.properties.drafts import draw

ROUNDING_MM = 0.01


def moved(piece: DrawnPiece, by: Vector) -> DrawnPiece:
    """The same piece somewhere else."""
    start = Point(0, 0)
    move = Rigid.laying(start, Vector(1, 0), start + by, Vector(1, 0))
    return DrawnPiece(piece.name, piece.title, tuple((name, path.moved(move)) for name, path in piece.edges))


def test_a_text_gives_back_its_drawing() -> None:
    """Every edge that was written down is read again, to the hundredth of a millimetre that stands there."""
    garment = draw(MARIT)
    read = pieces_in(dump(garment))
    assert list(read) == [piece.name for piece in garment.pieces]
    for piece in garment.pieces:
        assert [name for name, _ in read[piece.name].edges] == [edge.name for edge in piece.edges]
        for edge, (_, path) in zip(piece.edges, read[piece.name].edges, strict=True):
            pairs = zip(edge.path.control_points(), path.control_points(), strict=True)
            assert max(a.distance_to(b) for a, b in pairs) < ROUNDING_MM


@pytest.mark.parametrize("by", [Vector(0, -7.5), Vector(3, 4), Vector(0.3, 0)])
def test_a_moved_outline_is_as_far_as_it_was_moved(by: Vector) -> None:
    """A strip with straight sides is nowhere farther from where it was than it went, and somewhere as far."""
    band = pieces_in(dump(draw(MARIT)))["neckband"]
    far = apart(band, moved(band, by))
    assert far.mm == pytest.approx(by.length, abs=0.02)
    assert far.at.distance_to(far.to) == pytest.approx(far.mm, abs=1e-6)


def test_what_only_one_outline_has_is_seen_from_both_sides() -> None:
    """A hem that was lowered by 2 cm lies 2 cm from the old one, whichever is called old."""
    short, long = (pieces_in(dump(draw(MARIT, length=cm(length))))["back"] for length in (6, 8))
    for one, other in ((short, long), (long, short)):
        assert apart(one, other).mm == pytest.approx(20, abs=0.02)


def test_the_same_drawing_is_no_change() -> None:
    """A page without a change says so, and draws nothing."""
    text = dump(draw(MARIT))
    golden = Golden("marit_tee", text, text)
    assert not golden.changed
    made = page([golden], "HEAD")
    assert "No golden drawing differs" in made
    assert "<svg" not in made


def test_a_change_is_drawn_and_measured() -> None:
    """Each piece that moved is named with its distance; one that did not is the same."""
    old, new = (dump(draw(MARIT, length=cm(length))) for length in (6, 8))
    golden = Golden("marit_tee", old, new)
    assert golden.greatest_mm == pytest.approx(20, abs=0.1)
    made = page([golden], "HEAD")
    assert re.search(r"<td>Back</td><td class=\"mm\">20\.\d\d mm</td>", made)
    assert '<td>Sleeve</td><td class="mm">the same</td>' in made
    assert made.count('class="old"') == 2
    assert "lines of sizes, seams and words changed" in made


def test_a_piece_that_came_or_went_is_said() -> None:
    """A vest has no sleeve, and a band more."""
    tee, vest = (dump(draw(MARIT, style)) for style in ("tee", "vest"))
    made = page([Golden("changed", tee, vest), Golden("fresh", None, vest)], "HEAD")
    assert '<td>Sleeve</td><td class="mm">gone</td>' in made
    assert '<td class="mm">new</td>' in made
    assert "<p>New.</p>" in made


def test_the_page_asks_for_nothing() -> None:
    """No address, no script, no style from elsewhere; names in it are text."""
    found: list[str] = []

    class Reader(HTMLParser):
        def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
            found.extend([tag, *(name for name, _ in attrs)])

    old, new = (dump(draw(MARIT, length=cm(length))) for length in (6, 8))
    made = page([Golden("<script>", old, new.replace("Back,", "<img src=x>,"))], "main")
    Reader().feed(made)
    assert not {"script", "link", "img", "src", "href", "style-src"} & set(found)
    assert "default-src 'none'" in made
    assert "http" not in made.replace("http-equiv", "")


def test_the_command_writes_the_page(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    """It says by how much each piece moved, and where the page is."""
    old, new = (dump(draw(MARIT, length=cm(length))) for length in (6, 8))
    monkeypatch.setattr(golden_report, "drafted", lambda _folder: {"marit_tee": new})
    monkeypatch.setattr(golden_report, "accepted", lambda: {"marit_tee": old})
    out = tmp_path / "new" / "goldens.html"
    assert golden_report.main(["--against", "accepted", "--out", str(out)]) == 0
    told = capsys.readouterr().out
    assert re.search(r"marit_tee: back 20\.\d\d mm, front \d+\.\d\d mm", told)
    assert "<svg" in out.read_text(encoding="utf-8")
    assert [path.name for path in out.parent.iterdir()] == ["goldens.html"]


def test_nothing_drafted_is_a_failure(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    """A page that compares with nothing would say that every drawing is gone."""
    monkeypatch.setattr(golden_report, "drafted", lambda _folder: {})
    assert golden_report.main(["--out", str(tmp_path / "page.html")]) == 1
    assert not (tmp_path / "page.html").exists()

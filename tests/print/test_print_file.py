"""What is inside the file of a print: layers, letters, wishes to the viewer, the same bytes every time."""

from __future__ import annotations

import subprocess
import sys
from io import BytesIO

import pikepdf
import pypdfium2
import pytest

from tapeline.export import paper, pdf, printed
from tapeline.export.fonts import writable
from tapeline.problems import Severity
from tests.export.garments import tee
from tests.print.render import picture

pytestmark = pytest.mark.slow  # pages are rendered and measured

LAYERS = ["Cut line", "Seam line", "Marks", "Words"]


def words_of(data: bytes) -> str:
    """All text of a print, as a reader finds it."""
    file = pypdfium2.PdfDocument(data)
    return "\n".join(page.get_textpage().get_text_bounded() for page in file)


def test_there_is_a_layer_for_each_kind_of_line() -> None:
    """Cut line, seam line, marks and words can be shown and hidden; all are shown at first."""
    with pikepdf.open(BytesIO(pdf(tee(), paper("A4")))) as file:
        properties = file.Root.OCProperties
        assert [str(group.Name) for group in properties.OCGs] == LAYERS
        assert len(properties.D.ON) == len(LAYERS)
        for page in list(file.pages)[1:]:
            (form,) = page.resources.XObject.values()
            names = {str(group.Name) for group in form.Resources.Properties.values()}
            assert names == set(LAYERS)
            content = form.read_bytes()
            assert content.count(b"BDC") == content.count(b"EMC") == len(LAYERS)


@pytest.mark.parametrize("layer", LAYERS)
def test_a_hidden_layer_takes_its_ink_away(layer: str) -> None:
    """A reader that is told to hide one layer shows less on some sheet, and the others stay."""
    data = pdf(tee(), paper("A1"))
    with pikepdf.open(BytesIO(data)) as file:
        groups = list(file.Root.OCProperties.OCGs)
        file.Root.OCProperties.D.OFF = pikepdf.Array([g for g in groups if str(g.Name) == layer])
        file.Root.OCProperties.D.ON = pikepdf.Array([g for g in groups if str(g.Name) != layer])
        out = BytesIO()
        file.save(out)
    box = (0.0, 270.0, 400.0, 400.0)
    shown, hidden = (int((picture("poppler", made, 1, box) < 128).sum()) for made in (data, out.getvalue()))
    assert hidden < shown
    assert hidden > 0.1 * shown


def test_one_drawing_is_replayed_on_every_sheet() -> None:
    """The file holds the pattern once, however many sheets there are."""
    with pikepdf.open(BytesIO(pdf(tee(), paper("A4")))) as file:
        forms = {form.objgen for page in list(file.pages)[1:] for form in page.resources.XObject.values()}
        assert len(forms) == 1


def test_the_viewer_is_asked_not_to_scale() -> None:
    """Viewer preferences say so (ISO 32000-1, table 150), and pages have the size of the paper (1/72 in units)."""
    for name, size in (("A4", (210, 297)), ("Letter", (215.9, 279.4)), ("A0", (841, 1189))):
        with pikepdf.open(BytesIO(pdf(tee(), paper(name)))) as file:
            assert file.Root.ViewerPreferences.PrintScaling == pikepdf.Name("/None")
            for page in file.pages:
                box = [float(v) for v in page.mediabox]
                assert sorted(box[2:]) == pytest.approx([v / 25.4 * 72 for v in size], abs=0.01)
                assert "/UserUnit" not in page


def test_fonts_are_embedded() -> None:
    """No font has to be installed where the file is printed."""
    with pikepdf.open(BytesIO(pdf(tee(), paper("A4")))) as file:
        fonts = [o for o in file.objects if isinstance(o, pikepdf.Dictionary) and o.get("/Type") == "/Font"]
        used = [f for f in fonts if "TapelineWords" in str(f.BaseFont) or "Vera" in str(f.BaseFont)]
        assert used
        assert all("/FontFile2" in f.FontDescriptor for f in used)


def test_the_same_garment_gives_the_same_bytes() -> None:
    """Twice in one process, and once in another: nothing of the clock or the machine is in the file."""
    data = pdf(tee(), paper("A4"))
    assert pdf(tee(), paper("A4")) == data
    code = "import sys; from tests.export.garments import tee; from tapeline.export import paper, pdf; "
    code += "sys.stdout.buffer.write(pdf(tee(), paper('A4')))"
    other = subprocess.run(
        [sys.executable, "-c", code],
        capture_output=True,
        check=True,
        env={"PYTHONPATH": ":".join(sys.path), "PYTHONHASHSEED": "7"},
    )
    assert other.stdout == data


def test_words_with_accents_can_be_read_back() -> None:
    """The wearer's name, the pieces, rows and columns, cautions: as text, not as pictures of letters."""
    text = words_of(pdf(tee(wearer="Zoë Łuczak-Ångström"), paper("A4")))
    for word in (
        "Tee for Zoë Łuczak-Ångström",
        "Front",
        "Back",
        "Sleeve",
        "Neckband",
        "on the fold",
        "grain",
        "row 2, column 1",
    ):
        assert word in text
    for word in ("100 mm", "4 in", "100 %", "pins", "diamonds"):
        assert word in text


def test_letters_that_the_print_lacks_are_replaced_and_said() -> None:
    """A name in another script is printed in the nearest Latin letters, with a note that names the letters."""
    made = printed(tee(wearer="Жанна"), paper("A4"))
    assert "Tee for Zhanna" in words_of(made.data)
    (problem,) = made.problems
    assert (problem.code, problem.severity) == ("letters-replaced", Severity.NOTE)
    assert "Ж" in problem.says
    assert writable("李")[0] == "?"


def test_every_sheet_has_words_for_gluing_on_the_sides_that_join() -> None:
    """A sheet says which margin to cut off exactly where a sheet lies to its left or above it."""
    made = printed(tee(), paper("A4"))
    file = pypdfium2.PdfDocument(made.data)
    printed_tiles = {(t.row, t.column) for t in made.layout.tiles}
    for number, tile in enumerate(made.layout.tiles):
        text = file[1 + number].get_textpage().get_text_bounded()
        joins = ((tile.row, tile.column - 1) in printed_tiles) + ((tile.row - 1, tile.column) in printed_tiles)
        assert text.count("cut off this margin") == joins
        assert (f"column {tile.column + 1} goes on here" in text) == ((tile.row, tile.column + 1) in printed_tiles)
        assert (f"row {tile.row + 1} goes on here" in text) == ((tile.row + 1, tile.column) in printed_tiles)
        assert str(tile) in text

"""The documentation speaks of everything there is, and its links lead somewhere."""

from __future__ import annotations

import re
import subprocess
import sys
import tomllib
import xml.etree.ElementTree as ET
from collections.abc import Iterator, Mapping
from pathlib import Path
from typing import Any

import pytest

import tapeline.docket
import tapeline.project
from scripts.pages.markdown import entry_name
from scripts.pages.problems import codes, sentences
from tapeline.blocks.expectation import armhole_depth_by_rule
from tapeline.cli.commands import COMMANDS
from tapeline.docket.hand_sizes import HAND_SIZES
from tapeline.lengths import cm
from tapeline.measures import LETTER_CODES, TAPES, Figure
from tapeline.styles import STYLES

ROOT = Path(__file__).resolve().parents[2]
DOCS = ROOT / "docs"
PAGES = sorted([*ROOT.glob("*.md"), *DOCS.rglob("*.md")])
LINK = re.compile(r"!?\[[^\]]*\]\(([^)\s]+)\)")
FENCED = re.compile(r"^```.*?^```", re.MULTILINE | re.DOTALL)


def reference(name: str) -> str:
    """A page of the reference."""
    return (DOCS / "reference" / f"{name}.md").read_text(encoding="utf-8")


def headings(page: str) -> list[str]:
    """The headings of a page, without its examples."""
    return re.findall(r"^#+ (.*)$", FENCED.sub("", page), re.MULTILINE)


def test_every_command_has_its_entry() -> None:
    """Each command of the program is a heading of the reference, and its options are below it."""
    page = reference("commands")
    assert set(COMMANDS) <= set(headings(page))
    assert "--json-lines" in page
    assert "--paper" in page


def test_every_tape_has_its_entry() -> None:
    """Each tape is a heading, with how to take it."""
    page = reference("tapes")
    assert set(TAPES) <= set(headings(page))
    for tape in TAPES.values():
        assert tape.take.split(". ")[0] in page


def test_every_problem_has_its_entry() -> None:
    """Each code that the sources use has an entry of two sentences or more, and no entry is left over."""
    said = sentences()
    assert codes() == said.keys()
    assert {"tape-unlikely", "seam-mismatch", "docket-not-toml", "paper-unknown"} <= codes()
    assert set(headings(reference("problems"))) == {"Problems", *said}
    for code, entry in said.items():
        assert set(entry) == {"means", "do"}, code
        assert entry["means"].endswith(".")
        assert entry["do"].endswith(".")


@pytest.mark.parametrize("module", [tapeline.project, tapeline.docket], ids=lambda module: module.__name__)
def test_every_public_name_has_its_entry(module: object) -> None:
    """Python callers find each public name of project and docket."""
    names = set(getattr(module, "__all__", ()))
    assert names
    assert names <= set(headings(reference("python")))


def test_every_docket_key_has_its_entry() -> None:
    """Sizes that can be set by hand, styles, and the keys of the example dockets are in the reference of the docket."""
    page = reference("docket")
    for name in HAND_SIZES:
        assert f"| {name} |" in page
    for style in STYLES:
        assert f"style {style}" in page
    for path in (ROOT / "examples").glob("*.toml"):
        garment = tomllib.loads(path.read_text(encoding="utf-8"))["garment"]
        for name in keys_of(garment):
            # Corrections are the same for every style, and have a table of their own.
            assert f"| {name.removeprefix('corrections.')} |" in page, name


def keys_of(table: Mapping[str, Any], above: str = "") -> Iterator[str]:
    """Every key of a garment's table and of the tables in it."""
    for key, value in table.items():
        if isinstance(value, dict) and key != "sizes":
            yield from keys_of(value, f"{above}{key}.")
        else:
            yield above + key


def test_letter_codes_are_those_of_the_program() -> None:
    """The table of letter codes has a row for each."""
    for size in LETTER_CODES[Figure.WOMAN]:
        assert f"| {size.label} | {size.low_mm / 10:g} to {size.high_mm / 10:g} |" in reference("sizes")


def test_the_table_of_the_frames_is_computed() -> None:
    """At an upper chest of 86 both frames agree; at 98 the rule gives a quarter less 1 (common practice, no source)."""
    page = (DOCS / "explanation" / "frames.md").read_text(encoding="utf-8")
    rows = {
        cells[0]: cells[1:] for line in page.splitlines() if (cells := re.findall(r"[\d.]+", line)) and line[0] == "|"
    }
    assert rows["86"][0] == rows["86"][1]
    assert rows["98"][0] == f"{armhole_depth_by_rule(cm(98)).mm / 10:.1f}" == "23.5"
    assert float(rows["98"][1]) < 23.5


@pytest.mark.parametrize("page", PAGES, ids=[str(page.relative_to(ROOT)) for page in PAGES])
def test_links_lead_somewhere(page: Path) -> None:
    """Every link of a page leads to a file that is there, and to a heading that is in it; none leaves the checkout."""
    text = FENCED.sub("", page.read_text(encoding="utf-8"))
    for link in LINK.findall(text):
        name, _, heading = link.partition("#")
        target = (page.parent / name).resolve() if name else page
        assert target.is_relative_to(ROOT), link
        assert target.exists(), link
        if heading:
            names = [entry_name(words) for words in headings(target.read_text(encoding="utf-8"))]
            assert heading in names, link


def test_every_page_can_be_reached() -> None:
    """From README.md every page of the documentation can be reached by links."""
    seen, open_pages = set(), [ROOT / "README.md"]
    while open_pages:
        page = open_pages.pop()
        if page in seen or page.suffix != ".md":
            continue
        seen.add(page)
        links = LINK.findall(FENCED.sub("", page.read_text(encoding="utf-8")))
        open_pages += [(page.parent / link.partition("#")[0]).resolve() for link in links]
    left = sorted(str(page.relative_to(ROOT)) for page in set(DOCS.rglob("*.md")) - seen)
    assert not left, f"no page links to {', '.join(left)}; docs/README.md is the place"


def test_pictures_have_words_and_are_whole() -> None:
    """Each picture is well-formed and says what it shows; each use of one has words beside it."""
    pictures = sorted((DOCS / "images").glob("*.svg"))
    assert len(pictures) >= 3
    for picture in pictures:
        root = ET.fromstring(picture.read_text(encoding="utf-8"))
        title = root.find("{http://www.w3.org/2000/svg}title")
        assert title is not None
        assert title.text
    for page in PAGES:
        for words in re.findall(r"!\[([^\]]*)\]", page.read_text(encoding="utf-8")):
            assert len(words) > 10


def test_one_sentence_a_line() -> None:
    """Prose in the docs has one sentence on each line, so that a change of one shows as one."""
    for page in PAGES:
        if (
            page.is_relative_to(DOCS / "reference")
            or page.parent == ROOT
            or "<!-- Written by" in page.read_text("utf-8")
        ):
            continue  # pages that the program writes are not written sentence by sentence
        for line in FENCED.sub("", page.read_text(encoding="utf-8")).splitlines():
            if not line.startswith(("-", "|", "!", "[", "#", "**", "   ", "<")) and not re.match(r"\d\. ", line):
                assert not re.search(r"[a-z)`]\. [A-Z]", line), f"{page.name}: {line}"


@pytest.mark.slow
def test_a_change_in_the_program_is_seen(tmp_path: Path) -> None:
    """The reference compares as up to date; with a line taken out of a page it does not."""
    script = ROOT / "scripts" / "reference.py"
    done = subprocess.run([sys.executable, script, "--check"], capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stdout + done.stderr
    text = f"""
import runpy, sys
from collections.abc import Iterator, Mapping
from pathlib import Path
from typing import Any
module = runpy.run_path({str(script)!r}, run_name="reference")
module["REFERENCE"]["tapes.md"] = lambda: "# Tapes\\n"
sys.exit(module["check"]())
"""
    (tmp_path / "changed.py").write_text(text, encoding="utf-8")
    done = subprocess.run([sys.executable, tmp_path / "changed.py"], capture_output=True, text=True, check=False)
    assert done.returncode == 1
    assert "docs/reference/tapes.md is not what the program says now" in done.stdout

"""Script in every text of a docket is text everywhere: in each place, in the drawing and in each file."""

from __future__ import annotations

import shutil
import subprocess
from html.parser import HTMLParser
from pathlib import Path
from xml.etree import ElementTree as ET

import pytest

from tests.web.test_app import Client

SCRIPT = '<script>alert("x")</script>'
BREAKOUTS = (
    SCRIPT,
    '"><img src=x onerror=alert(1)>',
    "' onfocus=alert(1) autofocus='",
    "</textarea></script><svg/onload=alert(1)>",
    "]]></style><script>alert(1)</script>",
    "{{ 7 * 191 }}",
)
WORDS = ("wearer.name", "cloth.kind", "garment.band.cloth")
"""Free words: the garment is drafted with them."""
OTHERS = (
    *("allow", "wearer.figure", "wearer.unit", "wearer.size", "wearer.tapes.bust", "wearer.tapes.head_girth"),
    *("garment.style", "garment.frame", "garment.looseness", "garment.looseness.side", "garment.neckline.widen"),
    *("garment.neckline", "garment.band", "garment.band.width", "garment.waist", "garment.length", "garment.sleeve"),
    *("garment.sleeve.length", "garment.sleeve.cap", "garment.sleeve.cap.share", "garment.sizes.neck_width"),
    *("cloth.width", "cloth.stretch_across", "cloth.shrink_length", "finish.allowance", "finish.allowance.default"),
    *("finish.hem", "finish.notch", "finish.paper", "wearer", "garment", "cloth", "finish"),
)
"""Wherever else a docket can hold a text."""
PARENTS = (
    "",
    "wearer",
    "wearer.tapes",
    "garment",
    "garment.sizes",
    "garment.sleeve",
    "cloth",
    "finish",
    "finish.allowance",
)
"""Where a key can be written that is a script itself."""


class Watched(HTMLParser):
    """Reads HTML as a browser does, and notes what would run."""

    def __init__(self) -> None:
        super().__init__()
        self.runs: list[str] = []

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        """Note script other than our own, handlers, and addresses that run."""
        given = dict(attrs)
        if tag == "script" and given.get("type") not in {"module", "application/json"}:
            self.runs.append(tag)
        self.runs += [name for name, _ in attrs if name.startswith("on")]
        self.runs += [value for _, value in attrs if value and value.strip().lower().startswith("javascript:")]
        if tag in {"img", "iframe", "object", "embed", "base"}:
            self.runs.append(tag)


def runs(html: str) -> list[str]:
    """What would run in a page."""
    watched = Watched()
    watched.feed(html)
    watched.close()
    return watched.runs


def seen(client: Client) -> list[str]:
    """What would run on the page, in any of its places and in the drawing."""
    state = client.ask("GET", "/state").json()
    parts = [*state["places"].values(), state["drawing"] or "", client.ask("GET", "/").text]
    found = [run for part in parts for run in runs(part)]
    found += ["template"] * sum(str(7 * 191) in part for part in parts)
    return found


def test_what_would_run_would_be_found() -> None:
    """The watcher sees script, handlers and foreign elements."""
    assert runs(f"<p>{SCRIPT}</p><img src=x onerror=alert(1)>") == ["script", "onerror", "img"]
    assert runs('<a href="javascript:alert(1)">') == ["javascript:alert(1)"]


@pytest.mark.slow
@pytest.mark.parametrize("script", BREAKOUTS)
def test_in_every_value(script: str) -> None:
    """Each value of a docket in turn: nothing runs in any place of the page."""
    client = Client()
    for keys in (*WORDS, *OTHERS):
        answer = client.ask("POST", "/edit", {"keys": keys.split("."), "value": script})
        assert answer.status_code == 200, keys
        assert seen(client) == [], keys
        client.ask("POST", "/undo")


@pytest.mark.slow
@pytest.mark.parametrize("script", BREAKOUTS)
def test_in_every_key(script: str) -> None:
    """A key that is a script is told as wrong, as text."""
    client = Client()
    for keys in PARENTS:
        answer = client.ask("POST", "/edit", {"keys": [*keys.split("."), script] if keys else [script], "value": "1"})
        assert answer.status_code == 200, keys
        assert seen(client) == [], keys
        client.ask("POST", "/undo")


@pytest.mark.slow
@pytest.mark.parametrize("script", BREAKOUTS)
def test_in_files(script: str, tmp_path: Path) -> None:
    """In the drawing and the report nothing runs; in print the words stand as they were typed."""
    client = Client()
    for keys in WORDS:
        client.edit(keys, script)
    assert client.ask("GET", "/state").json()["drawing"]
    assert runs(client.ask("GET", "/download/html").text) == []
    drawing = ET.fromstring(client.ask("GET", "/download/svg").content)
    local = {element.tag.rpartition("}")[2] for element in drawing.iter()}
    assert not local & {"script", "foreignObject", "image", "a", "iframe", "img", "set", "animate"}
    assert not [name for element in drawing.iter() for name in element.attrib if name.startswith("on")]
    assert script in "".join(drawing.itertext())
    reader = shutil.which("pdftotext")
    assert reader, "poppler's pdftotext reads the print; ./check sets it up"
    printed = client.ask("GET", "/download/pdf").content
    (tmp_path / "print.pdf").write_bytes(printed)
    text = subprocess.run(
        [reader, "-raw", tmp_path / "print.pdf", "-"], capture_output=True, text=True, check=True
    ).stdout
    assert "".join(script.split()) in "".join(text.split())
    assert b"/JavaScript" not in printed
    assert b"/OpenAction" not in printed

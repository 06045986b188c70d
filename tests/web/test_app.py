"""The application: what is asked of it, and what it answers."""

from __future__ import annotations

import asyncio
import json
from pathlib import Path
from typing import Any

import httpx
import pytest

from tapeline.web.app import application
from tapeline.web.journal import Journal
from tapeline.web.table import Table

DOCKET = (Path(__file__).parents[2] / "examples" / "tee.toml").read_text(encoding="utf-8")


class Client:
    """Asks one table, request by request."""

    def __init__(self, text: str = DOCKET) -> None:
        self.table = Table(Journal.opened(None, text), "tee.toml")
        self.app = application(self.table)

    def ask(self, method: str, path: str, body: Any = None) -> httpx.Response:
        """One request."""

        async def asking() -> httpx.Response:
            transport = httpx.ASGITransport(app=self.app)
            async with httpx.AsyncClient(transport=transport, base_url="http://127.0.0.1") as client:
                content = body if isinstance(body, bytes) else None if body is None else json.dumps(body).encode()
                return await client.request(method, path, content=content)

        return asyncio.run(asking())

    def edit(self, keys: str, value: str | None) -> dict[str, Any]:
        """Set one value."""
        answer: dict[str, Any] = self.ask("POST", "/edit", {"keys": keys.split("."), "value": value}).json()
        return answer


@pytest.fixture
def client() -> Client:
    """A table with Marit's tee."""
    return Client()


def test_an_edit_changes_one_value_and_draws_anew(client: Client) -> None:
    """The docket keeps its remarks; the drawing and every place follow."""
    before = client.ask("GET", "/state").json()
    after = client.edit("wearer.tapes.bust", "98")
    assert "bust = 98" in after["text"]
    assert after["text"].count("#") == before["text"].count("#")
    assert after["drawing"] != before["drawing"]
    assert after["version"] > before["version"]
    assert after["undo"]


def test_the_drawing_comes_first_where_it_is_asked_for(client: Client) -> None:
    """It is the whole answer's drawing, with what is written; the places are there when they are asked for."""
    asked = {"keys": ["wearer", "tapes", "bust"], "value": "98", "place": "measure", "first": True}
    first = client.ask("POST", "/edit", asked).json()
    assert "places" not in first
    whole = client.ask("GET", "/state?place=measure").json()
    assert list(whole["places"]) == ["measure"]
    assert "98" in whole["places"]["measure"]
    assert {key: whole[key] for key in first} == first


def test_what_cannot_be_drawn_says_why_at_once(client: Client) -> None:
    """Where there is no drawing to come first, the place in view comes with its problems."""
    asked = {"keys": ["wearer", "tapes", "hip"], "value": "9.8", "place": "measure", "first": True}
    answer = client.ask("POST", "/edit", asked).json()
    assert answer["drawing"] is None
    assert answer["errors"] == 1
    assert "9.8" in answer["places"]["measure"]


def test_undo_and_redo_bring_the_same_drawing(client: Client) -> None:
    """Taking a change back gives the drawing that was."""
    first = client.ask("GET", "/state").json()["drawing"]
    second = client.edit("garment.length", "10")["drawing"]
    assert client.ask("POST", "/undo").json()["drawing"] == first
    assert client.ask("POST", "/redo").json()["drawing"] == second


def test_a_wrong_value_is_said_beside_its_field_and_the_drawing_stays(client: Client) -> None:
    """9.8 for 98 draws nothing new, says so at the tape, and loses nothing."""
    after = client.edit("wearer.tapes.hip", "9.8")
    assert after["drawing"] is None
    assert after["errors"] == 1
    assert "9.8" in after["places"]["measure"]
    assert client.edit("wearer.tapes.hip", "101")["drawing"] is not None


def test_a_text_that_is_no_toml_is_kept_and_its_fields_wait(client: Client) -> None:
    """The text stays as typed; editing fields is refused until it can be read again."""
    version = client.table.journal.version
    answer = client.ask("POST", "/text", {"base": version, "text": "[wearer\nname ="})
    assert answer.status_code == 200
    assert answer.json()["errors"] >= 1
    assert client.ask("POST", "/edit", {"keys": ["garment", "waist"], "value": "1"}).status_code == 409
    assert client.table.journal.text == "[wearer\nname ="


def test_an_older_window_does_not_write_over_a_newer(client: Client) -> None:
    """A whole text is taken only on top of what the window has seen."""
    seen = client.table.journal.version
    client.edit("garment.waist", "1")
    answer = client.ask("POST", "/text", {"base": seen, "text": "x = 1"})
    assert answer.status_code == 409
    assert "garment" in answer.json()["text"]


@pytest.mark.parametrize(
    "body",
    [
        b"",
        b"[]",
        b"{",
        b"nonsense",
        b'{"keys": []}',
        b'{"keys": ["a"], "value": 3}',
        b'{"keys": "a"}',
        b"[" * 5000,
        b'{"keys": ["a", "a", "a", "a", "a", "a"], "value": "1"}',
    ],
)
def test_nonsense_is_refused_and_changes_nothing(client: Client, body: bytes) -> None:
    """What is no edit is answered with why, and the docket stays."""
    before = client.table.journal.text
    assert client.ask("POST", "/edit", body).status_code == 400
    assert client.table.journal.text == before


def test_downloads_have_their_kinds(client: Client) -> None:
    """Print, drawing, data, report and docket, each as what it is."""
    for kind, begins in (("pdf", b"%PDF"), ("svg", b"<?xml"), ("json", b"{"), ("html", b"<!"), ("toml", b"#")):
        answer = client.ask("GET", f"/download/{kind}")
        assert answer.status_code == 200
        assert answer.content.startswith(begins)
        assert f"tee.{kind}" in answer.headers["content-disposition"]


def test_hand_sheets_are_downloads_too(client: Client) -> None:
    """The wearer's, and one for a class, under names that say which is which."""
    for kind in ("hand-sheet", "class-sheet"):
        answer = client.ask("GET", f"/download/{kind}")
        assert answer.headers["content-type"] == "application/pdf"
        assert answer.content.startswith(b"%PDF")
        assert f"tee-{kind}.pdf" in answer.headers["content-disposition"]


def test_files_for_machines_are_downloads_too(client: Client) -> None:
    """Exchange file, curves and plotter file, under names that say which is which."""
    for kind, name, begins in (
        ("dxf", "tee.dxf", b"  0\nSECTION"),
        ("curves", "tee-curves.dxf", b"  0\nSECTION"),
        ("plotter", "tee.plt", b"IN;"),
        ("projection", "tee-projection.pdf", b"%PDF"),
    ):
        answer = client.ask("GET", f"/download/{kind}")
        assert answer.status_code == 200
        assert answer.content.startswith(begins)
        assert name in answer.headers["content-disposition"]


def test_without_a_garment_a_print_says_why() -> None:
    """A docket that is not whole gives no file, and says what is missing."""
    answer = Client('[wearer]\nfigure = "woman"\n').ask("GET", "/download/pdf")
    assert answer.status_code == 422
    assert "there is no tape for" in answer.json()["problem"]


def test_an_edit_may_ask_for_the_place_in_view_alone(client: Client) -> None:
    """The answer then has that place and the drawing; the whole state has all places, with the same words in it."""
    asked = {"keys": ["wearer", "tapes", "bust"], "value": "98", "place": "draft"}
    answer = client.ask("POST", "/edit", asked).json()
    whole = client.ask("GET", "/state").json()
    assert list(answer["places"]) == ["draft"]
    assert len(whole["places"]) > 1
    assert answer["places"]["draft"] == whole["places"]["draft"]
    assert answer["drawing"] == whole["drawing"]


def test_what_moves_a_line_can_be_asked(client: Client) -> None:
    """The tapes come with the strongest first; what is not there is refused in words."""
    told = client.ask("GET", "/explain?what=front.armhole").json()["movers"]
    assert [abs(mover["mm"]) for mover in told] == sorted((abs(mover["mm"]) for mover in told), reverse=True)
    refused = client.ask("GET", "/explain?what=front.pocket")
    assert refused.status_code == 422
    assert "front.pocket" in refused.json()["problem"]


def test_a_choice_that_is_refused_can_be_mended_where_it_was_written(client: Client) -> None:
    """The field stays, with what was typed in it, and the reason beside it; other choices keep what was chosen."""
    client.edit("garment.neckline.widen", "2")
    answer = client.edit("garment.neckline.lower_front", "99")
    style = answer["places"]["style"]
    assert answer["drawing"] is None
    assert 'data-keys="garment.neckline.lower_front" value="99"' in style
    assert 'data-keys="garment.neckline.widen" value="2"' in style
    assert "lower_front is 99" in style
    assert client.edit("garment.neckline.lower_front", "2")["drawing"] is not None


def test_a_size_set_by_hand_that_is_refused_can_be_mended_where_it_was_written(client: Client) -> None:
    """The field stays with the reason beside it, and goes back to the rule with one press."""
    answer = client.edit("garment.sizes.neck_width", "99")
    assert answer["drawing"] is None
    assert 'data-keys="garment.sizes.neck_width" value="99"' in answer["places"]["draft"]
    assert "neck_width is 99" in answer["places"]["draft"]
    assert client.edit("garment.sizes.neck_width", "")["drawing"] is not None


def test_a_word_of_the_style_says_its_numbers(client: Client) -> None:
    """Beside each word stands what it means; numbers in its place choose no word and open their fields."""
    style = client.edit("garment.looseness", "easy")["places"]["style"]
    assert 'id="garment-looseness-easy" value="easy" data-keys="garment.looseness" checked' in style
    assert "side 5 cm, drop 5 cm, shoulder 2 cm" in style  # common practice, no source
    assert 'id="garment-looseness-own" hidden' in style
    for keys, value in (("garment.looseness.side", "4"), ("garment.looseness.side", "99")):
        style = client.edit(keys, value)["places"]["style"]
        assert 'data-opens="garment-looseness-own" checked' in style
        assert 'id="garment-looseness-own" hidden' not in style
        assert f'data-keys="garment.looseness.side" value="{value}"' in style


def test_a_word_without_numbers_offers_none(client: Client) -> None:
    """A kind of pocket is a word and nothing else; a looseness may have numbers of its own."""
    style = client.edit("garment.pocket.kind", "kangaroo")["places"]["style"]
    assert 'id="garment-pocket-kind-kangaroo" value="kangaroo"' in style
    assert 'id="garment-pocket-kind-numbers"' not in style
    assert 'id="garment-looseness-numbers"' in style


def test_a_sleeve_can_have_a_length_of_its_own(client: Client) -> None:
    """A length stands in the place of the word, and a word in the place of the length; what is refused stays."""
    assert "length = 30" in client.edit("garment.sleeve.length", "30")["text"]
    refused = client.edit("garment.sleeve.length", "300")
    assert refused["drawing"] is None
    assert (
        'id="garment-sleeve-length-length" data-keys="garment.sleeve.length" value="300"' in refused["places"]["style"]
    )
    assert 'length = "long"' in client.edit("garment.sleeve.length", "long")["text"]

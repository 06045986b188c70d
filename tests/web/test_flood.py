"""Too much of everything: long texts, many keys, many requests at once. All is answered, and the table still serves."""

from __future__ import annotations

import asyncio
import time
from collections import Counter
from pathlib import Path

import httpx
import pytest

from tapeline.web.app import application
from tapeline.web.guard import Guard
from tapeline.web.journal import Journal
from tapeline.web.table import Table
from tapeline.web.view import MOST_TOLD
from tapeline.web.workbench import MOST

HOST = "127.0.0.1:8123"
KEY = "a-key"
AT_ONCE = 200
DOCKET = (Path(__file__).parents[2] / "examples" / "tee.toml").read_text(encoding="utf-8")


def requests(*asked: tuple[str, str, object], chunked: bytes = b"") -> list[httpx.Response]:
    """All of these at once, at one guarded table; a last request looks whether it still serves."""
    guard = Guard(application(Table(Journal.opened(None, DOCKET), "tee.toml")), KEY)

    async def parts() -> object:
        for at in range(0, len(chunked), 65536):
            yield chunked[at : at + 65536]

    async def asking() -> list[httpx.Response]:
        transport = httpx.ASGITransport(app=guard)
        heads = {"cookie": f"tapeline_8123={KEY}"}
        async with httpx.AsyncClient(transport=transport, base_url=f"http://{HOST}", headers=heads) as client:
            made = [
                client.request(method, path, content=body)
                if isinstance(body, bytes)
                else client.request(method, path, json=body)
                for method, path, body in asked
            ]
            if chunked:
                made.append(client.post("/text", content=parts()))  # type: ignore[arg-type]  # httpx takes any iterator
            answers = await asyncio.gather(*made)
            last = await client.get("/state")
            assert last.status_code == 200
            assert last.json()["drawing"] or last.json()["errors"]
            return list(answers)

    return asyncio.run(asking())


def keys(number: int) -> str:
    """A docket with that many keys that are none of ours."""
    return "[wearer]\n" + "".join(f"{n:x}k=1\n" for n in range(number))


def test_a_docket_of_5_mb_is_not_read() -> None:
    """Whether it says how long it is or comes in parts, it is refused before it is read."""
    long = b"#" * 5_000_000
    said, in_parts = requests(("POST", "/text", long), chunked=long)
    assert (said.status_code, said.text) == (413, "refused: size")
    assert (in_parts.status_code, in_parts.text) == (413, "refused: size")


def test_100_000_keys_are_refused_in_words() -> None:
    """That is longer than the command line takes, too; the docket that was there stays."""
    begun = time.monotonic()
    (answer,) = requests(("POST", "/text", {"base": 1, "text": keys(100_000)}))
    assert answer.status_code == 413
    assert "longer than 256 kB" in answer.json()["problem"]
    assert time.monotonic() - begun < 10


def test_one_value_cannot_make_the_docket_too_long() -> None:
    """What is refused as a text is refused as an edit."""
    (answer,) = requests(("POST", "/edit", {"keys": ["wearer", "name"], "value": "é" * 140_000}))
    assert answer.status_code == 413
    assert "the one you have stays" in answer.json()["problem"]


@pytest.mark.slow
def test_as_many_wrong_keys_as_fit_are_told_on_a_short_page() -> None:
    """Thirty thousand problems are counted, a hundred are listed, and the answer stays small."""
    text = keys(30_000)
    assert 200 * 1024 < len(text) < 256 * 1024
    begun = time.monotonic()
    (answer,) = requests(("POST", "/text", {"base": 1, "text": text}))
    taken = time.monotonic() - begun
    state = answer.json()
    assert state["errors"] > 30_000 - 1
    assert state["places"]["docket"].count('class="problem error"') == MOST_TOLD
    assert f"And {state['errors'] - MOST_TOLD} more." in state["places"]["docket"]
    assert len(answer.content) < 2_000_000
    assert taken < 30


@pytest.mark.parametrize("text", ["\ud800", 'name = "\udfff"'])
def test_half_a_sign_is_no_text(text: str) -> None:
    """JSON can write half of a sign; it could be neither kept nor shown, so it is refused (RFC 8259, section 8.2)."""
    body = f'{{"base": 1, "text": {ascii(text)!s}}}'.replace("'", '"').encode()
    named = b'{"keys": ["wearer", "name"], "value": "\\ud800"}'
    keyed = b'{"keys": ["wearer", "\\ud800"], "value": "1"}'
    answers = requests(
        ("POST", "/text", body), ("POST", "/edit", named), ("POST", "/edit", keyed), ("POST", "/try", named)
    )
    assert [answer.status_code for answer in answers] == [400] * 4


@pytest.mark.slow
@pytest.mark.parametrize("path", ["/state", "/static/page.js"])
def test_200_windows_at_once_are_answered(path: str) -> None:
    """Each gets its answer, or is told to ask again; never a fault."""
    begun = time.monotonic()
    counted = Counter(answer.status_code for answer in requests(*[("GET", path, None)] * AT_ONCE))
    assert set(counted) <= {200, 503}
    assert counted[200] >= MOST
    assert time.monotonic() - begun < 120


@pytest.mark.slow
@pytest.mark.parametrize("path", ["/download/pdf", "/explain?what=front.armhole"])
def test_heavy_work_does_not_pile_up(path: str) -> None:
    """Of 200 prints that are asked for at once a few are made, and the others are told at once to ask again."""
    begun = time.monotonic()
    answers = requests(*[("GET", path, None)] * AT_ONCE)
    counted = Counter(answer.status_code for answer in answers)
    assert counted == {200: MOST, 503: AT_ONCE - MOST}
    refused = next(answer for answer in answers if answer.status_code == 503)
    assert refused.json()["problem"] == "too much is asked for at once: ask again in a moment"
    assert time.monotonic() - begun < 120


@pytest.mark.slow
def test_200_edits_at_once_are_all_written() -> None:
    """One after the other; the version counts each."""
    edits = [
        ("POST", "/edit", {"keys": ["garment", "waist"], "value": f"{n / 100 + 0.5:g}", "place": "measure"})
        for n in range(AT_ONCE)
    ]
    answers = requests(*edits)
    assert {answer.status_code for answer in answers} == {200}
    assert {answer.json()["version"] for answer in answers} == set(range(2, AT_ONCE + 2))

"""The guard: who may speak to the page, and who is refused."""

from __future__ import annotations

import asyncio
from pathlib import Path

import httpx
import pytest

from tapeline.web.app import application
from tapeline.web.guard import MOST_BYTES, Guard
from tapeline.web.journal import Journal
from tapeline.web.table import Table

HOST = "127.0.0.1:8123"
KEY = "a-key"
COOKIE = f"tapeline_8123={KEY}"
DOCKET = (Path(__file__).parents[2] / "examples" / "tee.toml").read_text(encoding="utf-8")


def ask(method: str, path: str, heads: dict[str, str] | None = None, content: bytes | None = None) -> httpx.Response:
    """One request, as it would come over the wire."""
    guard = Guard(application(Table(Journal.opened(None, DOCKET), "tee.toml")), KEY)

    async def asking() -> httpx.Response:
        transport = httpx.ASGITransport(app=guard)
        async with httpx.AsyncClient(transport=transport, base_url=f"http://{HOST}") as client:
            return await client.request(method, path, headers=heads or {}, content=content)

    return asyncio.run(asking())


def test_with_the_key_the_page_is_shown() -> None:
    """The browser that was handed the key sees the page, under a policy that allows nothing from elsewhere."""
    answer = ask("GET", "/", {"cookie": COOKIE})
    assert answer.status_code == 200
    assert "Tee for Marit" in answer.text
    assert "default-src 'none'" in answer.headers["content-security-policy"]


def test_the_key_is_handed_out_once_as_a_cookie_that_no_script_reads() -> None:
    """The address that was opened is turned into a cookie for this site alone."""
    answer = ask("GET", f"/?key={KEY}")
    assert answer.status_code == 303
    cookie = answer.headers["set-cookie"]
    assert "HttpOnly" in cookie
    assert "SameSite=Strict" in cookie


@pytest.mark.parametrize(
    ("heads", "why"),
    [
        ({}, "key"),
        ({"cookie": "tapeline_8123=another"}, "key"),
        ({"cookie": "tapeline_9999=" + KEY}, "key"),
        ({"cookie": COOKIE, "host": "evil.example:8123"}, "host"),
        ({"cookie": COOKIE, "host": "127.0.0.1.evil.example"}, "host"),
        ({"cookie": COOKIE, "origin": "http://evil.example"}, "origin"),
        ({"cookie": COOKIE, "origin": "null"}, "origin"),
    ],
)
def test_strangers_are_refused(heads: dict[str, str], why: str) -> None:
    """Without the key, under a foreign name or from a foreign page, nothing is shown or changed."""
    for method, path in (
        ("GET", "/"),
        ("POST", "/edit"),
        ("GET", "/download/pdf"),
        ("GET", "/seam?name=side"),
        ("GET", "/static/page.js"),
    ):
        answer = ask(method, path, heads, b"{}" if method == "POST" else None)
        assert answer.status_code == 403
        assert answer.text == f"refused: {why}"


def test_a_form_on_another_site_changes_nothing() -> None:
    """A browser says where a post comes from, and a post from another site is refused."""
    answer = ask("POST", "/undo", {"cookie": COOKIE, "sec-fetch-site": "cross-site"}, b"a=1")
    assert answer.text == "refused: site"


def test_what_is_too_long_is_not_read() -> None:
    """A docket has a few thousand letters; five million are refused before they are read."""
    answer = ask("POST", "/text", {"cookie": COOKIE}, b"x" * (MOST_BYTES + 1))
    assert answer.status_code == 413


@pytest.mark.parametrize(
    "path",
    ["/download/../../etc/passwd", "/download/..%2f..%2fetc%2fpasswd", "/static/../app.py", "/static/%2e%2e/app.py"],
)
def test_no_path_leads_out(path: str) -> None:
    """Only our own static files and the five kinds of download are served."""
    answer = ask("GET", path, {"cookie": COOKIE})
    assert answer.status_code == 404
    assert "root:" not in answer.text
    assert "Starlette" not in answer.text


def test_a_seam_is_laid_out_for_whoever_has_the_key() -> None:
    """A seam of the garment is shown; what is no seam is refused in words, and not shown back."""
    assert "rolls along it" in ask("GET", "/seam?name=side", {"cookie": COOKIE}).json()["html"]
    refused = ask("GET", "/seam?name=%3Cscript%3E", {"cookie": COOKIE})
    assert refused.status_code == 422
    assert "script" not in refused.text

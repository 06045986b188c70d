"""The door: the page opened to other machines asks for the password, and does not tire of wrong ones."""

from __future__ import annotations

import asyncio
from collections.abc import Callable
from pathlib import Path

import httpx
import pytest

from tapeline.web.app import application
from tapeline.web.door import Door, Password
from tapeline.web.guard import Guard
from tapeline.web.journal import Journal
from tapeline.web.table import Table
from tapeline.web.tries import LONGEST, MOST_ADDRESSES, MOST_AT_ONCE, Tries

HOST = "192.0.2.20:8123"  # an address for documentation, RFC 5737
KEY = "a-key"
COOKIE = f"tapeline_8123={KEY}"
WORD = "blue thread, long séam"
DOCKET = (Path(__file__).parents[2] / "examples" / "tee.toml").read_text(encoding="utf-8")


class Clock:
    """A clock that is set by hand."""

    now = 0.0

    def __call__(self) -> float:
        """Seconds."""
        return self.now


class House:
    """A page behind a door."""

    def __init__(self) -> None:
        self.clock = Clock()
        table = Table(Journal.opened(None, DOCKET), "tee.toml", shared=f"http://{HOST}/")
        door = Door(Password.of(WORD), HOST, Tries(clock=self.clock))
        self.guard = Guard(application(table), KEY, exactly=frozenset({HOST}), door=door)

    def ask(
        self,
        method: str,
        path: str,
        *,
        heads: dict[str, str] | None = None,
        form: dict[str, str] | None = None,
        content: bytes | None = None,
        client: str = "192.0.2.7",
    ) -> httpx.Response:
        """One request, from an address."""

        async def asking() -> httpx.Response:
            transport = httpx.ASGITransport(app=self.guard, client=(client, 5000))
            async with httpx.AsyncClient(transport=transport, base_url=f"http://{HOST}") as asker:
                if form is not None:
                    return await asker.request(method, path, headers=heads, data=form)
                return await asker.request(method, path, headers=heads, content=content)

        return asyncio.run(asking())

    def enter(self, word: str, client: str = "192.0.2.7") -> httpx.Response:
        """Try a password."""
        return self.ask("POST", "/enter", form={"password": word}, client=client)


@pytest.fixture
def house() -> House:
    """A page behind a door, at which nobody has tried yet."""
    return House()


def test_a_stranger_is_asked_and_sees_nothing_else(house: House) -> None:
    """Whoever has no key gets a form without script and without a word of the docket; all else is refused."""
    asked = house.ask("GET", "/")
    assert asked.status_code == 200
    assert 'for="password"' in asked.text
    assert "<script" not in asked.text
    assert "Marit" not in asked.text
    assert "not encrypted" in asked.text
    assert "frame-ancestors 'none'" in asked.headers["content-security-policy"]
    for method, path in (("GET", "/state"), ("POST", "/edit"), ("GET", "/download/pdf"), ("GET", "/static/page.js")):
        assert (house.ask(method, path).status_code, house.ask(method, path).text) == (403, "refused: key")


def test_the_right_password_is_answered_with_the_cookie_alone(house: House) -> None:
    """The key comes as a cookie that no script reads, and neither it nor the password comes into an address."""
    answer = house.enter(WORD)
    assert (answer.status_code, answer.headers["location"]) == (303, "/")
    assert answer.headers["set-cookie"] == f"{COOKIE}; HttpOnly; SameSite=Strict; Path=/"
    page = house.ask("GET", "/", heads={"cookie": COOKIE})
    assert "Tee for Marit" in page.text
    assert "everybody with the password sees and changes this docket" in page.text
    assert "nothing leaves this machine" not in page.text
    assert house.ask("POST", "/enter", heads={"cookie": COOKIE}).headers["location"] == "/"
    assert house.ask("GET", "/enter").headers["location"] == "/"
    assert house.ask("GET", f"/?key={KEY}").status_code == 200  # the form: an address is no way in
    assert "set-cookie" not in house.ask("GET", f"/?key={KEY}").headers


def test_letters_may_be_written_in_either_form(house: House) -> None:
    """An accented letter is the same letter when a keyboard writes it as two signs (Unicode, canonical equivalence)."""
    assert house.enter(WORD.replace("é", "e\N{COMBINING ACUTE ACCENT}")).status_code == 303


@pytest.mark.parametrize("word", ["", "blue thread, long séa", WORD + " ", WORD.upper(), "\0", "é" * 400])
def test_a_wrong_password_is_told_and_not_shown_back(house: House, word: str) -> None:
    """The form comes again, says so where a screen reader hears it, and holds nothing of what was typed."""
    answer = house.enter(word)
    assert answer.status_code == 403
    assert 'role="alert">That is not the password.' in answer.text
    assert "set-cookie" not in answer.headers
    assert word == "" or word not in answer.text


@pytest.mark.parametrize(
    "content",
    [
        b"",
        b"password",
        b"\xff\xfe",
        b"password=" + b"x" * 100_000,
        b"a=1&" * 5000,
        b"password=a&password=b",
        f'{{"password": "{WORD}"}}'.encode(),
    ],
)
def test_what_is_no_form_is_a_wrong_try(house: House, content: bytes) -> None:
    """Nonsense is answered like a wrong password, and counted like one."""
    for status in (403, 403, 403, 429):
        assert house.ask("POST", "/enter", content=content).status_code == status


def test_a_form_that_never_ends_is_given_up(house: House, monkeypatch: pytest.MonkeyPatch) -> None:
    """Whoever sends a form letter by letter is not waited for."""
    monkeypatch.setattr("tapeline.web.door.LONGEST", 0.05)
    sent = []

    async def receive() -> dict[str, object]:
        await asyncio.sleep(0.02)
        return {"type": "http.request", "body": b"p", "more_body": True}

    async def send(message: dict[str, object]) -> None:
        sent.append(message)

    heads = [(b"host", HOST.encode())]
    scope = {"type": "http", "method": "POST", "path": "/enter", "query_string": b"", "headers": heads, "client": None}
    asyncio.run(asyncio.wait_for(house.guard(scope, receive, send), 5))  # type: ignore[arg-type]  # plain dictionaries
    assert sent[0]["status"] == 403


def test_wrong_tries_cost_a_wait_that_grows_and_ends(house: House) -> None:
    """Three are free; then the wait doubles to a minute, and not even the right password is looked at meanwhile."""
    for _ in range(3):
        assert house.enter("guess").status_code == 403
    waits = []
    for _ in range(9):
        answer = house.enter(WORD)
        assert answer.status_code == 429
        waits.append(int(answer.headers["retry-after"]))
        assert (f"in {waits[-1]} seconds." if waits[-1] > 1 else "in a second.") in answer.text
        house.clock.now += waits[-1]
        assert house.enter("guess").status_code == 403
    assert waits == [1, 2, 4, 8, 16, 32, 60, 60, 60]
    house.clock.now += LONGEST
    assert house.enter(WORD).status_code == 303
    assert house.enter("guess").status_code == 403  # the count begins anew


def test_the_guesses_of_one_do_not_keep_out_another(house: House) -> None:
    """The wait is for the address that guessed; whoever comes from another, or has the key, notices nothing."""
    for _ in range(50):
        house.enter("guess", client="192.0.2.66")
    assert house.enter("guess", client="192.0.2.66").status_code == 429
    assert house.enter(WORD).status_code == 303
    assert house.ask("GET", "/state", heads={"cookie": COOKIE}, client="192.0.2.66").status_code == 200


def test_an_attacker_with_many_addresses_is_slowed_and_fills_no_memory() -> None:
    """Everybody together has twenty tries in a second, and a thousand addresses are remembered."""
    clock = Clock()
    tries = Tries(clock=clock)
    looked_at = 0
    for number in range(10_000):
        clock.now += 0.001
        if tries.wait(f"2001:db8::{number:x}") == 0:
            tries.wrong(f"2001:db8::{number:x}")
            looked_at += 1
    assert looked_at <= MOST_AT_ONCE * 11
    for number in range(2 * MOST_ADDRESSES):
        tries.wrong(str(number))
    assert len(tries.by_address) == MOST_ADDRESSES
    clock.now += 1
    assert tries.wait("192.0.2.7") == 0


@pytest.mark.parametrize(
    "host",
    ["127.0.0.1:8123", "localhost:8123", "192.0.2.20", "192.0.2.20:80", "192.0.2.20:8123.evil.example", "evil.example"],
)
def test_the_address_and_port_that_were_given_and_nothing_else(house: House, host: str) -> None:
    """Under another name, or at another port, neither the form nor the page is shown, with the key or without."""
    for heads in ({"host": host}, {"host": host, "cookie": COOKIE}):
        for method, path in (("GET", "/"), ("POST", "/enter")):
            assert house.ask(method, path, heads=heads).text == "refused: host"


@pytest.mark.parametrize("origin", ["http://evil.example", "null", "https://192.0.2.20:8123", "http://192.0.2.20:9999"])
def test_a_form_on_another_site_cannot_try(house: House, origin: str) -> None:
    """A post from another site's page, from another port's too, is refused before the password is looked at."""
    refused = house.ask("POST", "/enter", heads={"origin": origin}, form={"password": WORD})
    assert refused.text == "refused: origin"
    assert "set-cookie" not in refused.headers
    posted = house.ask("POST", "/enter", heads={"sec-fetch-site": "cross-site"}, form={"password": WORD})
    assert posted.text == "refused: site"


def test_the_form_lets_the_browser_say_where_it_comes_from(house: House) -> None:
    """Under `no-referrer` a browser sends `Origin: null` with a form (Fetch standard, 3.2), which would be refused."""
    assert house.ask("GET", "/").headers["referrer-policy"] == "same-origin"
    assert house.ask("POST", "/enter", heads={"origin": f"http://{HOST}"}, form={"password": WORD}).status_code == 303


def test_the_password_is_compared_whole_and_not_kept(monkeypatch: pytest.MonkeyPatch) -> None:
    """Digests of one length are compared in constant time; nothing that is printed holds the word."""
    compared: list[tuple[bytes, bytes]] = []

    def watching(plain: Callable[[bytes, bytes], bool]) -> Callable[[bytes, bytes], bool]:
        def compare(one: bytes, other: bytes) -> bool:
            compared.append((one, other))
            return plain(one, other)

        return compare

    import hmac

    monkeypatch.setattr(hmac, "compare_digest", watching(hmac.compare_digest))
    password = Password.of(WORD)
    assert password.fits(WORD)
    assert not password.fits("b")
    assert [len(side) for pair in compared for side in pair] == [64] * 4
    assert repr(password) == "Password()"
    assert WORD.encode() not in password.salt + password.digest
    assert Password.of(WORD).digest != password.digest

"""The docket in several sizes on the page: shown when asked for, and its files to take away."""

from __future__ import annotations

import json
import re

import pytest

from tapeline.web.run_view import MEDIA
from tests.web.test_app import Client


@pytest.fixture
def client() -> Client:
    """A table with Marit's tee."""
    return Client()


def test_the_sizes_are_shown_with_chart_and_steps(client: Client) -> None:
    """The answer has the chart of each size, what is not even, and the address of every file."""
    html = client.ask("GET", "/sizes?sizes=96-110&meet=neck").json()["html"]
    assert "Tee in 4 sizes: 96, 100, 104, 110." in html
    assert "Chest, round" in html
    assert "the tape bust steps +6.00, usually +4.00" in html
    assert set(re.findall(r'href="/sizes/([a-z]+)\?', html)) == set(MEDIA)
    assert "meet=neck" in html


def test_files_are_those_of_the_command(client: Client) -> None:
    """The data and the chart name the sizes asked for; a drawing is an SVG; files are named after the docket."""
    data = client.ask("GET", "/sizes/data?sizes=84,92&meet=neck")
    assert data.headers["content-disposition"] == 'attachment; filename="tee-sizes.json"'
    made = json.loads(data.text)
    assert [size["label"] for size in made["sizes"]] == ["84", "92"]
    assert made["meet"] == "neck"
    assert client.ask("GET", "/sizes/chart?sizes=84,92").text.startswith("measure,unit,84,92\n")
    assert client.ask("GET", "/sizes/drawing?sizes=84,92").text.startswith("<?xml")


def test_a_changed_docket_is_drafted_anew(client: Client) -> None:
    """What was remembered of the docket before is not shown for the docket after."""
    before = client.ask("GET", "/sizes/chart?sizes=84,92").text
    client.edit("garment.looseness", "loose")
    assert client.ask("GET", "/sizes/chart?sizes=84,92").text != before


@pytest.mark.parametrize("sizes", ["", "85", "104-84", "84" + ",84" * 400, "<b>S</b>"])
def test_what_is_no_list_of_sizes_is_told(client: Client, sizes: str) -> None:
    """Nothing, a size that there is not, a range that runs down, far too much, markup: refused in words."""
    answer = client.ask("GET", f"/sizes?sizes={sizes}")
    assert answer.status_code == 422
    assert "error" in answer.json()["problem"]
    assert client.ask("GET", f"/sizes/print?sizes={sizes}").status_code == 422
    assert client.ask("GET", "/sizes/nothing?sizes=84").status_code == 404


def test_a_list_that_is_too_long_is_not_cut_off(client: Client) -> None:
    """Two hundred letters are read; of more none, though what is left of them would be a list of sizes."""
    answer = client.ask("GET", "/sizes?sizes=84,88" + "," * 200)
    assert answer.status_code == 422
    assert "205 letters; 200 are read" in answer.json()["problem"]
    # Commas without a size between them are passed over.
    assert client.ask("GET", "/sizes/chart?sizes=84,88" + "," * 100).text.startswith("measure,unit,84,88")


def test_a_docket_without_a_garment_has_no_sizes(client: Client) -> None:
    """While the docket cannot be read, its problems are the answer."""
    client.edit("garment.style", "nonsense")
    assert client.ask("GET", "/sizes?sizes=84").status_code == 422

"""Dockets that cannot be used, and the words in which they are refused: `problems/NAME.toml` and `NAME.txt`.

`TAPELINE_UPDATE=1 pytest tests/docket` writes the texts anew, to be read before they are committed.
"""

from __future__ import annotations

import os
from pathlib import Path

import pytest

from tapeline.docket import docket_from_text
from tapeline.problems import InputError, Severity

FOLDER = Path(__file__).with_name("problems")
DOCKETS = sorted(FOLDER.glob("*.toml"))


@pytest.mark.parametrize("docket", DOCKETS, ids=[path.stem for path in DOCKETS])
def test_a_docket_is_refused_in_these_words(docket: Path) -> None:
    """Everything wrong is said at once: what, where, what is allowed and why, what to try."""
    with pytest.raises(InputError) as refused:
        docket_from_text(docket.read_text(encoding="utf-8"), docket.name)
    text = "\n".join(str(problem) for problem in refused.value.problems) + "\n"
    expected = docket.with_suffix(".txt")
    if os.environ.get("TAPELINE_UPDATE") == "1":
        expected.write_text(text, encoding="utf-8")
    assert text == expected.read_text(encoding="utf-8")


@pytest.mark.parametrize("docket", DOCKETS, ids=[path.stem for path in DOCKETS])
def test_every_error_says_where_it_is(docket: Path) -> None:
    """No error leaves the maker to search: it names the docket, and its line where the docket has one."""
    with pytest.raises(InputError) as refused:
        docket_from_text(docket.read_text(encoding="utf-8"), docket.name)
    errors = [problem for problem in refused.value.problems if problem.severity is Severity.ERROR]
    assert errors
    for problem in errors:
        assert problem.where.startswith(docket.name)


def test_every_text_belongs_to_a_docket() -> None:
    """No text is left over from a docket that is gone."""
    assert {path.stem for path in FOLDER.glob("*.txt")} == {path.stem for path in DOCKETS}

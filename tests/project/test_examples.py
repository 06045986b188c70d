"""The example dockets: each can be cut as it is."""

from pathlib import Path

import pytest

from tapeline.docket import read_docket
from tapeline.problems import Severity
from tapeline.project import draft, finished

EXAMPLES = sorted((Path(__file__).parents[2] / "examples").glob("*.toml"))


@pytest.mark.parametrize("path", EXAMPLES, ids=lambda path: path.stem)
def test_every_example_is_drafted_trued_and_finished(path: Path) -> None:
    """No error and no doubt; every piece has its cut line, and every wearer is said to be invented."""
    drafted = draft(read_docket(path))
    assert [str(problem) for problem in drafted.problems if problem.severity is not Severity.NOTE] == []
    assert len(finished(drafted).pieces) == len(drafted.garment.pieces)
    assert "invented" in path.read_text(encoding="utf-8").partition("[")[0]


def test_every_style_has_an_example() -> None:
    """Whoever looks for a style finds a docket to begin from."""
    from tapeline.styles import STYLES

    assert {read_docket(path).style.name for path in EXAMPLES} == set(STYLES)

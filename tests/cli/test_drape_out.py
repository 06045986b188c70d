"""`tapeline drape --out`: the garment as picture, solid and data."""

from __future__ import annotations

import json
from pathlib import Path

import click
import pytest
from click.testing import CliRunner

from tapeline import project
from tapeline.cli.drape import COMMAND
from tapeline.docket import read_docket
from tapeline.project import drape_maps
from tests.cli.process import EXAMPLES, tapeline


def test_the_command_offers_every_map() -> None:
    """The words of --map are those that can be drawn."""
    kinds = [option.type for option in COMMAND.params if option.name == "shown"]
    assert [tuple(kind.choices) for kind in kinds if isinstance(kind, click.Choice)] == [drape_maps()]


@pytest.mark.parametrize(
    ("asked", "says"),
    [
        (("drape", EXAMPLES / "tee.toml", "--out", "worn.obj"), ".png, .glb, .json"),
        (("drape", "--check", "--out", "worn.png"), "--check writes no file"),
        (("drape", EXAMPLES / "tee.toml", "--map", "folds", "--out", "worn.png"), "'round', 'along'"),
    ],
)
def test_what_cannot_be_written_is_refused_before_draping(
    asked: tuple[str | Path, ...], says: str, tmp_path: Path
) -> None:
    """Nothing is solved for a minute and then not written."""
    done = tapeline(*asked, cwd=tmp_path)
    assert done.code == 2
    assert says in done.err
    assert list(tmp_path.iterdir()) == []


def test_a_file_of_somebody_else_stays(tmp_path: Path) -> None:
    """A picture that is none is not written over without --force."""
    (tmp_path / "worn.png").write_text("my notes", encoding="utf-8")
    done = tapeline("drape", EXAMPLES / "tee.toml", "--out", "worn.png", cwd=tmp_path)
    assert done.code == 2
    assert "[would-overwrite]" in done.err
    assert (tmp_path / "worn.png").read_text(encoding="utf-8") == "my notes"


@pytest.mark.slow
def test_each_end_names_what_is_written(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Picture, solid and data, each with how its kind begins; the data has a value for every node."""
    worn = project.drape_garment(project.draft(read_docket(EXAMPLES / "tee.toml")), 25.0)
    monkeypatch.setattr(project, "drape_garment", lambda *_, **__: worn)  # draped once, written three times
    for end, begins in ((".png", b"\x89PNG"), (".glb", b"glTF"), (".json", b"{")):
        done = CliRunner().invoke(COMMAND, [str(EXAMPLES / "tee.toml"), "--out", str(tmp_path / f"worn{end}")])
        assert done.exit_code == 0
        assert f"worn{end}: the garment" in " ".join(done.output.split())
        assert (tmp_path / f"worn{end}").read_bytes().startswith(begins)
    data = json.loads((tmp_path / "worn.json").read_text(encoding="utf-8"))
    places = data["places"]
    assert {len(places[key]) for key in ("points_mm", "round", "along", "strongest", "air", "pressure")} == {
        data["nodes"]
    }
    assert {"side", "shoulder", "neckline"} <= {line["name"] for line in places["lines"]}

"""Tables of one's own sizes, as CSV and TOML, and all that can be wrong with them."""

from __future__ import annotations

from pathlib import Path

import pytest

from tapeline.docket.size_table import size_table
from tapeline.measures import Figure, Wearer, survey_of
from tapeline.problems import InputError
from tapeline.units import Unit

ROWS = "size,bust,waist,hip\nS,84,66,90\nM,88,70,94\n"
COLUMNS = "tape;S;M\nbust;84;88\nwaist;66;70\nhip;90;94\n"
TOML = '[sizes.S]\nbust = 84\nwaist = 66\nhip = 90\n[sizes.M]\nbust = "88 cm"\nwaist = "27.5591 in"\nhip = "0.94 m"\n'


def read(tmp_path: Path, text: str, name: str = "ours.csv", unit: Unit = Unit.CM) -> dict[str, Wearer]:
    """A table of women's sizes."""
    (tmp_path / name).write_text(text, encoding="utf-8")
    return size_table(tmp_path / name, Figure.WOMAN, unit)


@pytest.mark.parametrize(("text", "name"), [(ROWS, "a.csv"), (COLUMNS, "b.csv"), (TOML, "c.toml")])
def test_rows_columns_and_toml_say_the_same(tmp_path: Path, text: str, name: str) -> None:
    """Sizes by row, sizes by column and sizes by table give the same tapes, in the order of the file."""
    sizes = read(tmp_path, text, name)
    assert list(sizes) == ["S", "M"]
    assert [sizes["S"][tape] for tape in ("bust", "waist", "hip")] == pytest.approx([840, 660, 900])
    assert [sizes["M"][tape] for tape in ("bust", "waist", "hip")] == pytest.approx([880, 700, 940], abs=0.01)


def test_inches_are_read_by_the_tables_own_unit(tmp_path: Path) -> None:
    """An inch is 25.4 mm exactly (1959): fractions of one, for a whole table or for one size of it."""
    tapes = 'bust = "33 1/4"\nwaist = 26\nhip = 36\n'
    assert read(tmp_path, f'unit = "inch"\n[sizes.8]\n{tapes}', "i.toml")["8"]["bust"] == pytest.approx(33.25 * 25.4)
    mixed = read(tmp_path, "tape,8,38\nunit,inch,cm\nbust,33 1/4,84.5\nwaist,26,66\nhip,36,90\n")
    assert mixed["8"]["bust"] == pytest.approx(33.25 * 25.4)
    assert mixed["38"]["bust"] == pytest.approx(845)
    assert read(tmp_path, "size,bust\n8,33 1/4\n", unit=Unit.INCH)["8"]["bust"] == pytest.approx(33.25 * 25.4)


def test_missing_tapes_are_the_surveys_means_and_that_is_said(tmp_path: Path) -> None:
    """What drafting needs and the table lacks is the mean of people with the tapes it has; `made_from` names it."""
    size = read(tmp_path, ROWS)["M"]
    survey = survey_of(Figure.WOMAN)
    assert survey is not None
    given = {"bust": 880.0, "waist": 700.0, "hip": 940.0}
    assert size["back_length"] == pytest.approx(survey.expect("back_length", given).mm)
    assert "back_length" in size.made_from
    assert "nobody was measured" in size.made_from
    assert "waist" not in size.made_from


@pytest.mark.parametrize(
    ("text", "code", "says"),
    [
        ("", "size-table-shape", "has no sizes"),
        ("size,bust\n", "size-table-shape", "has no sizes"),
        ("bust,waist\n84,66\n", "size-table-shape", "does not begin with size or tape"),
        ("size,bust\nS,84,9\n", "size-table-shape", "more cells"),
        ("size,bust\nS,84\nS,88\n", "size-twice", "S is there twice"),
        ("tape,S,S\nbust,84,88\n", "size-twice", "S is there twice"),
        ("size,bust,bust\nS,84,88\n", "column-twice", "bust is there twice"),
        ("size,bist\nS,84\n", "tape-unknown", "no tape named bist"),
        ("size,bust\nS,wide\n", "length-not-understood", "wide"),
        ("size,bust\nS,840\n", "tape-range", "bust is 840 cm"),
        ("size,waist\nS,66\n", "tape-missing", "bust"),
        ("size,unit,bust\nS,ell,84\n", "size-table-shape", "the unit of size S is ell"),
    ],
)
def test_what_is_wrong_is_named_with_its_size(tmp_path: Path, text: str, code: str, says: str) -> None:
    """Each fault has its code, says what was read, and stands at the file and, where there is one, at the size."""
    with pytest.raises(InputError) as refused:
        read(tmp_path, text)
    problem = next(problem for problem in refused.value.problems if problem.code == code)
    assert says in problem.says
    assert problem.where.startswith("ours.csv") or problem.where == str(tmp_path / "ours.csv")
    assert problem.hint.endswith("Nothing was drafted.")


def test_faults_of_all_sizes_are_told_together(tmp_path: Path) -> None:
    """Two sizes with a fault each are two problems, each at its size."""
    with pytest.raises(InputError) as refused:
        read(tmp_path, "size,bust\nS,wide\nM,88\nL,wider\n")
    assert [problem.where for problem in refused.value.problems] == ["ours.csv, size S: bust", "ours.csv, size L: bust"]


@pytest.mark.parametrize("text", ['unit = "cm"\n', "[sizes]\nS = 84\n", "[sizes.S]\nbust = 84\n[garment]\nx = 1\n"])
def test_other_toml_is_no_table(tmp_path: Path, text: str) -> None:
    """A file with other keys, or without sizes, is refused as no table of sizes."""
    with pytest.raises(InputError) as refused:
        read(tmp_path, text, "ours.toml")
    assert [problem.code for problem in refused.value.problems] == ["size-table-shape"]


def test_a_child_has_no_means_to_fill_in(tmp_path: Path) -> None:
    """There is no survey of children: a table of theirs has every tape that drafting needs, or is refused."""
    (tmp_path / "c.csv").write_text("size,bust\n104,56\n", encoding="utf-8")
    with pytest.raises(InputError) as refused:
        size_table(tmp_path / "c.csv", Figure.CHILD, Unit.CM)
    assert "tape-missing" in {problem.code for problem in refused.value.problems}

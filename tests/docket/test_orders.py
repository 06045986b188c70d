"""A list of orders: columns, rows, and what is wrong with either."""

from __future__ import annotations

from pathlib import Path

import pytest

from tapeline.docket import Order, orders
from tapeline.problems import InputError

HEAD = "name,figure,unit,bust,upper_chest,waist,hip,shoulder_width,back_length,hip_depth,arm_length"
MARIT = "Marit,woman,cm,94,89,77,101,39.5,40,20.5,58"
EXAMPLE = Path(__file__).resolve().parents[2] / "examples" / "orders.csv"


def listed(folder: Path, *lines: str, ends: str = "\n", encoding: str = "utf-8") -> list[Order]:
    """The orders of a file with these lines."""
    path = folder / "orders.csv"
    path.write_bytes((ends.join(lines) + ends).encode(encoding))
    return orders(path)


def refused(folder: Path, *lines: str) -> list[str]:
    """What is wrong with a file, as code and hint."""
    with pytest.raises(InputError) as error:
        listed(folder, *lines)
    return [f"{problem.code}: {problem.hint}" for problem in error.value.problems]


def test_every_example_order_is_a_docket() -> None:
    """Ten orders, figures and units mixed."""
    dockets = [order.docket() for order in orders(EXAMPLE)]
    assert len(dockets) == 10
    assert {str(docket.wearer.figure) for docket in dockets} == {"woman", "man", "child"}
    assert {str(docket.unit) for docket in dockets} == {"cm", "inch"}


@pytest.mark.parametrize("ends", ["\n", "\r\n"])
@pytest.mark.parametrize("encoding", ["utf-8", "utf-8-sig"])
def test_an_order_is_read_as_a_docket_is(tmp_path: Path, ends: str, encoding: str) -> None:
    """Short columns, tapes, dotted keys; empty cells are left out, empty rows passed over."""
    order = listed(
        tmp_path,
        f"{HEAD},garment.looseness,garment.neckline.widen,garment.sizes.neck_width,finish.paper,allow",
        "",
        f"{MARIT},easy,2,,A3,tape-doubt",
        ",,,,,,,,,,,,,,,",
        ends=ends,
        encoding=encoding,
    )[0]
    docket = order.docket()
    assert (order.row, docket.name, docket.wearer.name, docket.paper) == (1, "orders.csv, order 1", "Marit", "A3")
    assert docket.choices.looseness.side.mm == 30
    assert docket.choices.neckline.widen.mm == 20
    assert docket.by_hand == {}
    assert docket.allow == {"tape-doubt"}


def test_cells_may_be_parted_by_semicolons(tmp_path: Path) -> None:
    """As spreadsheets write them where the comma is the decimal mark."""
    order = listed(tmp_path, HEAD.replace(",", ";"), MARIT.replace(",", ";").replace(".", ","))[0]
    assert order.docket().wearer["shoulder_width"] == 395


def test_a_problem_says_order_line_and_cell(tmp_path: Path) -> None:
    """The other orders are not touched by it."""
    one, two = listed(tmp_path, HEAD, MARIT, MARIT.replace("101", "9.8"))
    one.docket()
    with pytest.raises(InputError) as error:
        two.docket()
    assert [problem.where for problem in error.value.problems] == ["orders.csv, order 2 (line 3): hip = 9.8"]


def test_a_column_that_is_none_is_told_once_for_all_rows(tmp_path: Path) -> None:
    """Every row would fail on it, so the file is refused, with what was probably meant."""
    assert refused(tmp_path, f"{HEAD},wast", f"{MARIT},1") == ["column-unknown: did you mean waist?"]
    assert refused(tmp_path, f"{HEAD},looseness", f"{MARIT},easy") == [
        "column-unknown: did you mean garment.looseness?"
    ]
    assert refused(tmp_path, f"{HEAD},", f"{MARIT},1")[0].startswith("column-unknown")
    assert refused(tmp_path, f"{HEAD},hip", f"{MARIT},1") == ["column-twice: "]


def test_a_dotted_column_that_no_docket_has_is_told_of_in_the_row(tmp_path: Path) -> None:
    """Which keys there are depends on the row's style."""
    with pytest.raises(InputError, match="did you mean looseness"):
        listed(tmp_path, f"{HEAD},garment.loosness", f"{MARIT},easy")[0].docket()


def test_rows_that_are_too_long_or_set_a_key_twice(tmp_path: Path) -> None:
    """Nothing is guessed: neither a shifted cell nor the one of two values that was meant."""
    with pytest.raises(InputError, match="row-cells"):
        listed(tmp_path, HEAD, f"{MARIT},4")[0].docket()
    order = listed(tmp_path, f"{HEAD},garment.looseness,garment.looseness.side", f"{MARIT},easy,3")[0]
    with pytest.raises(InputError, match="row-conflict"):
        order.docket()
    order = listed(tmp_path, f"{HEAD},garment.looseness.side,garment.looseness", f"{MARIT},3,easy")[0]
    with pytest.raises(InputError, match="row-conflict"):
        order.docket()


def test_a_short_row_lacks_its_tapes(tmp_path: Path) -> None:
    """Cells that are not there are empty ones."""
    with pytest.raises(InputError, match="tape-missing"):
        listed(tmp_path, HEAD, "Marit,woman,cm,94")[0].docket()


@pytest.mark.parametrize(
    ("lines", "code"),
    [
        pytest.param([""], "orders-empty", id="empty"),
        pytest.param([HEAD], "orders-empty", id="no order"),
        pytest.param([HEAD, "Marit,\x00"], "docket-not-text", id="binary"),
        pytest.param([HEAD, '"' + "x" * 200_000], "orders-not-a-table", id="a cell without end"),
    ],
)
def test_what_is_no_list_is_refused(tmp_path: Path, lines: list[str], code: str) -> None:
    """One report, before anything is drafted."""
    assert [line.partition(":")[0] for line in refused(tmp_path, *lines)] == [code]

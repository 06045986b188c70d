"""Steps that are not even, and what is said to be behind them."""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise
from pathlib import Path

import pytest

from tapeline.grade import told_together
from tapeline.measures import Figure, Wearer
from tapeline.project import size_run, table_sizes
from tests.grade.runs import docket, run_of

# ASTM D5585-11e1, table 1 (read), inches: sizes 4, 6, 8, 10, 12, 14.
ASTM = """size,unit,bust,upper chest,waist,neck
4,inch,33,33 1/4,25 3/8,13 3/4
6,inch,34 1/8,34 1/8,26 1/8,14
8,inch,35 1/4,35,27,14 1/4
10,inch,36 1/4,35 7/8,28,14 5/8
12,inch,37 1/4,36 3/4,29,14 7/8
14,inch,38 3/4,38,30 3/4,15 1/8
"""


def test_even_sizes_have_even_steps() -> None:
    """From 84 to 104 EN 13402-3 steps by 4 cm of bust (read in a secondary text), and all but curved lines follow."""
    found = {departure.row for departure in run_of("84-104").uneven}
    assert not found & {"chest", "waist", "hip", "hem", "back_length", "front_length", "shoulder", "neckline"}


def test_where_the_standard_steps_wider_the_tape_is_named() -> None:
    """From 104 on EN 13402-3 steps by 6 cm (the same): the chest grows by 60 mm for 40, and the bust is behind it."""
    run = run_of("88-116")
    chest = [departure for departure in run.uneven if departure.row == "chest"]
    assert [run.labels[departure.index] for departure in chest] == ["110", "116"]
    for departure in chest:
        assert departure.step_mm == pytest.approx(60)
        assert departure.usual_mm == pytest.approx(40)
        (cause,) = departure.causes
        assert (cause.kind, cause.name) == ("tape", "bust")
        assert cause.mm == pytest.approx(20, abs=0.01)
    (told,) = [one for one in told_together(run.uneven) if one.title.startswith("Chest")]
    assert (told.first, told.last) == (chest[0].index, chest[1].index)


def test_a_limit_that_begins_to_rule_is_named() -> None:
    """A short sleeve is a third of the arm, but reaches 4 cm below the cap: from size 116 on the latter is longer."""
    run = run_of("92-128")
    for size in run.sizes:
        sizes = {one.name: one.length.mm for one in size.drafted.garment.sizes}
        third, below = size.wearer["arm_length"] / 3, sizes["cap_height"] + 40
        assert (below > third) is (float(size.label) >= 116)
    sleeve = [departure for departure in run.uneven if departure.row == "sleeve_length"]
    limits = [cause for departure in sleeve for cause in departure.causes if cause.kind == "limit"]
    assert limits
    assert all("arm length * 1/3, but at least cap height + 4" in cause.says for cause in limits)
    assert "116 to 128" in limits[0].says


def test_a_published_table_steps_as_it_is_printed(tmp_path: Path) -> None:
    """Rows of ASTM D5585-11e1, table 1 (read): bust steps of 28.6, 28.6, 25.4, 25.4 and 38.1 mm are the chest's."""
    path = tmp_path / "astm.csv"
    path.write_text(ASTM, encoding="utf-8")
    run = size_run(docket(), table_sizes(docket(), path))
    chest = next(row for row in run.chart if row.name == "chest")
    values = [mm for mm in chest.mm if mm is not None]
    steps = [after - before for before, after in pairwise(values)]
    assert steps == pytest.approx([28.575, 28.575, 25.4, 25.4, 38.1], abs=0.01)
    last = next(d for d in run.uneven if d.row == "chest" and run.labels[d.index] == "14")
    assert [cause.name for cause in last.causes] == ["bust"]


def test_people_are_not_held_to_steps() -> None:
    """Several wearers are no sizes of a table: nothing is said of their steps."""
    tapes = {"bust": 940.0, "upper_chest": 890.0, "waist": 770.0, "hip": 1010.0, "shoulder_width": 395.0}
    tapes |= {"back_length": 400.0, "hip_depth": 205.0, "arm_length": 580.0}
    one = Wearer("Liv", Figure.WOMAN, tapes)
    people = {"Liv": one, "Ida": one.with_tape("bust", 960), "Sol": replace(one, tapes=tapes | {"hip": 1050.0})}
    assert size_run(docket(), people, persons=True).uneven == ()
    assert size_run(docket(), people).uneven != ()

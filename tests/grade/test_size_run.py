"""Runs of sizes: each drafted from its own tapes, and what becomes of one that cannot be."""

from __future__ import annotations

from dataclasses import replace

import pytest

from tapeline.cli.size_run import KINDS
from tapeline.measures import size_wearer
from tapeline.problems import InputError, Severity
from tapeline.project import draft, finished, run_document, run_file, size_run, standard_sizes
from tapeline.project.run_products import RUN_FILES
from tests.grade.runs import alone, docket, run_of


def test_each_size_is_what_its_own_docket_drafts() -> None:
    """Cut lines are those of a docket with the size written into it, not those of another size made larger."""
    for size in run_of("84-92").sizes:
        own = finished(draft(alone(size.label)), "2031-05-02")
        for made, piece in zip(size.finished.pieces, own.pieces, strict=True):
            assert made.cut_line.svg() == piece.cut_line.svg()


def test_no_size_is_another_made_larger() -> None:
    """The shoulder grows much less than the chest: 0.05 to 4 cm of bust in women who were measured (survey of 1988)."""
    run = run_of("84-104")
    rows = {row.name: row.mm for row in run.chart}
    chest, shoulder = ((rows[name][-1] or 0) / (rows[name][0] or 1) for name in ("chest", "shoulder"))
    assert chest > 1.2
    assert shoulder < 1.03


def test_sizes_that_cannot_be_made_are_named_all_together() -> None:
    """A cut-in-one top with a gusset whose sleeve becomes too narrow: its size is said, and nothing is made."""
    read = docket("gusset-top")
    with pytest.raises(InputError) as refused:
        size_run(read, standard_sizes(read, "M-XXL"))
    errors = [problem for problem in refused.value.problems if problem.severity is Severity.ERROR]
    assert {problem.code for problem in errors} == {"cut-in-one-tight"}
    assert {problem.says.partition(":")[0] for problem in errors} == {"size XL", "size XXL"}


def test_the_others_are_made_when_asked_and_what_was_not_is_said() -> None:
    """With `go_on` the run has the sizes that can be made, does not hold, and names the others with the reason."""
    run = run_of("M-XXL", "gusset-top")
    assert run.labels == ("M", "L")
    assert not run.holds
    assert list(run.left_out) == ["XL", "XXL"]
    told = next(problem for problem in run.problems if problem.code == "size-left-out")
    assert told.says == "not made: XL, XXL; made: M, L"
    assert [p["code"] for p in run_document(run)["left_out"]["XL"]] == ["cut-in-one-tight"]


def test_a_run_of_nothing_is_refused_even_when_others_should_be_made() -> None:
    """Where no size can be made there is no run."""
    read = docket("gusset-top")
    with pytest.raises(InputError):
        size_run(read, standard_sizes(read, "XL, XXL"), go_on=True)


def test_what_the_docket_fixes_for_one_wearer_is_doubted() -> None:
    """Sizes set by hand, and corrections of a fitting, are the same in every size: that is said."""
    run = size_run(replace(docket(), by_hand={"armhole_depth": 210.0}), standard_sizes(docket(), "88, 92"))
    assert "run-by-hand" in {problem.code for problem in run.problems}
    assert "run-corrected" in {problem.code for problem in run_of("92-100", "corrected-tee").problems}
    assert not {"run-by-hand", "run-corrected"} & {problem.code for problem in run_of("84-92").problems}


def test_what_is_wrong_with_the_dockets_own_wearer_is_not_said_of_the_sizes() -> None:
    """The docket's notes on its own tapes stay out; a note of all sizes is told once, and not once for each."""
    read = replace(docket(), wearer=size_wearer("88"), notes=(*alone("88").notes,))
    run = size_run(read, standard_sizes(read, "84-92"))
    codes = [problem.code for problem in run.problems]
    assert codes.count("size-standard") == 1
    assert codes.count("sleeve-hang") == 1


@pytest.mark.slow
def test_every_kind_of_file_is_made() -> None:
    """Each kind of the command has a name and begins as files of its kind do."""
    assert tuple(RUN_FILES) == KINDS
    begins = {".pdf": b"%PDF", ".svg": b"<?xml", ".dxf": b"  0", ".html": b"<!DOCTYPE html", ".json": b"{"}
    begins |= {"-chart.csv": b"measure,unit", "-grade.csv": b"piece,point,kind"}
    run = run_of("84, 88")
    for kind, ending in RUN_FILES.items():
        start = next(start for end, start in begins.items() if ending.endswith(end))
        assert run_file(run, kind, paper="A0").data.startswith(start), kind

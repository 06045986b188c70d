"""From pieces to a garment at rest on a form."""

from __future__ import annotations

from pathlib import Path

import numpy as np
import pytest

from tapeline.cli.commands import tapeline
from tapeline.docket import docket_from_text, read_docket
from tapeline.drape import HANDS, Draped, drape
from tapeline.drape import drape as draping  # the file of the same name is reached through its functions
from tapeline.drape.carry import carried
from tapeline.drape.compiled import Array
from tapeline.drape.reading import hem_falls, neck_gap, seams_run, zones
from tapeline.drape.sew import sewn, welds
from tapeline.form import Form, fit_form
from tapeline.geometry.region import area
from tapeline.measures import size_wearer
from tapeline.pattern import Garment
from tapeline.problems import InputError
from tapeline.project import draft, drape_document

ROOT = Path(__file__).resolve().parents[2]
EXAMPLES = ROOT / "examples"
CLOTHS = {"shell": HANDS["single jersey"], "contrast": HANDS["interlock"], "rib": HANDS["rib"]}
DRAPED = ("tee", "long-sleeved-tee", "sweatshirt", "vest-top", "colour-block-tee", "block")
SIDE_MM = 25.0


def garment(name: str) -> Garment:
    """Of an example docket."""
    return draft(read_docket(EXAMPLES / f"{name}.toml")).garment


@pytest.fixture(scope="module")
def tee() -> Garment:
    """An easy tee."""
    return garment("tee")


@pytest.fixture(scope="module")
def form() -> Form:
    """The stand of the wearer for whom the tee is made."""
    return fit_form(read_docket(EXAMPLES / "tee.toml").wearer)


@pytest.fixture(scope="module")
def worn(tee: Garment, form: Form) -> Draped:
    """The tee on her."""
    return drape(tee, CLOTHS, form, SIDE_MM)


@pytest.mark.parametrize("name", DRAPED)
def test_no_cloth_is_lost_in_meshing(name: str) -> None:
    """What is sewn weighs what the pieces weigh: their exact area, halves twice, pairs twice, bands in two layers."""
    drafted = garment(name)
    fabric = sewn(drafted, CLOTHS, 15.0).welded()
    expected = sum(
        abs(area(p.seam_line)) * (2 if p.on_fold or p.cut.quantity == 2 else 1) * CLOTHS[p.cut.cloth].weight * 1e-9
        for p in drafted.pieces
    )
    # Chords of 15 mm leave the curve of a neckline by half a millimetre.
    assert fabric.mass.sum() == pytest.approx(expected, rel=0.004)


@pytest.mark.parametrize("name", DRAPED)
def test_every_seam_is_sewn_node_to_node(name: str) -> None:
    """Each node of a seam's one edge has a partner, and welding leaves exactly the free edges open."""
    cloth = sewn(garment(name), CLOTHS, 20.0)
    for seam, pairs in cloth.seams.items():
        assert len(np.unique(pairs[:, 0])) == len(pairs) or seam.endswith("ends"), seam
    fabric = cloth.welded()
    sides = np.sort(np.vstack([fabric.triangles[:, [k, (k + 1) % 3]] for k in range(3)]), axis=1)
    _, counts = np.unique(sides, axis=0, return_counts=True)
    assert counts.max() == 2


def test_a_fine_mesh_goes_where_the_coarse_one_has_gone(tee: Garment) -> None:
    """A movement that is a straight rule of the place on the drawing is carried over exactly, inside every piece."""
    coarse, fine = sewn(tee, CLOTHS, 30.0), sewn(tee, CLOTHS, 20.0)

    def rule(flat: Array) -> Array:
        places: Array = flat @ np.array([[1.0, 0.2, 0.1], [0.3, 1.0, -0.4]])
        return places

    went = carried(coarse, rule(np.vstack([p.drawn for p in coarse.panels])), fine)
    assert np.abs(went - rule(np.vstack([p.drawn for p in fine.panels]))).max() < 1e-9


def test_what_is_sewn_in_steps_is_one_node() -> None:
    """Three corners that meet in one seam crossing become one node, whichever pairs say so."""
    assert len(set(welds(4, np.array([[2, 1], [1, 0]]))[:3].tolist())) == 1


@pytest.mark.parametrize(
    ("name", "piece"), [("polo", "collar"), ("hooded-sweatshirt", "hood"), ("raglan-top", "front_sleeve")]
)
def test_what_cannot_be_draped_yet_is_named(name: str, piece: str) -> None:
    """A collar, a hood and a sleeve in two parts are refused by name, not draped wrongly."""
    with pytest.raises(InputError) as refused:
        sewn(garment(name), CLOTHS, SIDE_MM)
    assert ("drape-piece", piece) in {(problem.code, problem.where) for problem in refused.value.problems}


def test_a_child_has_no_form() -> None:
    """Children are not shown as bodies: the form refuses, and so does draping."""
    drafted = draft(read_docket(EXAMPLES / "childs-tee.toml"))
    from tapeline.project import drape_garment

    with pytest.raises(InputError, match="grown-up"):
        drape_garment(drafted)


@pytest.mark.slow
def test_a_loose_tee_does_not_pull(worn: Draped) -> None:
    """8 cm of ease at the chest: the cloth there is stretched by less than 1 per cent, and nothing lies in the form."""
    found = {zone.name: zone for zone in zones(worn)}
    assert abs(found["chest"].round) < 0.01
    assert found["neckband"].round > 0.03  # cut to three quarters of its neckline
    assert worn.near.min() > 0
    assert worn.gap_mm <= 0.5


@pytest.mark.slow
def test_left_and_right_hang_alike(worn: Draped) -> None:
    """The tee and the form are symmetrical, and so is the hem: within a fold's width."""
    assert worn.x[:, 0].min() == pytest.approx(-worn.x[:, 0].max(), abs=10)


@pytest.mark.slow
def test_hem_seams_and_neck_are_where_they_should_be(worn: Draped) -> None:
    """The hem hangs below the hip and nearly level, shoulder seam on the shoulder, side seam nearly straight."""
    falls, gap = hem_falls(worn), neck_gap(worn)
    assert falls is not None
    assert gap is not None
    assert worn.form.levels["end"] < falls.lowest <= falls.highest < worn.form.levels["waist"]
    runs = {run.seam: run.forward for run in seams_run(worn)}
    assert abs(runs["shoulder"]) < 15
    assert abs(runs["side"]) < 40
    assert gap[0] < 15
    assert set(drape_document(worn)) >= {"zones", "hem", "seams", "neck_gap", "findings", "trust", "cloths"}


@pytest.mark.slow
def test_the_same_garment_hangs_the_same(worn: Draped, tee: Garment, form: Form) -> None:
    """Same input, same result, to the last bit."""
    again = drape(tee, CLOTHS, form, SIDE_MM)
    assert np.array_equal(again.x, worn.x)


@pytest.mark.slow
def test_a_tight_vest_is_stretched_by_what_the_girths_say() -> None:
    """On a wearer much wider than it was drafted for, the chest is stretched by body over garment, within a point."""
    small, large = (size_wearer(size) for size in ("84", "96"))
    text = 'wearer = { figure = "woman", size = "84" }\n[garment]\nstyle = "vest"\nlooseness = "close"\n'
    drafted = draft(docket_from_text(text))
    chest = next(g for g in drafted.truing.girths if g.girth.name == "chest")
    form = fit_form(large)
    found = {zone.name: zone for zone in zones(drape(drafted.garment, CLOTHS, form, 18.0))}
    round_it = form.readings["bust"].read + 2 * np.pi * 0.25
    assert small["bust"] < large["bust"]
    assert found["chest"].round == pytest.approx(round_it / chest.garment_mm - 1, abs=0.01)


@pytest.mark.slow
def test_a_seam_that_stays_open_is_refused(tee: Garment, form: Form, monkeypatch: pytest.MonkeyPatch) -> None:
    """Sewing that is stopped after a hundredth of a second leaves a seam open, which is named with its gap."""
    monkeypatch.setitem(draping.__globals__, "SEWING_S", 0.01)
    with pytest.raises(InputError) as refused:
        drape(tee, CLOTHS, form, SIDE_MM)
    assert [problem.code for problem in refused.value.problems] == ["drape-open-seam"]
    assert refused.value.problems[0].where in {seam.name for seam in tee.seams}


@pytest.mark.slow
def test_what_does_not_come_to_rest_is_refused(tee: Garment, form: Form, monkeypatch: pytest.MonkeyPatch) -> None:
    """Stopped after five steps the cloth still moves, and nothing is reported."""
    monkeypatch.setitem(draping.__globals__, "ROUNDS", 5)
    with pytest.raises(InputError, match="drape-not-at-rest"):
        drape(tee, CLOTHS, form, SIDE_MM)


def test_the_command_asks_for_a_docket() -> None:
    """Without a docket and without --check there is nothing to drape."""
    from click.testing import CliRunner

    done = CliRunner().invoke(tapeline, ["drape"])
    assert done.exit_code == 2
    assert "name a docket" in done.output

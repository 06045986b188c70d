"""Truing: faults that are planted in a garment are found, named, and go away when the hint is followed."""

from __future__ import annotations

import math
import re
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field, replace
from typing import Any

import pytest

from tapeline.blocks.neckband import BandChoices
from tapeline.draft import Draft
from tapeline.geometry import Cubic, Path, Point, Rigid
from tapeline.lengths import Length, cm
from tapeline.measures import Figure, Wearer, size_wearer
from tapeline.pattern import Cloth, Edge, Garment, Piece
from tapeline.problems import Problem, Severity
from tapeline.styles import STYLES
from tapeline.truing import Truing, true
from tests.properties.drafts import draw, style_choices, taped_children

WEARER = size_wearer("92")
JERSEY = Cloth()


def trued(garment: Garment, wearer: Wearer = WEARER, cloth: Cloth = JERSEY) -> Truing:
    """True a garment as its style asks."""
    style = STYLES[garment.style]
    meaning = {name: (least.mm, most.mm) for name, (least, most) in style.meaning.items()}
    return true(garment, wearer, cloth, meaning=meaning, pull_on=style.pull_on)


def errors(garment: Garment) -> dict[str, Problem]:
    """Errors found, by code."""
    return {finding.code: finding for finding in trued(garment).findings if finding.severity is Severity.ERROR}


def with_piece(garment: Garment, piece: Piece) -> Garment:
    """The garment with one piece in place of its own."""
    return replace(garment, pieces=tuple(piece if p.name == piece.name else p for p in garment.pieces))


def with_edge(garment: Garment, piece: str, name: str, change: Callable[[Path], Path]) -> Garment:
    """The garment with one edge changed."""
    old = garment.piece(piece)
    edges = tuple(Edge(e.name, change(e.path), e.kind) if e.name == name else e for e in old.edges)
    return with_piece(garment, replace(old, edges=edges))


def longer(by_mm: float) -> Callable[[Path], Path]:
    """A straight edge drawn as two, with a tip so high that it is longer by so much."""

    def change(path: Path) -> Path:
        start, end = path.start, path.end
        straight = start.distance_to(end)
        high = math.sqrt(((straight + by_mm) / 2) ** 2 - (straight / 2) ** 2)
        return Path.through(start, start.toward(end, 0.5) + (end - start).unit.left * high, end)

    return change


def end_turned(degrees: float) -> Callable[[Path], Path]:
    """A curved edge that arrives by so many degrees off."""

    def change(path: Path) -> Path:
        *before, last = path.segments
        assert isinstance(last, Cubic)
        into = Rigid.turn(math.radians(degrees), last.end).point(last.into)
        return Path((*before, Cubic(last.start, last.out, into, last.end)))

    return change


def start_turned(degrees: float) -> Callable[[Path], Path]:
    """A curved edge that sets out by so many degrees off."""
    return lambda path: end_turned(degrees)(path.reversed()).reversed()


@pytest.mark.parametrize("style", STYLES)
def test_a_good_garment_has_no_error(style: str) -> None:
    """A garment as it is drafted holds."""
    truing = trued(draw(WEARER, style))
    assert truing.holds
    assert max(abs(w.off_mm) for w in truing.walks) < 1e-6


@pytest.mark.parametrize(("by_mm", "found"), [(0.3, True), (0.15, True), (0.05, False)])
def test_a_seam_that_is_too_long_is_found(by_mm: float, found: bool) -> None:
    """Three tenths of a millimetre on one side of the shoulder are found; half a tenth is not."""
    wrong = errors(with_edge(draw(WEARER), "front", "shoulder", longer(by_mm)))
    assert ("seam-mismatch" in wrong) == found
    if found:
        assert wrong["seam-mismatch"].where == "seam shoulder"
        assert f"{by_mm:.1f} mm" in wrong["seam-mismatch"].says


@pytest.mark.parametrize(("degrees", "kind"), [(2.0, "a dip"), (-2.0, "a point"), (0.5, "")])
def test_a_line_that_bends_at_a_seam_is_found(degrees: float, kind: str) -> None:
    """Two degrees where the neckline crosses the shoulder are found, and said to be a point or a dip; half is not."""
    wrong = errors(with_edge(draw(WEARER), "front", "neckline", end_turned(degrees)))
    assert ("join-bends" in wrong) == bool(kind)
    if kind:
        assert kind in wrong["join-bends"].says
        assert "2.0 degrees" in wrong["join-bends"].says


@pytest.mark.parametrize(("degrees", "found"), [(0.5, True), (-0.5, True), (0.05, False)])
def test_an_edge_that_is_not_square_to_the_fold_is_found(degrees: float, found: bool) -> None:
    """Half a degree at the centre front is found; a twentieth is not."""
    wrong = errors(with_edge(draw(WEARER), "front", "neckline", start_turned(degrees)))
    assert ("fold-not-square" in wrong) == found


def test_notches_that_do_not_meet_are_found() -> None:
    """A notch that is half a millimetre off its partner is found."""
    garment = draw(WEARER)
    back = garment.piece("back")
    moved = tuple(replace(n, at_mm=n.at_mm + 0.5) if n.edge == "side" else n for n in back.notches)
    assert set(errors(with_piece(garment, replace(back, notches=moved)))) == {"notch-mismatch"}


def test_an_outline_that_crosses_itself_is_found() -> None:
    """A neckline that runs through the armhole is found."""

    def across(path: Path) -> Path:
        return Path.through(path.start, Point(path.end.x + 200, path.start.y - 100), path.end)

    assert "outline-crossed" in errors(with_edge(draw(WEARER), "back", "neckline", across))


def test_an_outline_that_runs_the_wrong_way_is_found() -> None:
    """A piece whose outline is drawn as in a mirror is found."""
    garment = draw(WEARER)
    over = Rigid(-1, 0, 0, 1, 0, 0)
    back = garment.piece("back")
    edges = tuple(Edge(e.name, e.path.moved(over), e.kind) for e in back.edges)
    assert "outline-inside-out" in errors(with_piece(garment, replace(back, edges=edges)))


@pytest.mark.parametrize("name", ["chest", "waist", "hip", "upper_arm"])
def test_a_girth_that_is_not_what_was_meant_is_found(name: str) -> None:
    """Half a millimetre between what a girth declares and what the pieces measure is found."""
    garment = draw(WEARER)
    girths = tuple(replace(g, ease=g.ease + Length(0.5)) if g.name == name else g for g in garment.girths)
    wrong = errors(replace(garment, girths=girths))
    assert wrong["girth-mismatch"].where == f"girth {name}"


# Hints ------------------------------------------------------------------------------------------------------------


def changed(choices: Any, line: str, by: Length) -> Any:
    """Choices with the docket line `garment.sleeve.wrist_ease` changed."""
    name, _, rest = line.removeprefix("garment.").partition(".")
    now = getattr(choices, name)
    return replace(choices, **{name: changed(now, rest, by) if rest else now + by})


def followed(choices: Any, finding: Problem) -> Any:
    """Choices after doing what a finding's hint says."""
    lower = re.search(r"lower the front by about ([\d.]+) cm more \((garment[.\w]+)\)", finding.hint)
    change = re.search(r"change (garment[.\w]+) by about ([+-][\d.]+) cm", finding.hint)
    if lower:
        return changed(choices, lower.group(2), cm(float(lower.group(1)) + 0.1))
    assert change, finding.hint
    by = float(change.group(2))
    return changed(choices, change.group(1), cm(by + math.copysign(0.05, by)))


@dataclass(frozen=True, slots=True)
class Plant:
    """A garment that somebody should not sew, and what is found about it."""

    code: str
    where: str
    style: str = "tee"
    looseness: str = "slight"
    choices: Mapping[str, Any] = field(default_factory=dict)
    tapes: Mapping[str, float] = field(default_factory=dict)
    cloth: Cloth = JERSEY
    rounds: int = 1
    """How often the hint may have to be followed: it says about how much."""


def follow(plant: Plant) -> list[str]:
    """Do what the hint says until the finding is gone; the hints of all rounds."""
    wearer = WEARER
    for name, mm in plant.tapes.items():
        wearer = wearer.with_tape(name, mm)
    choices = style_choices(plant.style, plant.looseness, **plant.choices)
    seen: list[str] = []
    for _ in range(plant.rounds + 1):
        garment = STYLES[plant.style].page(Draft(wearer, {}), choices, surveyed=True)
        findings = trued(garment, wearer, plant.cloth).findings
        finding = next((f for f in findings if (f.code, f.where) == (plant.code, plant.where)), None)
        if finding is None:
            return seen
        seen.append(finding.hint)
        choices = followed(choices, finding)
    return [*seen, "still there"]


STIFF = Cloth("poplin", stretch_across=2, stretch_along=2)
LONG = replace(style_choices("block", "close").sleeve, wrist_ease=cm(25))
STIFFER = Cloth(stretch_across=12)
PLANTS = {
    "tight waist": Plant(
        "too-tight", "girth waist", looseness="close", choices={"waist": cm(4)}, tapes={"waist": 840}, cloth=STIFF
    ),
    "loose chest": Plant("looseness-outside", "girth chest", style="block", looseness="loose"),
    "tight upper arm": Plant(
        "looseness-outside", "girth upper_arm", looseness="close", tapes={"upper_arm": 420}, rounds=3
    ),
    "wide wrist": Plant("looseness-outside", "girth wrist", choices={"sleeve": LONG}, rounds=2),
    "head in poplin": Plant("head-does-not-pass", "seam neckline", tapes={"head_girth": 600}, cloth=STIFF, rounds=2),
    "large head": Plant("head-does-not-pass", "seam neckline", tapes={"head_girth": 640}, cloth=STIFFER, rounds=2),
}


@pytest.mark.parametrize("name", PLANTS)
def test_following_the_hint_mends_it(name: str) -> None:
    """The finding is there, its hint names a docket line and an amount, and doing so makes it go away."""
    seen = follow(PLANTS[name])
    assert seen, "the planted fault was not found"
    assert seen[-1] != "still there", "\n".join(seen)


def test_a_head_that_is_not_taped_is_a_doubt_and_a_taped_one_an_error() -> None:
    """The survey's large head makes a doubt; the wearer's own head that does not pass, an error."""
    garment = draw(WEARER)

    def found(wearer: Wearer, cloth: Cloth = STIFF) -> list[Severity]:
        return [f.severity for f in trued(garment, wearer, cloth).findings if f.code == "head-does-not-pass"]

    assert found(WEARER) == [Severity.DOUBT]
    assert found(WEARER.with_tape("head_girth", 600)) == [Severity.ERROR]
    assert found(WEARER.with_tape("head_girth", 520), JERSEY) == []


def test_a_child_whose_head_was_not_taped_gets_a_doubt() -> None:
    """Nothing is known of a child's head, so the tape is asked for."""
    taped = taped_children()[4]
    child = Wearer("Kim", Figure.CHILD, {name: mm for name, mm in taped.tapes.items() if name != "head_girth"})
    findings = trued(draw(child, surveyed=False), child).findings
    assert [f.where for f in findings if f.code == "head-not-taped"] == ["tapes.head_girth"]


def test_the_opening_is_what_gives_least() -> None:
    """Neckline and band are stretched each by its own cloth, and the smaller of the two must pass the head."""
    for band, limit in ((10, "the neckband in its cloth"), (200, "the neckline in its cloth")):
        opening = trued(draw(WEARER, band=BandChoices(stretch=band))).opening
        assert opening is not None
        assert opening.limit == limit
        cloth = opening.neckline_mm * (1 + JERSEY.stretch_across / 100)
        assert opening.stretched_mm == pytest.approx(min(cloth, opening.band_mm * (1 + band / 100)))

"""The verb: fit a stand to a wearer's tapes."""

from __future__ import annotations

from types import MappingProxyType

import numpy as np

from tapeline.form.correct import corrected
from tapeline.form.form import Form, Reading
from tapeline.form.shapes import Array, shapes_at
from tapeline.form.solve import Wanted, nearest, read_all
from tapeline.form.tape_line import LAID, Stand, stand_at
from tapeline.measures import Figure, Wearer, estimates
from tapeline.problems import InputError, Problem, Severity

__all__ = ["ARMS", "ARMS_FROM", "ARMS_TO", "MET_MM", "fit_form"]

ARMS = float(np.radians(40))
"""How the arms stand when nobody says otherwise: far enough off that a sleeve can be put on."""
ARMS_FROM, ARMS_TO = float(np.radians(35)), float(np.radians(60))
"""Between these the shoulder keeps its shape; beyond them the surface folds at armpit or shoulder."""
MET_MM = 0.5
"""A stand whose tapes are further off than this is not handed out: nobody reads a tape nearer."""
_EXTRAPOLATED = 2.5
"""So much less an estimate counts beyond the bodies of the survey (house rule)."""


def fit_form(wearer: Wearer, arms: float = ARMS) -> Form:
    """A stand that has all the tapes of a wearer that can be laid on it.

    First the body of the data that comes nearest, with tapes that were not taken held near the survey's estimates; then
    the smallest smooth push that makes the given tapes exact. The same wearer gives the same stand.

    Args:
        wearer: A grown-up; heads are not shown, so `head_girth` and `neck_to_crown` have no place.
        arms: By how much the arms stand off from hanging straight down, radians.

    Raises:
        InputError: `form-child`, `form-arms`, or `form-not-met` when the tapes contradict each other so much that no
            smooth stand has them all.

    >>> from tapeline.measures import size_wearer
    >>> form = fit_form(size_wearer("88"))
    >>> f"{form.readings['bust'].read:.0f} mm, {form.residual_mm < 0.5}, {form.inverted} inverted"
    '880 mm, True, 0 inverted'
    """
    if wearer.figure is Figure.CHILD:
        says = "the form is for grown-up wearers; children are not shown as bodies, and there is no stand for them"
        hint = "look at the pieces instead: tapeline draft, tapeline print. No form was made."
        raise InputError(Problem("form-child", Severity.ERROR, says, "wearer.figure", hint))
    if not ARMS_FROM - 1e-9 <= arms <= ARMS_TO + 1e-9:
        low, high, asked = (f"{np.degrees(angle):.0f}" for angle in (ARMS_FROM, ARMS_TO, arms))
        says = f"the arms stand off by {asked} degrees; a form's arms stand off by {low} to {high} degrees"
        raise InputError(Problem("form-arms", Severity.ERROR, says, "arms", "leave it at 40. No form was made."))
    stand = stand_at(shapes_at(round(arms, 6)))
    wanted = _wanted(wearer)
    half = corrected(stand, nearest(stand, wanted, _start(wearer, wanted)), wanted)
    form = _form(wearer, stand, half, wanted)
    _must_hold(form)
    return form


def _wanted(wearer: Wearer) -> dict[str, Wanted]:
    """Tapes that were taken, then estimates; men's chest is laid as the bust is."""
    found = {}
    for name, value in wearer.tapes.items():
        if (ours := _ours(name)) in LAID:
            found[ours] = Wanted(value, 0.004 if name == "shoulder_slope" else 1.0, given=True)
    for name, estimate in estimates(wearer).items():
        if (ours := _ours(name)) in LAID and ours not in found:
            spread = estimate.spread * (_EXTRAPOLATED if estimate.extrapolates else 1)
            found[ours] = Wanted(estimate.value, spread, given=False)
    return found


def _ours(name: str) -> str:
    return "bust" if name == "chest" else name


def _start(wearer: Wearer, wanted: dict[str, Wanted]) -> dict[str, float]:
    """Where to begin, from simple ratios (house rule): waist to height for weight, bust to upper chest for the bust."""
    height = wanted["height"].value if "height" in wanted else 1680.0
    woman = wearer.figure is Figure.WOMAN
    return {
        "gender": 1.0 if woman else 0.0,
        "weight": float(np.clip(0.5 + (wearer["waist"] / height - 0.45) / 0.2, 0, 1.4)),
        "cupsize": float(np.clip(0.4 + (wearer["bust"] - wearer["upper_chest"] - 40) / 150, 0, 1.2)) if woman else 0.5,
    }


def _form(wearer: Wearer, stand: Stand, half: Array, wanted: dict[str, Wanted]) -> Form:
    shapes = stand.shapes
    points = shapes.whole(half)
    points = points - [0, shapes.places["floor"].of(points)[1], 0]
    taken = read_all(stand, points, dict.fromkeys(LAID))
    readings = {}
    for name in LAID:
        word = wearer.figure.fullest if name == "bust" else name
        want = wanted.get(name)
        value = want.value if want else taken[name].value
        readings[word] = Reading(word, value, taken[name].value, want is not None and want.given, taken[name].line)
    ring = taken["armhole_girth"].line
    places = {name: place.of(points) for name, place in shapes.places.items()}
    levels = {
        "armpit": places["armpit"][1],
        "upper_chest": taken["upper_chest"].line[0, 1],
        "bust": taken["bust"].line[0, 1],
        "waist": places["waist"][1],
        "hip": places["seat"][1],
        "end": points[shapes.rings[-1], 1].mean(),
    }
    vertices = points[: shapes.count]
    for array in (vertices, *places.values()):
        array.setflags(write=False)
    return Form(
        wearer.figure,
        shapes.arms,
        vertices,
        shapes.triangles,
        shapes.arm[: shapes.count],
        MappingProxyType(places),
        MappingProxyType({name: float(height) for name, height in levels.items()}),
        (ring, ring[::-1] * [-1, 1, 1]),
        MappingProxyType(readings),
    )


def _must_hold(form: Form) -> None:
    """Nothing is handed out that is not what it says.

    Raises:
        InputError: `form-not-met`.
    """
    worst = max((r for r in form.readings.values() if r.given), key=lambda r: abs(r.off))
    says = ""
    if form.residual_mm > MET_MM:
        says = f"no smooth stand has all these tapes: {worst.name} is off by {worst.off:+.1f} mm"
    elif form.inverted:
        says = f"no smooth stand has all these tapes: its surface folds over in {form.inverted} places"
    if says:
        hint = "see the doubts of tapeline measure, and take again what stands there. No form was made."
        raise InputError(Problem("form-not-met", Severity.ERROR, says, "wearer.tapes", hint))

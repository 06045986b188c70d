"""Draping: every piece is placed, sewn together, let down on the form, and brought to rest; or refused, with why."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass

import numpy as np

from tapeline.drape.balance import Balance
from tapeline.drape.band import Distance, distance_to
from tapeline.drape.carry import carried
from tapeline.drape.cloth import Hand
from tapeline.drape.compiled import Array, Whole
from tapeline.drape.fabric import Fabric
from tapeline.drape.place import placed
from tapeline.drape.settle import Settling
from tapeline.drape.sew import Sewn, sewn
from tapeline.drape.strain import Strain, strain
from tapeline.form import Form
from tapeline.pattern import Garment
from tapeline.problems import InputError, Problem, Severity

__all__ = ["SIDE_MM", "Draped", "drape"]

COARSE_MM = 25.0
SIDE_MM = 16.0
CLOSED_MM = 0.5
"""A seam that stands open further than this is not sewn."""
STILL = 5e-4
"""At rest 99 of 100 triangles change by less than this in five steps: 0.05 points of strain."""
HELD = 0.05
"""And what nothing holds, summed over the nodes, is less than this share of the garment's weight."""
INSIDE_MM = 0.5
ROUNDS = 400
"""Of steps, before it is said not to come to rest: a tight vest on triangles of 16 mm needs more than 160."""
SEWING_S, SETTLING_S = 3.0, 0.8
Told = Callable[[str], None]


@dataclass(frozen=True, slots=True)
class Draped:
    """A garment at rest on a form."""

    sewn: Sewn
    fabric: Fabric
    form: Form
    x: Array
    """Of each node, in the form's axes, mm."""
    faces: Whole
    """Triangles by nodes, anticlockwise seen from outside."""
    strain: Strain
    """Of each node."""
    near: Array
    """Of each node: mm to the form."""
    pressure: Array
    """Of each node: on the form, kPa."""
    gap_mm: float
    """The widest that a seam stood open before it was welded."""
    change: float
    """How much strain still changed in the last five steps, 99 of 100 triangles."""
    unheld: float
    """What nothing holds, as a share of the garment's weight."""
    side_mm: float

    def nodes_of(self, panel: str) -> Whole:
        """The nodes of a panel's corners."""
        out: Whole = self.fabric.node[self.sewn.of(panel)]
        return out


def drape(
    garment: Garment,
    hands: Mapping[str, Hand],
    form: Form,
    side_mm: float = SIDE_MM,
    told: Told = lambda _: None,
) -> Draped:
    """Drape a garment on a form.

    Args:
        garment: As drafted.
        hands: Which cloth is cut for `shell`, `rib` and so on.
        form: The stand.
        side_mm: How long the sides of the triangles are.
        told: Is called with a few words at each stage; what it raises stops the work.

    Raises:
        InputError: `drape-open-seam`, `drape-inside-form`, `drape-not-at-rest` when the result would say nothing, and
            `drape-cannot-place`, `drape-piece`, `drape-seam`, `drape-mesh` for what cannot be draped yet.
    """
    told("measuring how far every place is from the form")
    distance = distance_to(form.vertices, form.triangles)
    coarse = sewn(garment, hands, max(COARSE_MM, side_mm))
    told(f"sewing {len(coarse.panels)} pieces together")
    at, gap = _sewn_together(coarse, placed(coarse, form), distance)
    _closed(coarse, at, gap)
    told("letting it down")
    fabric = coarse.welded()
    settling = Settling(fabric, fabric.gathered(at), distance)
    settling.run(round(SETTLING_S / settling.step_s))
    told("bringing it to rest")
    balance, change, unheld = _at_rest(fabric, settling.x, distance)
    whole = coarse
    if side_mm < COARSE_MM:
        told("bringing it to rest on finer triangles")
        whole = sewn(garment, hands, side_mm)
        at = carried(coarse, balance.x[fabric.node], whole)
        fabric = whole.welded()
        balance, change, unheld = _at_rest(fabric, fabric.gathered(at), distance)
    _must_hold(whole, balance, change, unheld)
    return Draped(
        whole,
        fabric,
        form,
        balance.x,
        _outwards(whole, fabric, balance),
        strain(fabric, balance.x).at_nodes(fabric),
        balance.near,
        np.maximum(balance.thick - balance.near, 0) * balance.pressed / fabric.share,
        gap,
        change,
        unheld,
        side_mm,
    )


def _sewn_together(cloth: Sewn, x: Array, distance: Distance) -> tuple[Array, float]:
    """Without weight and without rubbing, the seams pull harder and harder until they are closed."""
    sewing = Settling(cloth.loose(), x, distance, pairs=cloth.pairs, friction=0.0, damping=30.0, gravity=0.0)
    while sewing.gap > CLOSED_MM * 0.8 and sewing.time_s < SEWING_S:
        sewing.run(50)
        if sewing.gap < 50.0:
            sewing.pull = min(sewing.pull * 1.4, 1e5)
    return sewing.x, sewing.gap


def _closed(cloth: Sewn, x: Array, gap: float) -> None:
    if gap <= CLOSED_MM:
        return
    apart = {name: np.linalg.norm(x[p[:, 0]] - x[p[:, 1]], axis=1).max() for name, p in cloth.seams.items()}
    worst = max(apart, key=lambda name: float(apart[name]))
    says = f"the seam {worst} stands open by {gap:.1f} mm after sewing; at most {CLOSED_MM:g} mm is closed"
    hint = "it may be too small for this form, or not come together from where it is held. Nothing was draped"
    raise InputError(Problem("drape-open-seam", Severity.ERROR, says, worst, hint))


def _at_rest(fabric: Fabric, x: Array, distance: Distance) -> tuple[Balance, float, float]:
    balance = Balance(fabric, x, distance)
    inertia, change, unheld = 100.0, 1.0, 1.0
    weight = float(fabric.mass.sum()) * balance.gravity
    before = strain(fabric, x)
    for number in range(ROUNDS):
        if balance.step(inertia) < 4.0:
            inertia = max(inertia * 0.7, 1.0)
        if number % 5 < 4:
            continue
        now = strain(fabric, balance.x)
        pairs = ((now.most, before.most), (now.least, before.least), (now.across, before.across))
        moved = np.max([np.abs(one - two) for one, two in pairs], axis=0)
        change, before = float(np.quantile(moved, 0.99)), now
        unheld = float(balance.unbalanced().sum()) / weight
        if change < STILL and unheld < HELD and inertia <= 1.0:
            break
    return balance, change, unheld


def _must_hold(cloth: Sewn, balance: Balance, change: float, unheld: float) -> None:
    """Refuses what would say nothing."""
    problems = []
    deepest = int(balance.near.argmin())
    if balance.near[deepest] < -INSIDE_MM:
        which = cloth.panels[int(cloth.panel[np.flatnonzero(balance.fabric.node == deepest)[0]])].name
        says = f"the {which} lies {-balance.near[deepest]:.1f} mm inside the form"
        problems.append(Problem("drape-inside-form", Severity.ERROR, says, which, "nothing was reported"))
    if change >= STILL or unheld >= HELD:
        says = (
            f"the garment did not come to rest: strain still changes by {change * 100:.2f} points in five steps "
            f"({STILL * 100:g} is still), and {unheld:.1%} of its weight is held by nothing ({HELD:.0%} is allowed)"
        )
        hint = "try other triangles with --side; nothing was reported"
        problems.append(Problem("drape-not-at-rest", Severity.ERROR, says, hint=hint))
    if problems:
        raise InputError(problems)


def _outwards(cloth: Sewn, fabric: Fabric, balance: Balance) -> Whole:
    """Each panel turned so that it faces away from the form."""
    faces = fabric.triangles.copy()
    corners = balance.x[faces]
    normals = np.cross(corners[:, 1] - corners[:, 0], corners[:, 2] - corners[:, 0])
    out = (normals * balance.toward[faces].mean(axis=1)).sum(axis=1)
    owner = cloth.panel[cloth.triangles[:, 0]]
    facing = np.bincount(owner, out, minlength=len(cloth.panels))
    inside = facing[owner] < 0
    faces[inside] = faces[inside][:, [0, 2, 1]]
    return faces

"""The cloth at rest: where weight, pull, bending, contact and rubbing hold each other, by projected Newton steps.

Each step makes energy less for certain: the stiffness is kept free of soft directions, the step is shortened until the
energy falls, and inertia about the place before (pseudo-time, let go step by step) keeps a step short where the cloth
is slack. The linear systems are solved by conjugate gradients with a 3 x 3 block for each node.
"""

from __future__ import annotations

from dataclasses import dataclass, field

import numpy as np

from tapeline.drape.band import Distance
from tapeline.drape.bending import bend
from tapeline.drape.compiled import Array, Flags, Whole, compiled
from tapeline.drape.contact import HALF_THICKNESS_MM, PRESSED, contact, rubbing
from tapeline.drape.fabric import GRAVITY_MM, UP, Fabric
from tapeline.drape.membrane import add_membrane_stiffness, membrane

__all__ = ["Balance"]

SLIP_MM = 0.1
ARMIJO = 1e-4
FEW_HALVINGS = 4
HALVINGS = 16
TOUCHING_ROUNDS = 3


@dataclass(slots=True)
class Balance:
    """A fabric on a form, on its way to rest. `x` holds the nodes' places and changes from step to step."""

    fabric: Fabric
    x: Array
    distance: Distance = field(default_factory=Distance.none)
    friction: float = 0.3
    gravity: float = GRAVITY_MM
    free: Flags = field(default_factory=lambda: np.zeros(0, bool))
    """Which nodes may move; all where it is not said."""
    thick: float = HALF_THICKNESS_MM
    extra: Array | None = None
    """A force on each node, mN: a weight that is hung on."""
    steps: int = 0
    inner: int = 0
    """Conjugate gradient steps taken."""
    slope: Array = field(init=False)
    stress: Array = field(init=False)
    gradient: Array = field(init=False)
    blocks: Array = field(init=False)
    touching: Array = field(init=False)
    near: Array = field(init=False)
    """Distance of each node to the form, mm."""
    toward: Array = field(init=False)
    """The way out of the form at each node."""
    last: Array = field(init=False)
    held: Array = field(init=False)
    normal: Array = field(init=False)
    pressed: Array = field(init=False)

    def __post_init__(self) -> None:
        nodes, count = self.fabric.count, len(self.fabric.triangles)
        self.slope, self.stress = np.zeros((count, 3, 2)), np.zeros((count, 3))
        self.gradient, self.touching = np.zeros((nodes, 3)), np.zeros((nodes, 3, 3))
        self.blocks = np.zeros((len(self.fabric.columns), 3, 3))
        self.near, self.held = np.full(nodes, 1e3), np.zeros(nodes)
        self.normal, self.toward, self.last = np.zeros((nodes, 3)), np.zeros((nodes, 3)), np.zeros((nodes, 3))
        self.pressed = PRESSED * self.fabric.share
        self.free = self.free if len(self.free) else np.ones(nodes, bool)

    def energy(self, x: Array, was: Array, inertia: float) -> float:
        """In mN mm; leaves its gradient in `gradient`."""
        f, d = self.fabric, self.distance
        gradient = self.gradient
        gradient[:] = 0.0
        total = membrane(x, f.triangles, f.inverse, f.area, f.stiff, f.stiffens, self.slope, self.stress, gradient)
        total += bend(x, f.starts, f.columns, f.bending, gradient)
        total += contact(
            x, was, d.grid, d.low, d.step, self.thick, self.pressed, self.normal, self.held, SLIP_MM, gradient,
            self.touching, self.near, self.toward,
        )  # fmt: skip
        gradient[:, UP] += f.mass * self.gravity
        total += float((f.mass * x[:, UP]).sum()) * self.gravity
        if self.extra is not None:
            gradient -= self.extra
            total -= float((self.extra * x).sum())
        if inertia:
            moved = x - was
            gradient += inertia * f.mass[:, None] * moved
            total += 0.5 * inertia * float((f.mass[:, None] * moved * moved).sum())
        gradient[~self.free] = 0.0
        return total

    def step(
        self, inertia: float, newton: int = 1, accuracy: float = 1e-2, most: int = 400, longest: float = 20.0
    ) -> float:
        """A step in pseudo-time; how far the farthest node went, mm."""
        d = self.distance
        was = self.x.copy()
        rubbing(was, d.grid, d.low, d.step, self.thick, self.pressed, self.friction, self.normal, self.held)
        now = self.energy(self.x, was, inertia)
        for _ in range(newton):
            self._stiffness(inertia)
            tried = self._towards(self._solved(-self.gradient, accuracy, most), was, now, inertia, longest)
            if tried is None:
                # Too many nodes would touch or leave the form on the way: count as touching those that will.
                move = self._with_those_that_will_touch(accuracy, most)
                tried = self._towards(move, was, now, inertia, longest, HALVINGS)
            if tried is None:
                self.energy(self.x, was, inertia)
                break
            self.x, now = tried
        self.steps += 1
        return float(np.sqrt(((self.x - was) ** 2).sum(axis=1).max()))

    def _solved(self, right: Array, accuracy: float, most: int) -> Array:
        f = self.fabric
        move, taken = _conjugate(f.starts, f.columns, f.diagonal, self.blocks, right, accuracy, most)
        self.inner += int(taken)
        self.last = move
        return move

    def _towards(
        self, move: Array, was: Array, now: float, inertia: float, longest: float, halvings: int = FEW_HALVINGS
    ) -> tuple[Array, float] | None:
        """The longest part of a move that makes the energy less, and that energy."""
        gradient = self.gradient.copy()
        share = min(1.0, longest / max(float(np.sqrt((move * move).sum(axis=1).max())), 1e-12))
        falls = float((move * gradient).sum())
        for _ in range(halvings):
            tried = self.x + share * move
            then = self.energy(tried, was, inertia)
            if then <= now + ARMIJO * share * falls + 1e-12 * abs(now):
                return tried, then
            share /= 2
        self.energy(self.x, was, inertia)
        return None

    def _with_those_that_will_touch(self, accuracy: float, most: int) -> Array:
        """A move for which a node counts as touching when the move would take it to the form, not when it is there."""
        f, right = self.fabric, -self.gradient.copy()
        counted = self.near < self.thick
        right[counted] += (self.pressed * (self.near - self.thick))[counted, None] * self.toward[counted]
        move = self.last
        for _ in range(TOUCHING_ROUNDS):
            touches = (self.near + (self.toward * move).sum(axis=1) < self.thick) & self.free
            for nodes, way in ((touches & ~counted, 1.0), (counted & ~touches, -1.0)):
                out = self.toward[nodes]
                stiff = way * self.pressed[nodes][:, None, None] * out[:, :, None] * out[:, None, :]
                self.blocks[f.diagonal[nodes]] += stiff
            if (counted == touches).all():
                break
            counted = touches
            pushed = np.where(touches, self.pressed * (self.thick - self.near), 0.0)
            move = self._solved(right + pushed[:, None] * self.toward, accuracy, most)
        return move

    def _stiffness(self, inertia: float) -> None:
        f = self.fabric
        blocks = self.blocks
        blocks[:] = 0.0
        for k in range(3):
            blocks[:, k, k] = f.bending
        blocks[f.diagonal] += self.touching
        for k in range(3):
            blocks[f.diagonal, k, k] += inertia * f.mass
        add_membrane_stiffness(
            f.triangles, f.inverse, f.area, f.stiff, f.stiffens, self.slope, self.stress, f.slots, blocks
        )
        if not np.all(self.free):
            rows = np.repeat(np.arange(f.count), np.diff(f.starts))
            blocks[~(self.free[rows] & self.free[f.columns])] = 0.0
            blocks[f.diagonal[~self.free]] = np.eye(3)

    def unbalanced(self) -> Array:
        """What is not held at each node, in mN: of the force along the form, only what rubbing could not hold."""
        held = self.held
        d = self.distance
        rubbing(self.x, d.grid, d.low, d.step, self.thick, self.pressed, self.friction, self.normal, held)
        could = held.copy()
        held[:] = 0.0
        self.energy(self.x, self.x, 0.0)
        left = self.gradient
        through = (left * self.normal).sum(axis=1) * (could > 0)
        along = left - through[:, None] * self.normal
        size = np.sqrt((along * along).sum(axis=1))
        out: Array = np.hypot(np.maximum(size - could, 0.0), through)
        return out


@compiled
def _conjugate(
    starts: Whole, columns: Whole, diagonal: Whole, blocks: Array, right: Array, accuracy: float, most: int
) -> tuple[Array, int]:
    """Solves blocks x = right until the residual is `accuracy` of what it was, or `most` steps are taken."""
    count = starts.shape[0] - 1
    x, r = np.zeros((count, 3)), right.copy()
    z, p, q = np.zeros((count, 3)), np.zeros((count, 3)), np.zeros((count, 3))
    inverse = np.empty((count, 3, 3))
    for i in range(count):
        inverse[i] = np.linalg.inv(blocks[diagonal[i]])
    before, first, step = 1.0, 0.0, 0
    while step <= most:
        now = 0.0
        for i in range(count):
            for a in range(3):
                z[i, a] = inverse[i, a, 0] * r[i, 0] + inverse[i, a, 1] * r[i, 1] + inverse[i, a, 2] * r[i, 2]
                now += z[i, a] * r[i, a]
        if step == 0:
            first = now
        if now <= accuracy * accuracy * first or first == 0:
            break
        follow = now / before if step else 0.0
        before = now
        through = 0.0
        for i in range(count):
            for a in range(3):
                p[i, a] = z[i, a] + follow * p[i, a]
        for i in range(count):
            s0, s1, s2 = 0.0, 0.0, 0.0
            for s in range(starts[i], starts[i + 1]):
                j = columns[s]
                x0, x1, x2 = p[j, 0], p[j, 1], p[j, 2]
                s0 += blocks[s, 0, 0] * x0 + blocks[s, 0, 1] * x1 + blocks[s, 0, 2] * x2
                s1 += blocks[s, 1, 0] * x0 + blocks[s, 1, 1] * x1 + blocks[s, 1, 2] * x2
                s2 += blocks[s, 2, 0] * x0 + blocks[s, 2, 1] * x1 + blocks[s, 2, 2] * x2
            q[i, 0], q[i, 1], q[i, 2] = s0, s1, s2
            through += s0 * p[i, 0] + s1 * p[i, 1] + s2 * p[i, 2]
        if through <= 0:
            break
        length = now / through
        for i in range(count):
            for a in range(3):
                x[i, a] += length * p[i, a]
                r[i, a] -= length * q[i, a]
        step += 1
    return x, step

"""Where every piece is held before it is sewn: from the form, from the drawing's own axes, and from the seams.

Body pieces stand upright before and behind the form, at the height at which they are drawn: the drawing counts every
level from the nape. Sleeves are rolled about the arms. Whatever is left is held by its seams: beyond the edge of the
piece it is sewn to, as far out as it reaches on the drawing. Nothing here knows a style.
"""

from __future__ import annotations

from itertools import pairwise

import numpy as np

from tapeline.drape.compiled import Array, Whole
from tapeline.drape.panel import Panel
from tapeline.drape.sew import Sewn
from tapeline.form import Form
from tapeline.problems import InputError, Problem, Severity

__all__ = ["placed"]

CLEAR_MM = 15.0
"""How far pieces are held from the form."""
FROM_THE_ARM = 0.5
FACES = (("front", 1.0), ("back", -1.0))


def placed(sewn: Sewn, form: Form) -> Array:
    """A place in the form's axes for every node.

    Raises `InputError` (`drape-cannot-place`) for a piece that is sewn to nothing that has a place.
    """
    x = np.full((len(sewn.flat), 3), np.nan)
    left = dict(enumerate(sewn.panels))
    for index, panel in enumerate(sewn.panels):
        here = np.flatnonzero(sewn.panel == index)
        if _is_sleeve(sewn, index, panel):
            x[here] = _round_the_arm(panel, form)
        elif panel.layers == 1 and (face := _face(panel)):
            x[here] = _upright(panel, form, face)
        else:
            continue
        del left[index]
    while left:
        ready = {k: pairs for k in left if len(pairs := _to_placed(sewn, k, x))}
        if not ready:
            names = ", ".join(panel.name for panel in left.values())
            says = f"{names}: sewn to nothing that could be placed on the form"
            raise InputError(Problem("drape-cannot-place", Severity.ERROR, says, hint="nothing was draped"))
        # The piece that is held by most of its nodes first.
        best = max(ready, key=lambda k: len(ready[k]))
        _beyond(sewn, best, left.pop(best), ready[best], x)
    return x


def _face(panel: Panel) -> float:
    """Before (1) or behind (-1), by the name that the piece has; 0 for neither."""
    return next((way for word, way in FACES if panel.piece.name.startswith(word)), 0.0)


def _is_sleeve(sewn: Sewn, index: int, panel: Panel) -> bool:
    """One of a pair, sewn to itself along an edge, so that it becomes a tube."""
    if panel.side == 0 or panel.layers > 1:
        return False
    return any((sewn.panel[pairs] == index).all(axis=1).any() for pairs in sewn.seams.values())


def _upright(panel: Panel, form: Form, face: float) -> Array:
    body = form.vertices[(form.arm < FROM_THE_ARM) & (form.vertices[:, 1] > form.levels["hip"])]
    gap = body[:, 2].max() + CLEAR_MM if face > 0 else body[:, 2].min() - CLEAR_MM
    height = float(form.points["nape"][1])
    out: Array = np.column_stack([panel.drawn[:, 0], panel.drawn[:, 1] + height, np.full(len(panel.drawn), gap)])
    return out


def _round_the_arm(panel: Panel, form: Form) -> Array:
    """Rolled to a tube about the arm's line, its crown at the shoulder, its front to the front."""
    side = float(panel.side)
    joints = [form.points[name] * [side, 1, 1] for name in ("shoulder_joint", "elbow_joint", "hand_joint")]
    crown = form.points["shoulder_point"] * [side, 1, 1]
    drawn = panel.drawn * [side, 1]
    # Along the arm from the crown; before the shoulder joint and past the hand the line runs on straight.
    lengths = np.cumsum([0.0, *(float(np.linalg.norm(b - a)) for a, b in pairwise(joints))])
    ways = [(b - a) / np.linalg.norm(b - a) for a, b in pairwise(joints)]
    begin = float((crown - joints[0]) @ ways[0]) + CLEAR_MM
    top = float(drawn[:, 1].max())
    along = begin + top - drawn[:, 1]
    lower = along > lengths[1]
    middle = np.where(
        lower[:, None], joints[1] + (along - lengths[1])[:, None] * ways[1], joints[0] + along[:, None] * ways[0]
    )
    way = np.where(lower[:, None], ways[1], ways[0])
    outward = np.array([0.0, 1.0, 0.0]) - way[:, 1:2] * way
    outward /= np.linalg.norm(outward, axis=1, keepdims=True)
    forward = np.cross(outward, way) * side
    forward *= np.sign(forward[:, 2:3])
    radius = np.maximum(_tube(panel, drawn), _arm(form, side, joints, lengths, ways, along) + CLEAR_MM)
    angle = drawn[:, 0] / radius
    out: Array = middle + radius[:, None] * (np.cos(angle)[:, None] * outward + np.sin(angle)[:, None] * forward)
    return out


def _tube(panel: Panel, drawn: Array) -> Array:
    """At each node: the radius of the tube that the sleeve becomes there; above the underarm that of the underarm."""
    rim = np.unique(np.concatenate(list(panel.edges.values())))
    heights = drawn[rim, 1]
    widths = np.abs(drawn[rim, 0])
    widest = heights[widths.argmax()]
    below = heights <= widest + 1e-6
    order = np.argsort(heights[below])
    out: Array = np.interp(np.minimum(drawn[:, 1], widest), heights[below][order], widths[below][order]) / np.pi
    # A hem runs in to the middle of the sleeve at nearly the same height; it is no narrower tube.
    least: Array = np.maximum(out, widths[below].max() / np.pi * 0.35)
    return least


def _arm(form: Form, side: float, joints: list[Array], lengths: Array, ways: list[Array], along: Array) -> Array:
    """How thick the arm is there."""
    skin = form.vertices[(form.arm > FROM_THE_ARM) & (form.vertices[:, 0] * side > 0)]
    lower = (skin - joints[1]) @ ways[1] > 0
    at = np.where(lower, lengths[1] + (skin - joints[1]) @ ways[1], (skin - joints[0]) @ ways[0])
    line = np.where(lower[:, None], joints[1] + (at - lengths[1])[:, None] * ways[1], joints[0] + at[:, None] * ways[0])
    off = np.linalg.norm(skin - line, axis=1)
    centres = np.arange(at.min(), at.max() + 20.0, 20.0)
    thick = [off[np.abs(at - c) < 20.0].max(initial=0.0) for c in centres]
    out: Array = np.interp(along, centres, thick)
    return out


def _to_placed(sewn: Sewn, index: int, x: Array) -> Whole:
    """Pairs of a node of this panel and one that has a place."""
    pairs = np.vstack([sewn.pairs, sewn.pairs[:, ::-1]])
    mine = (sewn.panel[pairs[:, 0]] == index) & ~np.isnan(x[pairs[:, 1], 0])
    out: Whole = pairs[mine]
    return out


def _beyond(sewn: Sewn, index: int, panel: Panel, pairs: Whole, x: Array) -> None:
    """Sewn nodes at their partners; the others beyond the nearest of them, away from the piece they are sewn to."""
    here = np.flatnonzero(sewn.panel == index)
    flat = panel.drawn
    offset = int(here[0])
    held, partners = pairs[:, 0] - offset, pairs[:, 1]
    away = np.zeros(3)
    for other in np.unique(sewn.panel[partners]):
        its = np.flatnonzero(sewn.panel == other)
        edge = partners[sewn.panel[partners] == other]
        away += len(edge) * _outward(x[edge], x[its])
    away /= np.linalg.norm(away)
    apart = np.linalg.norm(flat[:, None, :] - flat[held][None, :, :], axis=2)
    nearest = apart.argmin(axis=1)
    x[here] = x[partners[nearest]] + apart[np.arange(len(flat)), nearest][:, None] * away


def _outward(edge: Array, whole: Array) -> Array:
    """From the middle of a piece's nodes near an edge to the middle of the edge."""
    middle = edge.mean(axis=0)
    reach = np.linalg.norm(edge - middle, axis=1).max() + CLEAR_MM
    near = whole[np.linalg.norm(whole - middle, axis=1) < reach]
    out: Array = middle - near.mean(axis=0)
    length = float(np.linalg.norm(out))
    return out / length if length > 0 else out

"""Changes that the shape data lack: wider, deeper, longer, part by part, laid out on the mean stand.

The data's own bodies end before full figures do. These go on: each widens or deepens one band of the trunk, lengthens
or thickens one stretch, and runs out smoothly to its neighbours; arms are carried by the shoulder, never cut by a band.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

import numpy as np

from tapeline.form.shapes import Array, Shapes

__all__ = ["Mode", "modes"]

BANDS = ("thigh", "hip", "belly", "waist", "ribs", "bust", "chest")
"""From below; `thigh` goes on to the end of the stand."""


FOLD_REACH = 110.0
"""So far, in mm, a broader back or chest is felt about the place where the arm joins."""


@dataclass(frozen=True, slots=True, eq=False)
class Mode:
    """One change: 1 is a tenth wider, deeper, thicker or longer, or 10 mm."""

    name: str
    moves: Array
    """(3 rows,), mm."""
    spread: float
    """How much wearers differ in it: the standard deviation that the fit starts from (house rule)."""
    beside: str = ""
    """The mode of the next band, which it should not differ from without need."""


@dataclass(frozen=True, slots=True, eq=False)
class _Body:
    """The mean stand, sorted for laying out changes."""

    half: Array
    arm: Array
    """How much each row belongs to the arm."""
    spot: Mapping[str, Array]
    """Landmarks."""
    shoulder: int
    """The row of the shoulder's joint."""
    axis: Array
    """Depth of the trunk's middle at each row."""

    @property
    def nothing(self) -> Array:
        """Nought for every row."""
        return np.zeros(len(self.half))

    def above_armpit(self) -> Array:
        """From 0 below the armpit to 1 above it."""
        return _smooth((self.half[:, 1] - self.spot["armpit"][1] + 60) / 80)


def modes(shapes: Shapes) -> tuple[Mode, ...]:
    """All of them, for a pose."""
    half = shapes.mean.reshape(-1, 3)
    whole = shapes.whole(half)
    arm = np.zeros(len(half))
    arm[shapes.row] = shapes.arm
    rings = np.array([[half[r, 1].mean(), (half[r, 2].min() + half[r, 2].max()) / 2] for r in shapes.rings])
    body = _Body(
        half,
        arm,
        {name: place.of(whole) for name, place in shapes.places.items()},
        int(shapes.row[shapes.places["shoulder_joint"].at[0]]),
        np.interp(half[:, 1], rings[::-1, 0], rings[::-1, 1]),
    )
    return (*_trunk(body), *_lengths(body), *_shoulders(body), *_arms(body), _neck(body))


def _smooth(share: Array) -> Array:
    """From 0 to 1 without a kink."""
    share = np.clip(share, 0, 1)
    return np.asarray(share * share * (3 - 2 * share))


def _trunk(body: _Body) -> Iterator[Mode]:
    """Each band wider, and deeper in front and behind."""
    x, y, z = body.half.T
    high = {name: body.spot[name][1] for name in ("armpit", "bust_point", "waist", "seat", "nape")}
    knots = [
        high["seat"] - 130,
        high["seat"],
        (high["seat"] + high["waist"]) / 2,
        high["waist"],
        (high["waist"] + high["bust_point"]) / 2,
        high["bust_point"],
        high["armpit"],
        high["nape"] - 25,
    ]
    front = 0.5 * (1 + np.tanh((z - body.axis) / 45))
    for k, name in enumerate(BANDS):
        rise = _smooth((y - knots[k - 1]) / (knots[k] - knots[k - 1])) if k else np.ones(len(y))
        band = np.where(y < knots[k], rise, 1 - _smooth((y - knots[k]) / (knots[k + 1] - knots[k])))
        beside = BANDS[k + 1] if k + 1 < len(BANDS) else ""
        for way, field, spread in (
            ("wide", np.column_stack([x, body.nothing, body.nothing]), 0.7),
            ("front", np.column_stack([body.nothing, body.nothing, (z - body.axis) * front]), 0.9),
            ("back", np.column_stack([body.nothing, body.nothing, (z - body.axis) * (1 - front)]), 0.5),
        ):
            moves = 0.1 * band[:, None] * field
            # The arm moves with its shoulder.
            moves = moves * (1 - body.arm)[:, None] + moves[body.shoulder] * body.arm[:, None]
            moves[-2:] = 0  # crown and floor
            yield Mode(f"{name} {way}", moves.ravel(), spread, beside and f"{beside} {way}")
    hill = np.exp(-(((y - high["bust_point"]) / 70) ** 2)) * _smooth((z - body.axis) / 90) * (1 - body.arm)
    yield Mode("bust low", np.column_stack([body.nothing, -10 * hill, body.nothing]).ravel(), 1.5)


def _lengths(body: _Body) -> Iterator[Mode]:
    """What is above a stretch goes up by 10 mm, or what is below it down; in between in proportion."""
    y = body.half[:, 1]
    armpit, waist, seat, nape = (body.spot[name][1] for name in ("armpit", "waist", "seat", "nape"))
    for name, low, top, below, spread in (
        ("back long", waist, armpit - 10, 0, 2.0),
        ("armhole deep", armpit - 10, nape, 0, 1.0),
        ("hips low", seat, waist, 1, 1.5),
        ("legs long", float(y.min()), seat, 1, 2.0),
    ):
        share = np.clip((y - low) / (top - low), 0, 1)
        share = share * (1 - body.arm) + share[body.shoulder] * body.arm - below
        yield Mode(name, np.column_stack([body.nothing, 10 * share, body.nothing]).ravel(), spread)
    crown = np.zeros_like(body.half)
    crown[-2, 1] = 10
    yield Mode("head high", crown.ravel(), 2.0)


def _shoulders(body: _Body) -> Iterator[Mode]:
    """Broader and lower, with the arms."""
    across, above = np.abs(body.half[:, 0]), body.above_armpit()
    inner, outer = body.spot["neck_point"][0], body.spot["shoulder_point"][0]
    out = _smooth(across / outer) * above * (1 - body.arm) + body.arm
    yield Mode("shoulders broad", np.column_stack([10 * out, body.nothing, body.nothing]).ravel(), 1.5)
    drop = np.clip((across - inner) / (outer - inner), 0, 1) * above * (1 - body.arm) + body.arm
    for name in ("back", "front"):
        far = np.linalg.norm(body.half - body.spot[f"{name}_fold"], axis=1)
        hill = 10 * np.exp(-((far / FOLD_REACH) ** 2)) * _smooth(across / inner)
        hill[-5:] = 0
        yield Mode(f"{name} broad", np.column_stack([hill, body.nothing, body.nothing]).ravel(), 2.0)
    yield Mode("shoulders low", np.column_stack([body.nothing, -10 * drop, body.nothing]).ravel(), 1.0)


def _arms(body: _Body) -> Iterator[Mode]:
    """Longer above and below the elbow, thicker at four places."""
    shoulder, elbow, hand = (body.spot[f"{name}_joint"] for name in ("shoulder", "elbow", "hand"))
    spans = [float(np.linalg.norm(b - a)) for a, b in ((shoulder, elbow), (elbow, hand))]
    ways = [(elbow - shoulder) / spans[0], (hand - elbow) / spans[1]]
    along = [(body.half - start) @ way for start, way in zip((shoulder, elbow), ways, strict=True)]
    for name, far, span, way in zip(("upper arm long", "forearm long"), along, spans, ways, strict=True):
        yield Mode(name, (10 * (np.clip(far / span, 0, 1) * body.arm)[:, None] * way).ravel(), 1.5)
    off = [
        body.half - start - far[:, None] * way for start, far, way in zip((shoulder, elbow), along, ways, strict=True)
    ]
    lower = along[0] > spans[0]
    outward = np.where(lower[:, None], off[1], off[0])
    at = np.where(lower, 1 + along[1] / spans[1], along[0] / spans[0])  # 0 shoulder, 1 elbow, 2 hand
    for name, low, peak, high in (
        ("shoulder round", -0.4, 0.02, 0.45),
        ("upper arm thick", 0.0, 0.45, 1.0),
        ("elbow thick", 0.45, 1.0, 1.6),
        ("wrist thick", 1.0, 2.0, 3.0),
    ):
        hat = np.where(at < peak, _smooth((at - low) / (peak - low)), 1 - _smooth((at - peak) / (high - peak)))
        field = 0.1 * (hat * body.arm)[:, None] * outward
        field[-5:] = 0  # joints have no thickness
        yield Mode(name, field.ravel(), 1.0)


def _neck(body: _Body) -> Mode:
    """Thicker."""
    base = (body.spot["nape"] + body.spot["hollow"]) / 2 * [0, 1, 1]
    up = np.array([0.0, 0.92, 0.39])  # about the way a neck goes: a little to the front
    high = (body.half - base) @ up
    outward = body.half - base - high[:, None] * up
    near = _smooth((high + 70) / 70) * _smooth((150 - np.linalg.norm(outward, axis=1)) / 90)
    field = 0.1 * (near * (1 - body.arm))[:, None] * outward
    field[-2:] = 0
    return Mode("neck thick", field.ravel(), 1.5)

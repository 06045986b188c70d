"""A second opinion on a plan: read from its JSON, with polygon arithmetic written here, by slabs between corners.

Between two neighbouring corners or crossings no edge begins, ends or meets another, so the stretch of a vertical line
inside a polygon has ends that move on straight lines: what two polygons share there is a trapezium, and its area is its
middle height times its width, exactly.
"""

from __future__ import annotations

import json
import math
from collections import Counter
from itertools import pairwise
from typing import Any

__all__ = ["area", "places", "shared_area", "wrong"]

Corners = list[tuple[float, float]]


def places(text: str) -> list[tuple[dict[str, Any], dict[str, Any], Corners]]:
    """Each placement of a kept plan, its piece, and the corners where it lies."""
    plan = json.loads(text)
    pieces = {f"{piece['garment']}/{piece['name']}": piece for piece in plan["pieces"]}
    found = []
    for placement in plan["placements"]:
        piece = pieces[placement["piece"]]
        cos, sin = math.cos(placement["turn"]), math.sin(placement["turn"])
        corners = []
        for x, y in piece["outline"]:
            side = -y if placement["turned_over"] else y
            corners.append((x * cos - side * sin + placement["x"], x * sin + side * cos + placement["y"]))
        found.append((placement, piece, corners))
    return found


def area(corners: Corners) -> float:
    """By the shoelace rule."""
    return abs(sum(a[0] * b[1] - a[1] * b[0] for a, b in pairwise([*corners, corners[0]]))) / 2


def shared_area(one: Corners, other: Corners) -> float:
    """What two polygons cover together, exactly."""
    left = max(min(x for x, _ in one), min(x for x, _ in other))
    right = min(max(x for x, _ in one), max(x for x, _ in other))
    low = max(min(y for _, y in one), min(y for _, y in other))
    high = min(max(y for _, y in one), max(y for _, y in other))
    if left >= right or low >= high:
        return 0.0
    sides = [
        [(a, b) for a, b in pairwise([*corners, corners[0]]) if a[0] != b[0] and _reaches(a[0], b[0], left, right)]
        for corners in (one, other)
    ]
    stops = {left, right} | {x for x, _ in (*one, *other) if left < x < right}
    stops |= {x for a in sides[0] for b in sides[1] if (x := _meet(a, b)) is not None and left < x < right}
    total = 0.0
    for start, end in pairwise(sorted(stops)):
        if end - start < 1e-9:  # nothing to speak of, and its middle may be one of its ends
            continue
        middle = (start + end) / 2
        heights = [
            sorted(
                a[1] + (b[1] - a[1]) * (middle - a[0]) / (b[0] - a[0])
                for a, b in own
                if min(a[0], b[0]) < middle < max(a[0], b[0])
            )
            for own in sides
        ]
        spans = [list(zip(h[::2], h[1::2], strict=True)) for h in heights]
        total += sum(max(0.0, min(p[1], q[1]) - max(p[0], q[0])) for p in spans[0] for q in spans[1]) * (end - start)
    return total


def wrong(text: str) -> list[str]:
    """Everything that is wrong with a kept plan; nothing of the program is used."""
    plan = json.loads(text)
    cloth, laid = plan["cloth"], places(text)
    halved = {"folded": cloth["width_mm"] / 2 - cloth["selvedge_mm"], "tubular": cloth["width_mm"] / 2}
    strip = halved.get(cloth["spread"], cloth["width_mm"] - 2 * cloth["selvedge_mm"])
    says = [said for one in laid for said in _misplaced(cloth, strip, *one)]
    for i, (placement, _, corners) in enumerate(laid):
        for other, _, beside in laid[:i]:
            if (shared := shared_area(corners, beside)) > 0.05:
                says.append(f"{placement['piece']} and {other['piece']} share {shared:.3f} mm2")
    if cloth["spread"] == "open":
        says += _counted(plan)
    if laid and abs(plan["length_mm"] - max(x for _, _, corners in laid for x, _ in corners)) > 0.01:
        says.append("the length is not that of the pieces")
    return says


def _misplaced(
    cloth: dict[str, Any], strip: float, placement: dict[str, Any], piece: dict[str, Any], corners: Corners
) -> list[str]:
    says = []
    ys = [y for _, y in corners]
    if min(x for x, _ in corners) < -0.02 or min(ys) < -0.02 or max(ys) > strip + 0.02:
        says.append(f"{placement['piece']} lies beyond the edge")
    round_by = 360 if cloth["direction"] == "one-way" else 180
    lean = math.degrees(placement["turn"]) % round_by
    most = math.degrees(cloth["tilt"]) + 1e-4
    if not piece["free"] and most < lean < round_by - most:
        says.append(f"{placement['piece']} is turned by {math.degrees(placement['turn'])} degrees")
    if piece["on_fold"] and cloth["spread"] == "folded" and abs(placement["y"]) > 0.02:
        says.append(f"{placement['piece']} is not on the fold")
    return says


def _counted(plan: dict[str, Any]) -> list[str]:
    """On open cloth, every piece as often as the garments need it."""
    says = []
    there = Counter((p["piece"], p["turned_over"]) for p in plan["placements"])
    for piece in plan["pieces"]:
        key = f"{piece['garment']}/{piece['name']}"
        wanted = (piece["upright"] * piece["garments"], piece["turned_over"] * piece["garments"])
        if (there[key, False], there[key, True]) != wanted:
            says.append(f"{key} lies {there[key, False]} and {there[key, True]} times, not {wanted}")
    return says


def _reaches(x0: float, x1: float, left: float, right: float) -> bool:
    return min(x0, x1) < right and max(x0, x1) > left


def _meet(a: tuple[Any, Any], b: tuple[Any, Any]) -> float | None:
    (ax, ay), (bx, by), (cx, cy), (dx, dy) = *a, *b
    cross = (bx - ax) * (dy - cy) - (by - ay) * (dx - cx)
    if cross == 0:
        return None
    t = ((cx - ax) * (dy - cy) - (cy - ay) * (dx - cx)) / cross
    return float(ax + t * (bx - ax)) if 0 <= t <= 1 else None

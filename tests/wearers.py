"""Random and odd wearers for all tests, every one of them invented.

`random_wearers` meets people as the survey met them: correlated, seeded, the same in every run. `wearers` is the same
for hypothesis. `stretched_wearers` goes evenly to the ends of the model instead, and shrinks towards its mean.
`LIMIT_WEARERS` are the ones that break rules; `CHILDREN` come from a smooth invented table by height.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from functools import cache
from itertools import islice

import numpy as np
from hypothesis import assume
from hypothesis import strategies as st

from tapeline.measures import TAPES, Figure, Survey, Wearer, required_tapes, survey_of

__all__ = ["CHILDREN", "LIMIT_WEARERS", "child", "random_wearers", "stretched_wearers", "survey", "wearers"]

EIGHT = ("bust", "upper_chest", "waist", "hip", "shoulder_width", "back_length", "hip_depth", "arm_length")


def survey(figure: Figure) -> Survey:
    """The survey of a figure that has one."""
    found = survey_of(figure)
    assert found is not None
    return found


def required(figure: Figure, tapes: Mapping[str, float]) -> dict[str, float]:
    """The eight tapes alone."""
    return {tape.name: tapes[tape.name] for tape in required_tapes(figure)}


def believable(figure: Figure, tapes: Mapping[str, float]) -> bool:
    """Whether all tapes lie within what a tape can be."""
    return all(TAPES[name].limits[figure].hold(value) for name, value in tapes.items())


def drawn(figure: Figure, seed: int, optional: tuple[str, ...] = ()) -> Iterator[Wearer]:
    """Endlessly many random wearers; those outside what a tape can be are drawn again."""
    rng = np.random.default_rng(seed)
    number = 0
    while True:
        for tapes in survey(figure).draw(rng, 50):
            taken = required(figure, tapes) | {name: tapes[name] for name in optional}
            if believable(figure, taken):
                number += 1
                yield Wearer(f"{figure} {seed}.{number}", figure, taken)


@cache
def random_wearers(figure: Figure, n: int, seed: int = 1, optional: tuple[str, ...] = ()) -> tuple[Wearer, ...]:
    """The first `n` random wearers of a seed, with the eight tapes and the optional ones that are named."""
    return tuple(islice(drawn(figure, seed, optional), n))


@st.composite
def wearers(draw: st.DrawFn, figures: tuple[Figure, ...] = (Figure.WOMAN, Figure.MAN)) -> Wearer:
    """A random wearer as the survey met them."""
    return next(drawn(draw(st.sampled_from(figures)), draw(st.integers(0, 2**32 - 1))))


@st.composite
def stretched_wearers(draw: st.DrawFn, figures: tuple[Figure, ...] = (Figure.WOMAN, Figure.MAN)) -> Wearer:
    """A wearer up to three standard deviations off in eight independent directions: seldom in life, often here."""
    figure = draw(st.sampled_from(figures))
    names = [tape.name for tape in required_tapes(figure)]
    model = survey(figure)
    where = [model.names.index(name) for name in names]
    steps = draw(st.lists(st.floats(-3, 3), min_size=len(names), max_size=len(names)))
    values = model.mean[where] + np.linalg.cholesky(model.cov[np.ix_(where, where)]) @ np.array(steps)
    tapes = dict(zip(names, map(float, values), strict=True))
    assume(believable(figure, tapes))
    return Wearer("Stretched", figure, tapes)


def _in_cm(name: str, figure: Figure, *cm: float) -> Wearer:
    words = (figure.fullest, *EIGHT[1:])
    return Wearer(name, figure, {word: value * 10 for word, value in zip(words, cm, strict=True)})


LIMIT_WEARERS = (
    _in_cm("very small", Figure.WOMAN, 68, 67, 52, 74, 31, 32, 16, 45),
    _in_cm("very large", Figure.WOMAN, 150, 132, 138, 156, 45, 44, 23, 60),
    _in_cm("waist over hip", Figure.WOMAN, 116, 106, 118, 112, 41, 40, 19, 57),
    _in_cm("bust and upper chest the same", Figure.WOMAN, 88, 88, 70, 94, 38, 39, 21, 56),
    _in_cm("bust and upper chest almost the same", Figure.WOMAN, 88.01, 88, 70, 94, 38, 39, 21, 56),
    _in_cm("upper chest over bust", Figure.WOMAN, 84, 87, 68, 92, 39, 39, 21, 56),
    _in_cm("full bust on a narrow back", Figure.WOMAN, 112, 94, 78, 102, 37, 40, 20, 57),
    _in_cm("hip far over bust", Figure.WOMAN, 86, 84, 70, 118, 37, 40, 21, 56),
    _in_cm("hip like waist", Figure.WOMAN, 84, 83, 76, 80, 38, 38, 19, 55),
    _in_cm("long", Figure.WOMAN, 90, 87, 72, 98, 42, 47, 26, 67),
    _in_cm("short", Figure.WOMAN, 88, 85, 74, 94, 34, 32, 16, 47),
    _in_cm("broad shoulders", Figure.WOMAN, 92, 92, 72, 92, 45, 42, 20, 60),
    _in_cm("slight man", Figure.MAN, 78, 80, 66, 82, 37, 39, 16, 54),
    _in_cm("very large man", Figure.MAN, 150, 142, 156, 140, 52, 50, 21, 66),
    _in_cm("long man", Figure.MAN, 98, 100, 82, 98, 49, 53, 24, 76),
    _in_cm("short man", Figure.MAN, 104, 104, 96, 100, 42, 39, 14, 54),
)
"""Adults who break one rule or another."""


def child(height_cm: float, name: str = "") -> Wearer:
    """A child of a height between 80 and 170 cm.

    Straight lines by height, invented to be smooth and roughly right; no survey stands behind them.
    """
    h = height_cm
    lengths = (0.42 * h + 12, 0.42 * h + 11, 0.28 * h + 23, 0.5 * h + 7, 0.2 * h + 4, 0.22 * h + 2, 0.11 * h + 1)
    return _in_cm(name or f"child of {h:g} cm", Figure.CHILD, *lengths, 0.36 * h - 4)


CHILDREN = tuple(child(height) for height in range(80, 171, 10))
"""One for every ten centimetres of height."""

"""What surveys of real bodies say about tapes: a joint normal distribution, and what follows from it."""

from __future__ import annotations

import json
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from functools import cache
from importlib.resources import files

import numpy as np
from numpy.typing import NDArray

from tapeline.measures.conversions import CONVERSIONS
from tapeline.measures.estimate import Estimate
from tapeline.measures.figures import Figure
from tapeline.measures.tapes import TAPES

__all__ = ["Survey", "survey_of"]

Array = NDArray[np.float64]

_RANGE_MM = {Figure.WOMAN: (700.0, 1200.0), Figure.MAN: (780.0, 1200.0)}
"""Between which girths there were people in the survey: women's bust, men's chest (3.2 standard deviations off)."""

_PREDICTORS = {
    Figure.MAN: frozenset(
        {"chest", "upper_chest", "hip", "shoulder_width", "arm_length", "neck", "upper_arm", "wrist", "back_width"}
        | {"shoulder_length", "armhole_girth", "height"}
    )
}
"""From which tapes others are predicted, where not from all: the men's survey measured its waist at the navel."""

_KEPT = 512
"""So many sets of given tapes are remembered: a batch uses a handful, a server may meet many."""


@dataclass(frozen=True, slots=True, eq=False)
class Survey:
    """The joint normal distribution of all tapes of one figure, from people who were measured.

    Tapes that the survey does not know, or that it does not predict from, are passed over when given.

    >>> women = survey_of(Figure.WOMAN)
    >>> wrist = women.expect("wrist", {"upper_chest": 887, "bust": 907})
    >>> round(wrist.mm), round(wrist.sd_mm, 1)
    (151, 5.7)
    """

    figure: Figure
    names: tuple[str, ...]
    mean: Array
    """In mm, or radians for an angle, as our tapes are taken."""
    cov: Array
    """Of real wearers."""
    doubt_cov: Array
    """The same with what the conversion between definitions may be off: used for all that is said of one wearer."""
    people: int
    source: str
    predictors: frozenset[str]
    _solved: dict[tuple[str, ...], tuple[Array, Array]] = field(default_factory=dict, repr=False)

    def knows(self, name: str) -> bool:
        """Whether the survey has this tape."""
        return self._ours(name) in self.names

    def expect(self, name: str, given: Mapping[str, float]) -> Estimate:
        """Mean and spread of one tape among wearers who have the given ones. Its own value, when given, is not used.

        Raises:
            KeyError: The survey does not know the tape; ask `knows` first.
        """
        name = self._ours(name)
        where = self.names.index(name) if name in self.names else None
        if where is None:
            raise KeyError(f"the survey of this figure has no {name}")
        names = tuple(n for n in self._usable(given) if n != name)
        return self._estimate(where, *self._moments(names, given), extrapolates=self.extrapolates(given))

    def conditional(self, given: Mapping[str, float]) -> dict[str, Estimate]:
        """Mean and spread of every tape that is not given."""
        means, spreads = self._moments(self._usable(given), given)
        extrapolates = self.extrapolates(given)
        known = {self._ours(name) for name in given}
        return {
            name: self._estimate(where, means, spreads, extrapolates=extrapolates)
            for where, name in enumerate(self.names)
            if name not in known
        }

    def deviations(self, tapes: Mapping[str, float]) -> dict[str, float]:
        """For each tape that the survey knows, how many standard deviations it lies from what the others suggest."""
        return {name: self.expect(name, tapes).deviations(tapes[name]) for name in tapes if self.knows(name)}

    def distance(self, tapes: Mapping[str, float]) -> float:
        """How unusual the tapes are together: 0 at the mean, their number on average (squared Mahalanobis distance)."""
        names = tuple(name for name in self.names if name in tapes)
        where = self._where(names)
        off = np.array([tapes[name] for name in names]) - self.mean[where]
        return float(off @ np.linalg.solve(self.doubt_cov[np.ix_(where, where)], off)) if names else 0.0

    def extrapolates(self, given: Mapping[str, float]) -> bool:
        """Whether the bust or chest lies outside those of the people in the survey (women's bust 70 to 120 cm)."""
        girth = given.get(self.figure.fullest, given.get("bust"))
        low, high = _RANGE_MM[self.figure]
        return girth is not None and not low <= girth <= high

    def draw(self, rng: np.random.Generator | int, n: int) -> list[dict[str, float]]:
        """Random wearers as the survey met them: all its tapes, correlated as in life.

        Args:
            rng: A generator, or the seed of one: the same seed gives the same wearers.
            n: How many.
        """
        generator = np.random.default_rng(rng)
        rows = self.mean + generator.standard_normal((n, len(self.names))) @ np.linalg.cholesky(self.cov).T
        return [dict(zip(self.names, map(float, row), strict=True)) for row in rows]

    def _ours(self, name: str) -> str:
        return self.figure.fullest if name == "bust" else name

    def _usable(self, given: Iterable[str]) -> tuple[str, ...]:
        known = {self._ours(name) for name in given} & self.predictors
        return tuple(name for name in self.names if name in known)

    def _where(self, names: Iterable[str]) -> list[int]:
        return [self.names.index(name) for name in names]

    def _moments(self, names: tuple[str, ...], given: Mapping[str, float]) -> tuple[Array, Array]:
        """Conditional means and standard deviations of all tapes, those that are given included."""
        if names not in self._solved:
            if len(self._solved) >= _KEPT:
                self._solved.clear()
            where = self._where(names)
            across = self.doubt_cov[:, where]
            weights = np.linalg.solve(self.doubt_cov[np.ix_(where, where)], across.T).T
            left = np.diag(self.doubt_cov) - np.sum(weights * across, axis=1)
            self._solved[names] = np.asarray(weights, float), np.sqrt(np.maximum(left, 0))
        weights, spreads = self._solved[names]
        values = np.array([given[name] if name in given else given["bust"] for name in names])
        return self.mean + weights @ (values - self.mean[self._where(names)]), spreads

    def _estimate(self, where: int, means: Array, spreads: Array, *, extrapolates: bool) -> Estimate:
        angle = TAPES[self.names[where]].angle
        return Estimate(float(means[where]), float(spreads[where]), "survey", extrapolates, angle)


@cache
def survey_of(figure: Figure) -> Survey | None:
    """The survey behind a figure; None for children, of whom there is none.

    >>> [survey.people for figure in Figure if (survey := survey_of(figure))]
    [2208, 2420]
    """
    if not figure.has_survey:
        return None
    word = {Figure.WOMAN: "women", Figure.MAN: "men"}[figure]
    text = files("tapeline.measures").joinpath("data", f"population_{word}.json").read_text(encoding="utf-8")
    table = json.loads(text)
    rows = CONVERSIONS[figure]
    names = tuple(name for name in TAPES if name in rows)
    keys = [table["keys"].index(rows[name].key) for name in names]
    factors = np.array([rows[name].factor for name in names])
    mean = np.array(table["mean"])[keys] * factors + np.array([rows[name].shift_mm for name in names])
    cov = np.array(table["cov"])[np.ix_(keys, keys)] * np.outer(factors, factors)
    doubt_cov = cov + np.diag([rows[name].spread_mm ** 2 for name in names])
    for array in (mean, cov, doubt_cov):
        array.setflags(write=False)
    predictors = _PREDICTORS.get(figure, frozenset(names))
    return Survey(figure, names, mean, cov, doubt_cov, table["n"], table["source"], predictors)

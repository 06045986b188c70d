"""What is expected of a body that nobody has taped: from a survey of women, of men, or nothing but the rule.

Each expectation is a formula of surveyed sizes, eased so that it agrees with the rule of proportion at the middle
size, and follows real bodies away from it. The surveys and their definitions: `tapeline.measures`.
"""

from __future__ import annotations

from tapeline.draft import Draft
from tapeline.lengths import Length, at_least, cm
from tapeline.measures import Figure

__all__ = ["Expectation", "armhole_depth_by_rule", "expectation", "half_back_by_rule", "neck_width_by_rule"]

TAPED_DEPTH_EASE = cm(2)
"""Common practice, no source: the chest line lies this far below the armpit where no survey says better."""
USUAL_BUST = cm(2)
"""Bust over upper chest for which the usual front drop, of the same size, is made."""


def armhole_depth_by_rule(upper_chest: Length) -> Length:
    """A quarter of the upper chest, less 1."""
    return upper_chest / 4 - cm(1)


def half_back_by_rule(upper_chest: Length) -> Length:
    """A sixth of the upper chest, and 3."""
    return upper_chest / 6 + cm(3)


def neck_width_by_rule(upper_chest: Length) -> Length:
    """A twelfth of the upper chest."""
    return upper_chest / 12


class Expectation:
    """No survey: the frame is by rule, and there is no bust (children, and men by the proportional frame)."""

    def armhole_depth(self, _d: Draft) -> Length | None:
        """Nape to chest line."""
        return None

    def armhole_depth_from_tape(self, d: Draft) -> Length:
        """The same, from the tape nape to armpit."""
        return d.body("armhole_depth", "Nape to the level of the armpits") + TAPED_DEPTH_EASE

    def half_back_width(self, _d: Draft) -> Length | None:
        """Centre back to armhole."""
        return None

    def half_back_from_tape(self, d: Draft) -> Length:
        """The same, from the tape across the back."""
        return d.body("back_width", "Across the back, from arm to arm") / 2

    def half_chest_width(self, _half_back: Length, _narrower: Length) -> Length | None:
        """Centre front to armhole."""
        return None

    def neck_width(self, _d: Draft) -> Length | None:
        """Centre to neck point."""
        return None

    def front_drop(self, _d: Draft) -> Length:
        """How much lower the front hem hangs at the centre."""
        return cm(0)


class Woman(Expectation):
    """Rules for a woman: the bust takes up length at the front. Tapes are eased by what the survey says of them."""

    middle = cm(86)
    """The upper chest for which the rules of proportion are commonly taught; there both frames agree."""

    def armhole_depth_from_tape(self, d: Draft) -> Length:
        """Eased so that the survey's woman of the middle size gets the rule's depth."""
        depth = d.body("armhole_depth", "Nape to the level of the armpits")
        return depth + (armhole_depth_by_rule(self.middle) - d.expected_at(self.middle, "armhole_depth"))

    def half_back_from_tape(self, d: Draft) -> Length:
        """Eased so that the survey's woman of the middle size gets the rule's width."""
        width = d.body("back_width", "Across the back, from arm to arm, half way down the armhole")
        return width / 2 + (half_back_by_rule(self.middle) - d.expected_at(self.middle, "back_width") / 2)

    def front_drop(self, d: Draft) -> Length:
        """2 for the usual bust, growing by half of what it is more."""
        more = d.tape("bust") - d.tape("upper_chest") - USUAL_BUST
        return at_least(USUAL_BUST + more / 2, cm(0))


class SurveyedWoman(Woman):
    """What the survey of women expects."""

    def armhole_depth(self, d: Draft) -> Length:
        """Follows the expected depth of the armpits."""
        return self.armhole_depth_from_tape(d)

    def half_back_width(self, d: Draft) -> Length:
        """Follows the expected back width."""
        return self.half_back_from_tape(d)

    def half_chest_width(self, half_back: Length, narrower: Length) -> Length:
        """The survey has no front width: a little less than the back."""
        return half_back - narrower

    def neck_width(self, d: Draft) -> Length:
        """In proportion to the expected girth of the neck."""
        girth = d.body("neck", "Round the base of the neck")
        return girth * (neck_width_by_rule(self.middle) / d.expected_at(self.middle, "neck"))


class SurveyedMan(Expectation):
    """What the survey of men expects: it has no armhole depth, so the girth of the armhole stands for it."""

    middle = cm(102)
    """The survey's mean upper chest, rounded; there both frames agree."""

    def armhole_depth(self, d: Draft) -> Length:
        """In proportion to the expected girth of the armhole."""
        girth = d.body("armhole_girth", "Round the armhole, under the arm and over the shoulder point")
        return girth * (armhole_depth_by_rule(self.middle) / d.expected_at(self.middle, "armhole_girth"))

    def half_back_width(self, d: Draft) -> Length:
        """Follows the expected back width."""
        width = d.body("back_width", "Across the back, at the folds of the armpits")
        return width / 2 + (half_back_by_rule(self.middle) - d.expected_at(self.middle, "back_width") / 2)

    def half_chest_width(self, half_back: Length, narrower: Length) -> Length:
        """The survey has no front width: a little less than the back."""
        return half_back - narrower

    def neck_width(self, d: Draft) -> Length:
        """In proportion to the expected girth of the neck."""
        girth = d.body("neck", "Round the base of the neck")
        return girth * (neck_width_by_rule(self.middle) / d.expected_at(self.middle, "neck"))


_BY_RULE = {Figure.WOMAN: Woman(), Figure.MAN: Expectation(), Figure.CHILD: Expectation()}
_BY_SURVEY = {Figure.WOMAN: SurveyedWoman(), Figure.MAN: SurveyedMan(), Figure.CHILD: Expectation()}


def expectation(figure: Figure, *, surveyed: bool) -> Expectation:
    """The expectations for a figure, by the survey or by rule alone; a child has no survey."""
    return (_BY_SURVEY if surveyed else _BY_RULE)[figure]

"""The table in docs/explanation/frames.md: what the rule says, and what the survey says, over the upper chest."""

from __future__ import annotations

from scripts.pages.markdown import table
from tapeline.blocks.expectation import Woman, armhole_depth_by_rule, half_back_by_rule, neck_width_by_rule
from tapeline.lengths import Length, cm
from tapeline.measures import Figure, survey_of

__all__ = ["text"]

UPPER_CHESTS = range(78, 111, 4)


def text() -> str:
    """Three sizes, side by side."""
    women = survey_of(Figure.WOMAN)
    if women is None:
        raise SystemExit("reference: there is no survey of women")
    middle = Woman.middle

    def expected(name: str, upper_chest: Length) -> Length:
        return Length(women.expect(name, {"upper_chest": upper_chest.mm}).mm)

    def spread(name: str) -> float:
        return women.expect(name, {"upper_chest": middle.mm}).sd_mm

    rows = []
    for chest in map(cm, UPPER_CHESTS):
        depth = expected("armhole_depth", chest) + (armhole_depth_by_rule(middle) - expected("armhole_depth", middle))
        back = expected("back_width", chest) / 2 + (half_back_by_rule(middle) - expected("back_width", middle) / 2)
        neck = expected("neck", chest) * (neck_width_by_rule(middle) / expected("neck", middle))
        rules = armhole_depth_by_rule(chest), half_back_by_rule(chest), neck_width_by_rule(chest)
        sizes = [f"{length.mm / 10:.1f}" for pair in zip(rules, (depth, back, neck), strict=True) for length in pair]
        rows.append([f"{chest.mm / 10:g}", *sizes])
    per_neck = neck_width_by_rule(middle).mm / expected("neck", middle).mm
    spreads = spread("armhole_depth") / 10, spread("back_width") / 20, spread("neck") * per_neck / 10
    head = ["upper chest"]
    for name, sd in zip(("armhole depth", "half back width", "neck width"), spreads, strict=True):
        head += [f"{name}: rule", f"survey, ± {sd:.1f}"]
    return table(head, rows, range(len(head)))

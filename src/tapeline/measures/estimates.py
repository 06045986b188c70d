"""The sizes that were not taped, estimated from those that were."""

from __future__ import annotations

from tapeline.measures.estimate import Estimate
from tapeline.measures.figures import Figure
from tapeline.measures.survey import survey_of
from tapeline.measures.wearer import Wearer

__all__ = ["estimates", "large_head"]

_LARGE_HEAD = {
    Figure.WOMAN: Estimate(585, 0, "survey: the 99th percentile of its 2,208 women"),
    Figure.MAN: Estimate(605, 0, "from memory: about the 99th percentile of the men measured with the women in 1988"),
}


def estimates(wearer: Wearer) -> dict[str, Estimate]:
    """Every size that the survey knows and that was not taped, given all tapes; empty for a child.

    A size that is missing here (men's armhole depth, everybody's chest width) is in no survey of ours: it needs a rule
    or a tape.

    >>> from tapeline.measures import size_wearer
    >>> sizes = estimates(size_wearer("88"))
    >>> round(sizes["armhole_depth"].mm), round(sizes["armhole_depth"].sd_mm, 1)
    (183, 10.4)
    """
    survey = survey_of(wearer.figure)
    return survey.conditional(wearer.tapes) if survey else {}


def large_head(figure: Figure) -> Estimate | None:
    """A head girth that 99 of 100 wearers do not exceed: what an opening must let through when the head was not taped.

    The number is counted, not computed from the normal model, which falls half a centimetre short in that tail. A
    spread of 0 says that it is an end, not a middle. None for a child: the head has to be taped.

    >>> large_head(Figure.WOMAN).mm
    585
    """
    return _LARGE_HEAD.get(figure)

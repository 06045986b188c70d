"""The drafting language: places, headings, rays and lines on sheets, each recorded as a step with its reason."""

from tapeline.draft.correcting import corrected, refuse_undrawn, set_lower
from tapeline.draft.draft import Draft
from tapeline.draft.drawn import Drawn, Ray, turned_over
from tapeline.draft.heading import LEVEL, STRAIGHT_DOWN, STRAIGHT_UP, Heading
from tapeline.draft.lift import fall_at, lift_until, lifted
from tapeline.draft.place import Place, Reading, corner_below, foot_of, halfway, part_way, square_corner
from tapeline.draft.sheet import (
    Sheet,
    edge,
    folded,
    hemmed,
    laid,
    neatened,
    notch,
    notch_along,
    only_if,
    opened,
    seam,
    sewn,
)
from tapeline.draft.trace import Tracing, upright
from tapeline.draft.turned import opposite, part_from, part_to, traced, turned
from tapeline.draft.worn import (
    WornEdge,
    WornHalf,
    arc_centre,
    laid_on,
    over_seam,
    worn_beside,
    worn_line,
    worn_line_from_point,
)

__all__ = [
    "LEVEL",
    "STRAIGHT_DOWN",
    "STRAIGHT_UP",
    "Draft",
    "Drawn",
    "Heading",
    "Place",
    "Ray",
    "Reading",
    "Sheet",
    "Tracing",
    "WornEdge",
    "WornHalf",
    "arc_centre",
    "corner_below",
    "corrected",
    "edge",
    "fall_at",
    "folded",
    "foot_of",
    "halfway",
    "hemmed",
    "laid",
    "laid_on",
    "lift_until",
    "lifted",
    "neatened",
    "notch",
    "notch_along",
    "only_if",
    "opened",
    "opposite",
    "over_seam",
    "part_from",
    "part_to",
    "part_way",
    "refuse_undrawn",
    "seam",
    "set_lower",
    "sewn",
    "square_corner",
    "traced",
    "turned",
    "turned_over",
    "upright",
    "worn_beside",
    "worn_line",
    "worn_line_from_point",
]

"""Which lines of a docket govern which points of the drawing, and which way a point goes when the line grows.

The page puts a handle on each; the tests draft with the line changed and measure that the point goes as is said here.
"""

from __future__ import annotations

from dataclasses import dataclass

__all__ = ["GOVERNED", "Governed"]


@dataclass(frozen=True, slots=True)
class Governed:
    """A point goes one way as a choice grows."""

    label: str
    """Of the point."""
    keys: tuple[str, ...]
    """Of the choice, below `garment`."""
    way: str
    """`down`, `up`, `out`, `inward`, or the line of the same piece along which it goes."""
    share: float = 1.0
    """How many millimetres it goes for each millimetre more of the choice."""
    girth: str = ""
    """Only where the garment comes to this girth of the body; empty when it does not matter."""


GOVERNED = (
    Governed("front.neckline_centre", ("neckline", "lower_front"), "down"),
    Governed("front.neckline_shoulder", ("neckline", "widen"), "shoulder_line"),
    Governed("front.front_shoulder_tip", ("looseness", "shoulder"), "shoulder_line"),
    Governed("front.dropped_reach", ("shoulder_drop",), "set_in_shoulder"),
    Governed("front.underarm", ("looseness", "side"), "out"),
    Governed("front.underarm", ("looseness", "drop"), "down"),
    Governed("front.strap_end", ("shoulder_narrower",), "given_up"),
    Governed("front.underarm", ("underarm_raised",), "up"),
    Governed("front.side_waist", ("waist",), "inward"),
    Governed("front.hem_centre", ("length",), "down"),
    Governed("front.side_hem", ("hem", "shape", "rise"), "up"),
    Governed("front.vent_top", ("hem", "vent"), "up"),
    Governed("yoke.yoke_back_start", ("yoke", "shape", "back"), "down"),
    Governed("back_lower.block_back_end", ("colour_block", "below"), "down"),
    Governed("front_lower.block_front_end", ("colour_block", "below"), "down"),
    Governed("back.neckline_centre", ("neckline", "lower_back"), "down"),
    Governed("back.neckline_shoulder", ("neckline", "widen"), "shoulder_line"),
    Governed("back.back_shoulder_tip", ("looseness", "shoulder"), "shoulder_line"),
    Governed("back.dropped_reach", ("shoulder_drop",), "set_in_shoulder"),
    Governed("back.underarm", ("looseness", "side"), "out"),
    Governed("back.underarm", ("looseness", "drop"), "down"),
    Governed("back.strap_end", ("shoulder_narrower",), "given_up"),
    Governed("back.underarm", ("underarm_raised",), "up"),
    Governed("back.side_waist", ("waist",), "inward"),
    Governed("back.hem_centre", ("length",), "down"),
    Governed("sleeve.hem_level", ("sleeve", "length"), "down"),
    Governed("sleeve.cap_foot", ("sleeve", "cap", "extra"), "down"),
    # Both underarm seams come in alike, so each has half of what the wrist is wider.
    Governed("sleeve.front_wrist", ("sleeve", "wrist_ease"), "out", share=0.5, girth="wrist"),
    Governed("back.keyhole_end", ("neckline", "keyhole", "depth"), "down"),
    Governed("front.keyhole_end", ("neckline", "keyhole", "depth"), "down"),
    Governed("neck_binding.band_fold", ("neckline", "binding", "width"), "up"),
    Governed("rib_collar.band_fold", ("neckline", "collar", "height"), "up"),
    Governed("front.sleeve_hem_level", ("sleeve", "length"), "arm_line"),
    Governed("front.curve_start", ("arm", "curve"), "underarm_line"),
    Governed("front_sleeve.hem_level", ("sleeve", "length"), "down"),
    Governed("front_sleeve.cap_foot", ("sleeve", "cap", "extra"), "down"),
    Governed("front_sleeve.wrist", ("sleeve", "wrist_ease"), "inward", share=0.5, girth="wrist"),
    Governed("neckband.band_fold", ("band", "width"), "up"),
    Governed("front.underarm", ("underarm_raised",), "up"),
    Governed("back.underarm", ("underarm_raised",), "up"),
    Governed("armhole_binding.crease_left", ("armhole", "binding", "width"), "up"),
    Governed("armhole_band.crease_left", ("armhole_band", "width"), "up"),
    Governed("front.front_edge_top", ("front", "button"), "inward", share=0.5),
    Governed("front.facing_chest", ("front", "facing"), "out"),
    Governed("front.button_1", ("first_button",), "down"),
    # Each strip lies over the centre by half of its width.
    Governed("front.placket_corner", ("placket", "width"), "out", share=0.5),
    Governed("front.placket_end", ("placket", "length"), "down"),
    Governed("stand.centre_back_top", ("collar", "stand"), "up"),
    Governed("collar.centre_back_top", ("collar", "width"), "up"),
    Governed("collar.crease_left", ("collar", "width"), "up"),
    Governed("cuff.crease_left", ("cuff", "width"), "up"),
    Governed("hem_binding.crease_left", ("hem", "binding", "width"), "up"),
    Governed("front.wrap_level", ("wrap", "above_waist"), "up"),
    # Each front is cut back by half of its band.
    Governed("front.band_low", ("closure", "width"), "out", share=0.5),
    Governed("shirt_cuff.crease_left", ("sleeve", "end", "cuff"), "up"),
    Governed("hood.crown_level", ("hood", "height_ease"), "up"),
    Governed("hood.back_of_head", ("hood", "depth_ease"), "out"),
    Governed("hood.face_foot", ("hood", "overlap"), "inward"),
    Governed("hood.casing_foot", ("hood", "casing"), "out"),
    # Half the strip is drawn, on the fold.
    Governed("hood_strip.face_side", ("hood", "strip_width"), "out", share=0.5),
    Governed("front.pocket_foot", ("pocket", "above_hem"), "up"),
    Governed("front.pocket_mouth", ("pocket", "above_chest"), "up"),
    Governed("hem_band.crease_left", ("hem_band", "width"), "up"),
)
"""For every style; a style without the choice or the point has no such handle."""

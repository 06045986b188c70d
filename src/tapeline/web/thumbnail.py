"""Small pictures of the pieces with the lines that a choice changes drawn strong."""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache

from tapeline.pattern import Piece
from tapeline.web.view import View

__all__ = ["Thumbnail", "thumbnail"]

MARGIN_MM = 12.0
CHANGES: dict[str, tuple[str, ...]] = {
    "garment.looseness": ("back.side", "back.armhole", "back.shoulder", "back.raglan"),
    "garment.looseness.side": ("back.side", "front.side"),
    "garment.looseness.drop": (
        "back.armhole",
        "front.armhole",
        "back.raglan",
        "front.raglan",
        "back.underarm",
        "front.underarm",
    ),
    "garment.looseness.shoulder": (
        "back.shoulder",
        "front.shoulder",
        "back_sleeve.overarm",
        "front_sleeve.overarm",
        "back.overarm",
        "front.overarm",
    ),
    "garment.looseness.hem": ("back.hem", "front.hem"),
    "garment.looseness.scoop": ("front.armhole", "front.raglan"),
    "garment.neckline.shape": ("back.neckline", "front.neckline"),
    "garment.neckline.shape.depth": ("front.neckline",),
    "garment.neckline.shape.fullness": ("front.neckline",),
    "garment.neckline.shape.rise": ("back.shoulder", "front.shoulder", "back.neckline", "front.neckline"),
    "garment.neckline.shape.wider": ("back.neckline", "front.neckline"),
    "garment.neckline.shape.line": ("back.neckline", "front.neckline"),
    "garment.neckline.finish": (
        *(f"{strip}.neckline" for strip in ("neckband", "neck_binding", "rib_collar")),
        *(f"{half}_neck_facing.{edge}" for half in ("back", "front") for edge in ("neckline", "outer")),
    ),
    "garment.neckline.facing.width": ("back_neck_facing.outer", "front_neck_facing.outer"),
    "garment.neckline.hem": ("back.neckline", "front.neckline"),
    "garment.neckline.binding.width": ("neck_binding.centre_back", "neck_binding.centre_front"),
    "garment.neckline.binding.stretch": ("neck_binding.neckline", "neck_binding.neckline_turned"),
    "garment.neckline.collar": ("rib_collar.neckline", "rib_collar.neckline_turned", "rib_collar.centre_back"),
    "garment.neckline.collar.height": ("rib_collar.centre_back", "rib_collar.centre_front"),
    "garment.neckline.collar.stretch": ("rib_collar.neckline", "rib_collar.neckline_turned"),
    "garment.neckline.keyhole.place": ("back_neck_facing.outer", "front_neck_facing.outer"),
    "garment.neckline.keyhole.depth": ("back_neck_facing.outer", "front_neck_facing.outer"),
    "garment.neckline.widen": ("back.neckline", "front.neckline"),
    "garment.neckline.lower_front": ("front.neckline",),
    "garment.neckline.lower_back": ("back.neckline",),
    "garment.shoulder_drop": ("back.armhole", "back.shoulder"),
    "garment.waist": ("back.side", "front.side"),
    "garment.length": ("back.hem", "front.hem"),
    "garment.band": ("neckband.neckline", "neckband.neckline_turned", "neckband.centre_back"),
    "garment.band.width": ("neckband.centre_back", "neckband.centre_front"),
    "garment.band.stretch": ("neckband.neckline", "neckband.neckline_turned"),
    "garment.armhole_band": ("armhole_band.armhole", "armhole_band.armhole_turned", "armhole_band.front_end"),
    "garment.armhole_band.width": ("armhole_band.front_end", "armhole_band.back_end"),
    "garment.armhole_band.stretch": ("armhole_band.armhole", "armhole_band.armhole_turned"),
    "garment.armhole.finish": (
        *(f"{strip}.armhole" for strip in ("armhole_band", "armhole_binding")),
        *(f"{half}_armhole_facing.{edge}" for half in ("back", "front") for edge in ("armhole", "outer")),
    ),
    "garment.armhole.facing_width": ("back_armhole_facing.outer", "front_armhole_facing.outer"),
    "garment.armhole.hem": ("back.armhole", "front.armhole"),
    "garment.armhole.binding.width": ("armhole_binding.front_end", "armhole_binding.back_end"),
    "garment.armhole.binding.stretch": ("armhole_binding.armhole", "armhole_binding.armhole_turned"),
    "garment.underarm_raised": ("back.armhole", "front.armhole"),
    "garment.shoulder_narrower": ("back.armhole", "back.shoulder"),
    "garment.hem": ("back.hem", "front.hem", "back.vent", "front.vent"),
    "garment.hem.shape": ("back.hem", "front.hem"),
    "garment.hem.shape.rise": ("back.hem", "front.hem"),
    "garment.hem.shape.back_lower": ("back.hem",),
    "garment.hem.shape.back_longer": ("back.hem", "back.vent"),
    "garment.hem.vent": ("back.side", "front.side", "back.vent", "front.vent"),
    "garment.yoke": ("yoke.yoke_back", "yoke.yoke_front", "front_yoke.yoke_front", "back.neckline"),
    "garment.yoke.shape": ("yoke.yoke_back", "yoke.yoke_front", "front_yoke.yoke_front", "back.neckline"),
    "garment.yoke.shape.back": ("yoke.yoke_back", "back.yoke_back"),
    "garment.yoke.shape.front": ("yoke.yoke_front", "front_yoke.yoke_front", "front.yoke_front"),
    "garment.colour_block": ("back_lower.block_back", "front_lower.block_front"),
    "garment.colour_block.below": ("back.block_back", "back_lower.block_back"),
    "garment.flare": ("back.side", "back.hem"),
    "garment.front": ("front.facing_inner", "front.facing_lap", "front.lap", "front.centre"),
    "garment.front.button": ("front.facing_lap", "front.lap"),
    "garment.front.facing": ("front.facing_inner",),
    "garment.placket": ("front.placket", "front.placket_foot", "placket.lap", "placket.placket"),
    "garment.placket.width": ("front.placket_foot", "placket.foot", "placket.foot_lap"),
    "garment.placket.length": ("front.placket", "placket.placket", "placket.placket_turned"),
    "garment.collar": (
        "stand.neckline",
        "stand.front_end",
        "collar.outer",
        "collar.neckline",
        "collar.neckline_turned",
        "collar.front_end",
    ),
    "garment.collar.stand": ("stand.centre_back", "stand.front_end"),
    "garment.collar.width": ("collar.front_end", "collar.centre_back"),
    "garment.collar.rise": ("stand.neckline", "stand.collar", "collar.stand", "collar.neckline"),
    "garment.panel.from_neck": ("back_side.panel_back", "front_side.panel_front"),
    "garment.hem.finish": (
        *("back.hem", "front.hem"),
        *("back_hem_facing.inner", "front_hem_facing.inner", "hem_binding.hem"),
    ),
    "garment.hem.facing": ("back_hem_facing.inner", "front_hem_facing.inner"),
    "garment.hem.binding.width": ("hem_binding.centre_front", "hem_binding.centre_back"),
    "garment.hem.binding.stretch": ("hem_binding.hem", "hem_binding.hem_turned"),
    "garment.wrap.above_waist": ("front.neckline", "front.side_over"),
    "garment.closure": ("front.centre", "button_band.front", "button_band.front_turned"),
    "garment.closure.width": ("button_band.lower_end", "button_band.upper_end", "front.centre"),
    "garment.collar.turn": ("under_collar.outer", "under_collar.front_end"),
    "garment.collar.point": ("collar.front_end", "collar.outer"),
    "garment.collar.forward": ("collar.front_end",),
    "garment.collar.stretch": ("collar.neckline", "collar.neckline_turned"),
    "garment.cuff": ("cuff.hem", "cuff.hem_turned", "cuff.front_end", "cuff.back_end"),
    "garment.cuff.width": ("cuff.front_end", "cuff.back_end"),
    "garment.cuff.stretch": ("cuff.hem", "cuff.hem_turned"),
    "garment.hem_band": ("hem_band.hem", "hem_band.hem_turned", "hem_band.centre_back"),
    "garment.hem_band.width": ("hem_band.centre_front", "hem_band.centre_back"),
    "garment.hem_band.stretch": ("hem_band.hem", "hem_band.hem_turned"),
    "garment.hood.cut": ("hood.crown", "hood_strip.side"),
    "garment.hood.height_ease": ("hood.crown", "hood.face"),
    "garment.hood.depth_ease": ("hood.crown",),
    "garment.hood.overlap": ("hood.face", "hood.overlap"),
    "garment.hood.strip_width": ("hood_strip.face", "hood_strip.side"),
    "garment.hood.strip_neck": ("hood_strip.neckline", "hood_strip.side"),
    "garment.hood.casing": ("hood.face", "hood_strip.face"),
    "garment.hood.cord": ("hood.face", "hood_strip.face"),
    "garment.hood.cord_end": ("hood.face", "hood_strip.face"),
    "garment.pocket.kind": ("pocket.top", "pocket.opening", "pocket.side", "pocket.mouth", "pocket.side_in"),
    "garment.pocket.roomier": ("pocket.opening", "pocket.side", "pocket.mouth", "pocket.side_in", "pocket.side_out"),
    "garment.pocket.above_hem": ("pocket.bottom", "pocket.bottom_in", "pocket.bottom_out", "front.hem"),
    "garment.pocket.above_chest": ("pocket.mouth",),
    "garment.arm": ("back.overarm", "back.underarm", "back.slit_sleeve"),
    "garment.arm.hang": ("back.overarm",),
    "garment.arm.underarm": ("back.underarm", "back.slit_sleeve", "back.slit_side"),
    "garment.arm.curve": ("back.underarm",),
    "garment.arm.slit": ("back.slit_sleeve", "back.slit_side", "gusset.front_sleeve", "gusset.front_side"),
    "garment.arm.lift": ("gusset.front_sleeve", "gusset.front_side", "gusset.back_side", "gusset.back_sleeve"),
    "garment.raglan": ("front.raglan", "back.raglan", "front_sleeve.raglan", "back_sleeve.raglan"),
    "garment.raglan.front": ("front.raglan", "front.neckline", "front_sleeve.neckline"),
    "garment.raglan.back": ("back.raglan", "back.neckline", "back_sleeve.neckline"),
    "garment.sleeve.length": ("sleeve.hem", "back.sleeve_hem", "front_sleeve.hem", "back_sleeve.hem"),
    "garment.sleeve.shape": (
        "sleeve.underarm_back",
        "sleeve.underarm_front",
        "sleeve.hem",
        "front_sleeve.underarm",
        "front_sleeve.hem",
    ),
    "garment.sleeve.shape.taper": (
        "sleeve.underarm_back",
        "sleeve.underarm_front",
        "sleeve.hem",
        "front_sleeve.underarm",
        "front_sleeve.hem",
    ),
    "garment.sleeve.shape.flare": (
        "sleeve.underarm_back",
        "sleeve.underarm_front",
        "sleeve.hem",
        "front_sleeve.underarm",
        "front_sleeve.hem",
    ),
    "garment.sleeve.end.bell": ("bell.hem", "bell.elbow", "sleeve.elbow"),
    "garment.sleeve.head": ("sleeve.cap_back", "sleeve.cap_front"),
    "garment.sleeve.head.spread": ("sleeve.cap_back", "sleeve.cap_front"),
    "garment.sleeve.head.raised": ("sleeve.cap_back", "sleeve.cap_front"),
    "garment.sleeve.end": ("sleeve.hem", "bell.hem", "sleeve_band.hem", "sleeve_band.hem_turned", "shirt_cuff.sleeve"),
    "garment.sleeve.end.band": ("sleeve_band.front_end", "sleeve_band.back_end"),
    "garment.sleeve.end.loose": (
        *("sleeve_band.hem", "sleeve_band.hem_turned"),
        *("shirt_cuff.sleeve", "shirt_cuff.sleeve_turned"),
    ),
    "garment.sleeve.end.cuff": ("shirt_cuff.end", "shirt_cuff.lap_end"),
    "garment.sleeve.end.slit": ("slit_binding.slit", "slit_binding.slit_turned"),
    "garment.sleeve.end.fullness": ("sleeve.hem", "shirt_cuff.sleeve"),
    "garment.sleeve.end.rolled": ("sleeve.hem",),
    "garment.sleeve.cap": ("sleeve.cap_back", "sleeve.cap_front", "front_sleeve.raglan", "front_sleeve.overarm"),
    "garment.sleeve.cap.share": ("sleeve.cap_back", "sleeve.cap_front", "front_sleeve.raglan", "front_sleeve.overarm"),
    "garment.sleeve.cap.extra": ("sleeve.cap_back", "sleeve.cap_front", "front_sleeve.raglan", "front_sleeve.overarm"),
    "garment.sleeve.ease": ("sleeve.cap_back", "sleeve.cap_front"),
    "garment.corrections.sloping_shoulders": ("back.shoulder", "front.shoulder", "front.armhole", "back.armhole"),
    "garment.corrections.square_shoulders": ("back.shoulder", "front.shoulder", "front.armhole", "back.armhole"),
    "garment.corrections.left_shoulder_lower": ("back.shoulder", "back.shoulder_left", "front.shoulder"),
    "garment.corrections.right_shoulder_lower": ("back.shoulder", "front.shoulder", "front.shoulder_right"),
    "garment.corrections.forward_shoulders": ("back.shoulder", "front.shoulder"),
    "garment.corrections.full_bust.width": ("back.side", "front.side"),
    "garment.corrections.full_bust.length": ("front.side", "front.hem"),
    "garment.corrections.rounded_back": ("back.neckline", "back.shoulder", "back.centre"),
    "garment.corrections.erect_back": ("back.neckline", "back.shoulder", "back.centre"),
    "garment.corrections.shoulder_blades": ("back.shoulder", "back.armhole"),
    "garment.corrections.sway_back": ("back.hem", "back.centre"),
    "garment.corrections.full_waist": ("front.side", "front.hem"),
    "garment.corrections.large_arm": ("sleeve.cap_back", "sleeve.cap_front"),
    "garment.sleeve.wrist_ease": (
        "back.underarm",
        "back.sleeve_hem",
        "sleeve.underarm_back",
        "sleeve.underarm_front",
        "sleeve.hem",
        "front_sleeve.underarm",
        "front_sleeve.hem",
    ),
}
"""Which edges a choice of the docket moves most; a choice that is not here has no picture."""


@dataclass(frozen=True, slots=True)
class Thumbnail:
    """Pieces side by side as one picture."""

    box: str
    pieces: tuple[Shown, ...]


@dataclass(frozen=True, slots=True)
class Shown:
    """One piece of it."""

    move: str
    """Where it lies, as an SVG transform from its own axes, y up."""
    outline: str
    changed: tuple[str, ...]


def thumbnail(view: View, key: str) -> Thumbnail | None:
    """The pieces that a choice changes, with its edges apart; None where there is nothing to show."""
    if view.drafted is None:
        return None
    garment = view.drafted.garment
    there = {f"{piece.name}.{edge.name}" for piece in garment.pieces for edge in piece.edges}
    edges = [edge for edge in CHANGES.get(key, ()) if edge in there]
    if not edges:
        return None
    x, height = MARGIN_MM, 0.0
    pieces: list[Shown] = []
    for name in dict.fromkeys(edge.partition(".")[0] for edge in edges):
        outline, (left, low, right, top) = _outline(view, name)
        changed = tuple(_edge(view, name, edge.partition(".")[2]) for edge in edges if edge.startswith(f"{name}."))
        pieces.append(Shown(f"matrix(1 0 0 -1 {x - left:.1f} {MARGIN_MM + top:.1f})", outline, changed))
        x += right - left + MARGIN_MM
        height = max(height, top - low)
    return Thumbnail(f"0 0 {x:.0f} {height + 2 * MARGIN_MM:.0f}", tuple(pieces))


@lru_cache(maxsize=64)
def _outline(view: View, piece: str) -> tuple[str, tuple[float, float, float, float]]:
    """A piece's outline as an SVG path, and its box: left, low, right, top, mm. Many pictures show the same piece."""
    seam_line = _piece(view, piece).seam_line
    points = seam_line.sampled(1.0)
    (left, low), (right, top) = points.min(axis=0).tolist(), points.max(axis=0).tolist()
    return seam_line.svg(1), (left, low, right, top)


@lru_cache(maxsize=128)
def _edge(view: View, piece: str, edge: str) -> str:
    return _piece(view, piece).edge(edge).path.svg(1)


def _piece(view: View, name: str) -> Piece:
    if view.drafted is None:
        raise ValueError("nothing is drafted")
    return view.drafted.garment.piece(name)

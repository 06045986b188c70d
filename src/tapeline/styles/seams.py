"""How the parts of a top are sewn: the seams between them, and the lines that run on over a seam."""

from __future__ import annotations

from tapeline.blocks.armhole_band import ArmholeBand
from tapeline.blocks.armhole_finish import ArmholeFacing
from tapeline.blocks.button_band import ButtonBand
from tapeline.blocks.cuff import Cuff
from tapeline.blocks.hem_band import HemBand
from tapeline.blocks.neck_facing import NeckFacing
from tapeline.blocks.neckband import Neckband
from tapeline.blocks.outline import SideLines
from tapeline.blocks.sleeve import Sleeve
from tapeline.blocks.standing_collar import StandingCollar
from tapeline.draft import edge, only_if, seam
from tapeline.lengths import Length
from tapeline.pattern import Join, Seam

__all__ = [
    "armhole_band_seams",
    "armhole_facing_joins",
    "armhole_facing_seams",
    "band_seams",
    "body_joins",
    "body_seams",
    "button_band_seams",
    "cuff_seams",
    "hem_band_seams",
    "neck_facing_joins",
    "neck_facing_seams",
    "sleeve_joins",
    "sleeve_seams",
    "standing_collar_seams",
    "zip_joins",
    "zip_seams",
]

NO_EASE = Length(0.0)
BAND_ENDS = (("band_ends", "centre_back"),)
BAND_MITRED = (("band_mitre", "mitre"), ("band_mitre_turned", "mitre_turned"))
"""Seams in which a neckband is sewn to itself, and their edges."""
STRETCHED_ON = "the rib is shorter and stretched on, so that it holds the cloth together"
CAP_EASE = "the cap is eased in between the notches and the crown, so that it curves over the shoulder"


def body_seams() -> tuple[Seam, ...]:
    """Shoulder and side."""
    return (
        seam("shoulder", edge("front", "shoulder"), edge("back", "shoulder")),
        seam("side", edge("front", "side"), edge("back", "side")),
    )


def body_joins(side: SideLines | None = None, corner: str = "") -> tuple[Join, ...]:
    """Lines that run on over the shoulder and the side; at a vent the hem ends, square to it.

    `corner` says why the neckline is meant to bend at the shoulder.
    """
    hem = Join("hem", "side", (("front", "hem", "side"), ("back", "hem", "side")))
    return (
        Join("neckline", "shoulder", (("front", "neckline", "shoulder"), ("back", "neckline", "shoulder")), corner),
        Join("armhole", "shoulder", (("front", "armhole", "shoulder"), ("back", "armhole", "shoulder"))),
        Join("armhole", "side", (("front", "armhole", "side"), ("back", "armhole", "side"))),
        *((hem,) if side is None or side.vent is None else ()),
    )


def sleeve_seams(made: Sleeve) -> tuple[Seam, ...]:
    """Cap to armholes, and the underarm."""
    half = made.cap_ease / 2
    return (
        seam("armhole_front", edge("sleeve", "cap_front"), edge("front", "armhole"), ease=half, reason=CAP_EASE),
        seam("armhole_back", edge("sleeve", "cap_back").backward, edge("back", "armhole"), ease=half, reason=CAP_EASE),
        seam("underarm", edge("sleeve", "underarm_front"), edge("sleeve", "underarm_back").backward),
    )


def sleeve_joins() -> tuple[Join, ...]:
    """Lines that run on over the underarm seam."""
    return (
        Join(
            "cap line", "underarm", (("sleeve", "cap_front", "underarm_front"), ("sleeve", "cap_back", "underarm_back"))
        ),
        Join("sleeve hem", "underarm", (("sleeve", "hem", "underarm_front"), ("sleeve", "hem", "underarm_back"))),
    )


def band_seams(made: Neckband) -> tuple[Seam, ...]:
    """Band, binding or collar to neckline, and to itself."""
    strip = made.piece.name
    return (
        seam(
            "neckline",
            edge(strip, "neckline"),
            edge("back", "neckline"),
            edge("front", "neckline").backward,
            ease=made.ease,
            reason=f"the {made.word} is shorter and stretched on, so that it {made.lies}",
            stretch=made.stretch,
        ),
        seam("band", edge(strip, "neckline_turned"), edge(strip, "neckline").backward),
        *(seam(name, edge(strip, end), edge(strip, end)) for name, end in (BAND_MITRED if made.pointed else BAND_ENDS)),
    )


def neck_facing_seams(made: NeckFacing) -> tuple[Seam, ...]:
    """Facing to neckline, and its shoulders."""
    front, back = made.front.name, made.back.name
    return (
        Seam(
            "neckline",
            (edge(back, "neckline"), edge(front, "neckline").backward),
            (edge("back", "neckline"), edge("front", "neckline").backward),
            NO_EASE,
            stretch=made.stretch,
        ),
        seam("neck_facing_shoulder", edge(front, "shoulder"), edge(back, "shoulder")),
    )


def neck_facing_joins(made: NeckFacing) -> tuple[Join, ...]:
    """The outer edge runs on over the facing's shoulder seam, where the neckline does."""
    corners = tuple((piece.name, "outer", "shoulder") for piece in (made.front, made.back))
    return only_if(made.smooth, Join("facing edge", "neck_facing_shoulder", (corners[0], corners[1])))


def cuff_seams(made: Cuff) -> tuple[Seam, ...]:
    """Cuff to sleeve, and to itself."""
    return (
        seam("cuff", edge("cuff", "hem"), edge("sleeve", "hem"), ease=made.ease, reason=STRETCHED_ON),
        seam("cuff_turned", edge("cuff", "hem_turned"), edge("cuff", "hem").backward),
        seam("cuff_ends", edge("cuff", "front_end"), edge("cuff", "back_end").backward),
    )


def armhole_band_seams(made: ArmholeBand) -> tuple[Seam, ...]:
    """Band or binding to armhole, and to itself."""
    strip = made.piece.name
    return (
        seam(
            "armhole",
            edge(strip, "armhole"),
            edge("front", "armhole").backward,
            edge("back", "armhole"),
            ease=made.ease,
            reason=f"the {strip.split('_')[1]} is shorter and stretched on, so that it lies flat",
        ),
        seam("armhole_band_turned", edge(strip, "armhole_turned"), edge(strip, "armhole").backward),
        seam("armhole_band_ends", edge(strip, "back_end"), edge(strip, "front_end").backward),
    )


def zip_seams() -> tuple[Seam, ...]:
    """The two front edges, which close over the zip."""
    return (seam("centre", edge("front", "centre"), edge("front", "centre")),)


def zip_joins() -> tuple[Join, ...]:
    """Lines that run on over the closed zip."""
    return tuple(Join(line, "centre", (("front", line, "centre"),) * 2) for line in ("neckline", "hem"))


def button_band_seams(made: ButtonBand) -> tuple[Seam, ...]:
    """Band to front, going on over the ends of hem band and collar, and to itself."""
    return (
        seam(
            "button_band",
            edge("button_band", "front"),
            edge("front", "centre").backward,
            ease=made.longer,
            reason="the band goes on over the folded ends of hem band and collar",
        ),
        seam("button_band_turned", edge("button_band", "front_turned").backward, edge("button_band", "front")),
        *(seam(f"button_band_{end}", *(edge("button_band", f"{end}_end"),) * 2) for end in ("lower", "upper")),
    )


def standing_collar_seams(made: StandingCollar) -> tuple[Seam, ...]:
    """Collar to neckline, and to itself; its ends are folded in half and hold the zip."""
    return (
        seam(
            "neckline",
            edge("collar", "neckline"),
            edge("back", "neckline"),
            edge("front", "neckline").backward,
            ease=made.ease,
            reason="the collar is a little shorter and stretched on, so that it stands close to the neck",
        ),
        seam("collar", edge("collar", "neckline_turned"), edge("collar", "neckline").backward),
        seam("collar_end", edge("collar", "front_end"), edge("collar", "front_end")),
    )


def armhole_facing_seams(made: ArmholeFacing) -> tuple[Seam, ...]:
    """Facing to armhole, and to itself over the shoulder and under the arm."""
    front, back = made.front.name, made.back.name
    return (
        Seam(
            "armhole",
            (edge(front, "armhole").backward, edge(back, "armhole")),
            (edge("front", "armhole").backward, edge("back", "armhole")),
            NO_EASE,
        ),
        seam("armhole_facing_shoulder", edge(front, "shoulder"), edge(back, "shoulder")),
        seam("armhole_facing_side", edge(front, "side"), edge(back, "side")),
    )


def armhole_facing_joins(made: ArmholeFacing) -> tuple[Join, ...]:
    """Both its edges run on over both its seams."""
    front, back = made.front.name, made.back.name
    return tuple(
        Join(f"armhole facing's {line}", f"armhole_facing_{seam}", ((front, line, seam), (back, line, seam)))
        for seam in ("shoulder", "side")
        for line in ("armhole", "outer")
    )


def hem_band_seams(made: HemBand) -> tuple[Seam, ...]:
    """Band to hem, and to itself."""
    return (
        seam(
            "hem",
            edge("hem_band", "hem"),
            edge("front", "hem").backward,
            edge("back", "hem"),
            ease=made.ease,
            reason=STRETCHED_ON,
        ),
        seam("hem_band_turned", edge("hem_band", "hem_turned"), edge("hem_band", "hem").backward),
        seam("hem_band_ends", edge("hem_band", made.seamed), edge("hem_band", made.seamed)),
    )

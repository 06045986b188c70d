"""Strips sewn to a neckline, folded in half and stretched a little: neckband, binding, and collar of rib.

A band and a binding both lie flat inside the neckline; a binding folds over the neckline's own allowance, which is as
wide as it is. A collar stands up, so nothing but its stretch says how long it is.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from tapeline.blocks.neck import Neckline
from tapeline.draft import Draft, Drawn, Reading, folded, halfway, notch_along, sewn
from tapeline.draft.place import needs_of
from tapeline.lengths import Length, at_most, cm
from tapeline.pattern import Cut, Edge, Mark, NotchKind, Piece, choice

__all__ = [
    "BAND_SHARES",
    "BINDING_SHARES",
    "COLLAR_SHARES",
    "RIB_COLLARS",
    "BandChoices",
    "BindingChoices",
    "Neckband",
    "RibCollar",
    "neck_binding",
    "neckband",
    "rib_collar",
]

LEAST_BESIDE_MITRE = cm(2)
"""From the mitre to the shoulder, along the folded edge."""

BAND_SHARES = ((0, 1.0), (20, 0.90), (35, 0.87), (50, 0.80), (80, 0.75), (120, 0.67))
"""Stretch of the band's cloth in per cent, and the band's length as a share of the neckline.

Rib two thirds to three quarters, stiff rib or jersey 0.8: trade handbooks, read second hand; self-cloth jersey 0.85 to
0.90 and bindings 0.90 to 0.95: from memory of the same. A cloth that does not stretch cannot be shorter at all.
"""
BINDING_SHARES = ((0, 1.0), (20, 0.95), (50, 0.90))
"""The same of a binding, which is narrow and holds an edge: 0.90 to 0.95, from memory of trade handbooks."""


COLLAR_SHARES = ((0, 1.0), (20, 0.95), (50, 0.90), (80, 0.85), (120, 0.80))
"""The same of a collar of rib, which stands round the neck, where a band's share would be tight: common practice, no
source.
"""


@dataclass(frozen=True, slots=True)
class BandChoices:
    """Width and cloth of the band."""

    width: Length = choice(cm(2), 0.8, 3.5, "finished width of the band")
    stretch: float = choice(80.0, 0, 200, "how much the band's cloth stretches, per cent")
    cloth: str = "rib"


@dataclass(frozen=True, slots=True)
class BindingChoices:
    """Width and cloth of a binding: a strip folded over the edge, most often of the garment's own cloth."""

    width: Length = choice(cm(0.8), 0.5, 2, "finished width of the binding; the edge's allowance is as wide")
    stretch: float = choice(35.0, 0, 200, "how much the binding's cloth stretches, per cent")
    cloth: str = "shell"


@dataclass(frozen=True, slots=True)
class RibCollar:
    """Height and cloth of a collar of rib: a strip as a neckband is, but high (common practice, no source)."""

    height: Length = choice(cm(5), 3, 25, "finished height, folded: 4 to 8 stands, 15 to 22 is rolled down")
    stretch: float = choice(80.0, 20, 200, "how much the rib stretches, per cent")
    cloth: str = "rib"


RIB_COLLARS = {"mock": RibCollar(), "roll": RibCollar(cm(18))}
"""A mock collar stands by itself; a roll collar is so high that it is turned down over itself."""


@dataclass(frozen=True, slots=True)
class Neckband:
    """The strip, how much shorter than the neckline it is, and how far its cloth stretches."""

    piece: Piece
    ease: Length
    stretch: float
    pointed: bool = False
    """Whether it is mitred at the centre front, and not on the fold there."""
    word: str = "band"
    """What it is called."""
    lies: str = "lies flat"
    """How it is worn."""


@dataclass(frozen=True, slots=True)
class _Kind:
    """What a strip is called, and what its length is found from."""

    name: str
    """Of its piece."""
    word: str
    choices: str
    """Of the docket."""
    shares: Sequence[tuple[float, float]]
    flat: bool = True
    """Whether it lies flat inside the neckline."""
    narrow: bool = False
    """Whether its allowances are as wide as it is finished."""


_BAND = _Kind("neckband", "band", "garment.band", BAND_SHARES)
_BINDING = _Kind("neck_binding", "binding", "garment.neckline.binding", BINDING_SHARES, narrow=True)
_COLLAR = _Kind("rib_collar", "collar", "garment.neckline.collar", COLLAR_SHARES, flat=False)


def neckband(d: Draft, c: BandChoices, line: Neckline) -> Neckband:
    """Half a band, on the fold at the centre front, its seam at the centre back."""
    return _strip(d, _BAND, c, line)


def neck_binding(d: Draft, c: BindingChoices, line: Neckline) -> Neckband:
    """Half a binding, the same; its long edges have allowances as wide as it is."""
    return _strip(d, _BINDING, BandChoices(c.width, c.stretch, c.cloth), line)


def rib_collar(d: Draft, c: RibCollar, line: Neckline) -> Neckband:
    """Half a collar, the same; it stands up, so that it may be as long as its stretch allows."""
    return _strip(d, _COLLAR, BandChoices(c.height, c.stretch, c.cloth), line)


def _strip(d: Draft, kind: _Kind, c: BandChoices, line: Neckline) -> Neckband:
    word, width = kind.word, c.width
    d.section(f"The {kind.name.replace('_', ' ')}'s sizes")
    front = d.measured("front_neckline", "Half the front neckline", line.front.reading())
    back = d.measured("back_neckline", "Half the back neckline", line.back.reading())
    neckline = d.measured("neckline", "Half the neckline", front + back)
    share = d.share(c.stretch, kind.shares)
    by_stretch = d.measured(f"{word}_by_stretch", "What a cloth that stretches so needs", neckline * share)
    half_length = by_stretch
    if kind.flat:
        by_shape = d.measured(
            f"{word}_by_shape",
            f"How long the neckline is a {word}'s width further in: a longer {word} would stand away",
            line.front.beside(width) + line.back.beside(width),
        )
        half_length = d.measured(
            f"{word}_half_length", f"Half the {word}: the shorter of the two", at_most(by_stretch, by_shape)
        )
    shoulder = d.measured(
        f"{word}_shoulder", "From the centre front to the shoulder, in proportion", half_length * (front / neckline)
    )

    crossed = raglan_crossings(d, word, line.body, half_length, neckline) if line.body else ()

    s = d.sheet(kind.name)
    s.section(f"The {kind.name.replace('_', ' ')}")
    fold = s.point("centre_front", "The centre front, on the fold of the cloth", s.origin)
    back_end = s.point("centre_back", "The seam at the centre back", fold.out(half_length))
    fold_top = s.point("centre_front_top", f"Twice the finished width: the {word} is folded", fold.up(width * 2))
    back_top = s.point("centre_back_top", "Level with it at the centre back", back_end.up(width * 2))
    middle, middle_back = (
        s.point("band_fold", f"The {word} is folded here", halfway(fold, fold_top)),
        s.point("band_fold_back", f"The {word} is folded here", halfway(back_end, back_top)),
    )
    crease_start = middle
    if line.pointed:
        mitre = d.measured(
            "mitre_depth", f"How much shorter the {word} is at its folded edge", mitre_depth(line, width)
        )
        d.require(
            "band-too-wide-for-v",
            shoulder,
            mitre + LEAST_BESIDE_MITRE,
            says=f"the {word} is so wide that its mitre takes up the whole of the v",
            where=f"{kind.choices}.width",
            hint=f"make {kind.choices}.width smaller, or widen the v with garment.neckline.widen",
        )
        crease_start = s.point("mitre_end", "Where the mitre's seam meets the fold", middle.out(mitre))
    crease = s.straight("crease", "Folded in half along this line", crease_start, middle_back)
    allowance = width if kind.narrow else None
    dart = width / 2 if kind.narrow else None
    front_end: tuple[Edge, ...]
    if line.pointed:
        front_end = (
            sewn("mitre", s.straight("mitre", "Sewn to its mirror image, over the point", fold, crease_start), dart),
            sewn(
                "mitre_turned", s.straight("mitre_turned", "The same on the other half", crease_start, fold_top), dart
            ),
        )
    else:
        front_end = (folded("centre_front", s.straight("centre_front_fold", "On the fold", fold, fold_top)),)
    turned = s.straight("neckline_turned", "Folded over onto the other long edge", fold_top, back_top)
    if line.pointed:
        centre_back = folded("centre_back", s.straight("centre_back_fold", "On the fold", back_top, back_end))
    else:
        centre_back = sewn("centre_back", s.straight("centre_back_seam", "Sewn to its other half", back_top, back_end))
    piece = s.piece(
        kind.name.replace("_", " ").capitalize(),
        *front_end,
        sewn("neckline_turned", turned, allowance),
        centre_back,
        sewn("neckline", s.straight("neckline", "Sewn to the neckline", back_end, fold), allowance),
        grain=(crease_start.up(width / 2), crease_start.down(width / 2)),
        cut=Cut(1, c.cloth),
        notches=(
            notch_along("neckline", half_length - shoulder, NotchKind.SINGLE),
            notch_along("neckline_turned", shoulder, NotchKind.SINGLE),
            *(notch_along("neckline", half_length - at, NotchKind.SINGLE) for at in crossed),
            *(notch_along("neckline_turned", at, NotchKind.SINGLE) for at in crossed),
        ),
        marks=(Mark("crease", crease.path),),
    )
    return Neckband(
        piece, half_length - neckline, c.stretch, line.pointed, word, "lies flat" if kind.flat else "stands close"
    )


def raglan_crossings(
    d: Draft, word: str, body: tuple[Drawn, Drawn], strip: Length, neckline: Length
) -> tuple[Length, Length]:
    """Where raglan seams meet a strip, from the centre front: `body` is what front and back have of the neckline."""
    front = d.measured("front_body_neckline", "What the front has of the neckline, up to its raglan", body[0].reading())
    back = d.measured("back_body_neckline", "What the back has of the neckline, up to its raglan", body[1].reading())
    share = strip / neckline
    return (
        d.measured(f"{word}_raglan_front", "From the centre front to the front raglan, in proportion", front * share),
        d.measured(
            f"{word}_raglan_back", "From the centre front to the back raglan, in proportion", strip - back * share
        ),
    )


def mitre_depth(line: Neckline, width: Length) -> Reading:
    """How far back the mitre's seam goes along the band: its width over the slope of the v at its point."""
    way = line.front.path.leaves
    return Reading(
        Length(width.mm * way.y / way.x),
        (
            f"measured at the point of the {line.front.full_name}: along the v, to below where a line ",
            width,
            " inside it meets the centre",
        ),
        (line.front.label, *needs_of(width)),
    )

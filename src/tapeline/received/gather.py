"""Shapes of a block, or of a whole sheet, gathered to pieces by the layer convention."""

from __future__ import annotations

import re
from collections import defaultdict
from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from tapeline.geometry import Line, Path, Point, crosses_itself
from tapeline.geometry.among import distances, holders, inside_another
from tapeline.received import layers
from tapeline.received.doubts import Doubts
from tapeline.received.outlines import closed_chains
from tapeline.received.pairs import refused
from tapeline.received.piece import ReceivedNotch, ReceivedPiece
from tapeline.received.shape import (
    Chain,
    Left,
    Place,
    Shape,
    Spot,
    Words,
    kind_of,
    line_of,
    middle_of,
    path_of,
    points_of,
)
from tapeline.received.words import TURNED_OVER, label_of

__all__ = ["Gatherer"]

NEAR_MM = 1.0
"""Things this far outside an outline are still taken as the piece's, where several lie on one sheet."""
MOST_PIECES = 2_000
"""On one sheet or in one block."""
ON_EDGE_MM = 0.5
NOTCH_MM = 2.0
_QUANTITY = re.compile(r"0*([1-9]\d{0,3})")
_LABELLED = re.compile(r"([A-Za-z][A-Za-z ]{1,30}):")


@dataclass(frozen=True, slots=True)
class Gatherer:
    """Makes pieces of shapes; what it doubts and what it leaves out goes to the file's own lists."""

    name: str
    outline: str
    """The layer of the cut line."""
    left: Left
    doubts: Doubts
    sample_size: str
    """What the file says of pieces that say no size themselves."""

    def pieces(self, shapes: Iterable[Shape], place: str) -> list[ReceivedPiece]:
        """The pieces of a block or a sheet, in order."""
        rest: list[Shape] = []
        on_layer: list[Chain] = []
        for shape in shapes:
            if isinstance(shape, Chain) and shape.layer == self.outline:
                on_layer.append(shape)
            else:
                rest.append(shape)
        closed, gaps = closed_chains(on_layer)
        for gap in gaps:
            self.doubts.about("received-open", f"{place} is {gap}")
        if len(closed) > MOST_PIECES:
            says = f"{place} holds {len(closed)} outlines, {MOST_PIECES} are read"
            raise refused("received-too-large", says, self.name, "have fewer pieces or sizes written into one file")
        outlines = self._apart(closed)
        if not outlines:
            for shape in rest:
                self.left.out(kind_of(shape), shape.layer, "it belongs to no outline", shape.where)
            return []
        shares: list[list[Shape]] = [[] for _ in outlines]
        if len(outlines) == 1:
            shares[0] = rest
        else:
            whose = holders([points_of(o.places) for o in outlines], [middle_of(shape) for shape in rest], NEAR_MM)
            for shape, number in zip(rest, whose, strict=True):
                if number is None:
                    self.left.out(kind_of(shape), shape.layer, "it lies outside every outline", shape.where)
                else:
                    shares[number].append(shape)
        several = len(outlines) > 1
        return [
            self._piece(outline, share, f"{place} {number}" if several else place)
            for number, (outline, share) in enumerate(zip(outlines, shares, strict=True), 1)
        ]

    def _apart(self, closed: Sequence[Chain]) -> list[Chain]:
        """Outlines that are not drawn twice and do not lie in one another."""
        once: dict[frozenset[Place], Chain] = {}
        for chain in closed:
            key = frozenset((round(x, 3), round(y, 3)) for x, y in chain.places)
            if key in once:
                self.left.out("closed line", chain.layer, "the same outline is drawn already", chain.where)
            else:
                once[key] = chain
        chains = list(once.values())
        apart = []
        for chain, inner in zip(chains, inside_another([points_of(c.places) for c in chains]), strict=True):
            if inner:
                self.left.out("closed line", chain.layer, "it lies inside an outline", chain.where)
            else:
                apart.append(chain)
        return apart

    def _piece(self, outline: Chain, shapes: Sequence[Shape], place: str) -> ReceivedPiece:
        path = path_of(outline)
        of: dict[str, list[Shape]] = defaultdict(list)
        for shape in shapes:
            of[shape.layer].append(shape)
        said, texts = self._words([shape for shape in shapes if isinstance(shape, Words)])
        name = said.get("piece name", "")
        size = said.get("size", "") or self.sample_size
        label = f"{name or place}{f', size {size}' if size else ''}"
        for code, missing in (("received-name", not name), ("received-size", not size)):
            if missing:
                self.doubts.about(code, label)
        if crosses_itself(path):
            self.doubts.about("received-crosses", label)
        amount = _QUANTITY.fullmatch(said.get("quantity", "").strip())
        if amount is None:
            asked = said.get("quantity")
            self.doubts.about("received-quantity", label if asked is None else f"{label} says {asked!r}")
        sewn = [path_of(chain) for chain in self._chains(of.pop(layers.SEW, []))]
        piece = ReceivedPiece(
            name or place.removeprefix("block "),
            size,
            place.removeprefix("block "),
            path,
            quantity=int(amount[1]) if amount else 1,
            mirrored=any(TURNED_OVER in text for text in texts),
            material=said.get("material", ""),
            sew_lines=tuple(sewn),
            grain=self._straight(of.pop(layers.GRAIN, []), "a second line beside the grain line"),
            fold=self._fold(of.pop(layers.FOLD, []), outline, label),
            notches=self._notches(of, outline, sewn, label),
            corners=self._spots(of.pop(layers.CORNER, [])),
            inside=tuple(path_of(chain) for chain in self._chains(of.pop(layers.INSIDE, []))),
            cutouts=tuple(path_of(chain) for chain in self._closed(of.pop(layers.CUTOUT, []))),
            drills=self._spots(of.pop(layers.DRILL, [])),
            stripes=tuple(path_of(chain) for chain in self._chains(of.pop(layers.STRIPE, []))),
            checks=tuple(path_of(chain) for chain in self._chains(of.pop(layers.CHECK, []))),
            texts=tuple(dict.fromkeys(texts)),
        )
        self._spots(of.pop(layers.CURVE, []))
        self._rest(of)
        if piece.grain is None:
            self.doubts.about("received-grain", label)
        return piece

    def _rest(self, of: dict[str, list[Shape]]) -> None:
        """What lies on other layers, but for words."""
        for layer, shapes in of.items():
            for shape in shapes:
                if not isinstance(shape, Words):
                    why = layers.ASIDE.get(layer, "not a layer of the convention, or nothing that belongs on it")
                    self.left.out(kind_of(shape), layer, why, shape.where)

    def _words(self, words: Sequence[Words]) -> tuple[dict[str, str], list[str]]:
        """What labels say, and all other text."""
        said: dict[str, str] = {}
        texts = []
        for word in words:
            label = label_of(word.text)
            if label is None or label[0] == "annotation":
                if word.layer in (layers.CORNER, layers.CURVE) or word.text.startswith("#"):
                    self.left.out("grade rule number", word.layer, "pieces are not graded", word.where)
                    continue
                unknown = _LABELLED.match(word.text) if word.layer == self.outline and label is None else None
                if unknown:
                    why = f"the label {unknown[1]} is not one of the convention's that are read"
                    self.left.out("text", word.layer, why, word.where)
                texts.append(label[1] if label else word.text)
            elif said.setdefault(*label) != label[1]:
                self.left.out("text", word.layer, f"a second {label[0]} on one piece", word.where)
        return said, texts

    def _chains(self, shapes: Sequence[Shape]) -> list[Chain]:
        for shape in shapes:
            if isinstance(shape, Spot):
                self.left.out("point", shape.layer, "a line belongs on this layer", shape.where)
        return [shape for shape in shapes if isinstance(shape, Chain)]

    def _closed(self, shapes: Sequence[Shape]) -> list[Chain]:
        closed, gaps = closed_chains(self._chains(shapes))
        for gap in gaps:
            self.left.out("line", layers.CUTOUT, "a cut-out that is not closed", gap.where)
        return closed

    def _spots(self, shapes: Sequence[Shape]) -> tuple[Point, ...]:
        spots = []
        for shape in shapes:
            middle = shape.at if isinstance(shape, Spot) else shape.middle if isinstance(shape, Chain) else None
            if middle is not None:
                spots.append(Point(*middle))
            elif isinstance(shape, Chain):
                self.left.out("line", shape.layer, "a point belongs on this layer", shape.where)
        return tuple(spots)

    def _straight(self, shapes: Sequence[Shape], second: str) -> Line | None:
        """The longest straight line of a layer."""
        lines = []
        for chain in self._chains(shapes):
            line = line_of(chain)
            if line is None:
                self.left.out("line", chain.layer, "it is not straight", chain.where)
            else:
                lines.append((line, chain))
        lines.sort(key=lambda one: -one[0].length)
        for _, chain in lines[1:]:
            self.left.out("line", chain.layer, second, chain.where)
        return lines[0][0] if lines else None

    def _fold(self, shapes: Sequence[Shape], outline: Chain, label: str) -> Line | None:
        fold = self._straight(shapes, "a second mirror line")
        if fold is None:
            return None
        if max(distances(points_of(outline.places), [fold.start, fold.at(0.5), fold.end], closed=True)) > ON_EDGE_MM:
            self.doubts.about("received-fold", label)
            return None
        return fold

    def _notches(
        self, of: dict[str, list[Shape]], outline: Chain, sewn: Sequence[Path], label: str
    ) -> tuple[ReceivedNotch, ...]:
        found = []
        edge = points_of(outline.places)
        for layer, kind in layers.NOTCHES.items():
            for shape in of.pop(layer, []):
                if isinstance(shape, Spot):
                    found.append(ReceivedNotch(Point(*shape.at), kind))
                elif isinstance(shape, Chain):  # drawn as a tick: it stands where it is nearest to the outline
                    ends = points_of((shape.places[0], shape.places[-1]))
                    far = distances(edge, ends, closed=True)
                    found.append(ReceivedNotch(ends[far.index(min(far))], kind))
        places = [notch.at for notch in found]
        away = distances(edge, places, closed=True)
        for path in sewn:
            away = [min(pair) for pair in zip(away, distances(path.knots, places), strict=True)]
        lost = sum(far > NOTCH_MM for far in away)
        if lost:
            self.doubts.about("received-notch", f"{label} ({lost} of {len(away)})")
        return tuple(found)

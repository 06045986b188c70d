"""Reads the pieces of an exchange file: DXF by the layer convention, whoever wrote it, R12 to current.

Tolerant in reading: layers with or without noughts before them, outlines in several lines, curves of any kind, blocks
in one another or no blocks at all. Strict in telling: every thing that is left out is counted and named.
"""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from tapeline.problems import InputError, Problem, Severity
from tapeline.received import layers
from tapeline.received.doubts import Doubts
from tapeline.received.gather import Gatherer
from tapeline.received.pairs import LARGEST_BYTES, refused
from tapeline.received.piece import NotUnderstood, Received, ReceivedPiece
from tapeline.received.reader import Reader
from tapeline.received.scale import scale_of
from tapeline.received.shape import Shape, Words
from tapeline.received.things import Block, Drawn, Thing, read_things
from tapeline.received.words import encoding_of, label_of
from tapeline.units import Unit

__all__ = ["receive", "received"]

LINES = ("POLYLINE", "LWPOLYLINE", "LINE", "ARC", "CIRCLE", "ELLIPSE", "SPLINE")
FILE_LABELS = (
    "units",
    "sample size",
    "style name",
    "author",
    "creation date",
    "creation time",
    "grading rule table",
)
"""Labels that speak of the whole file."""
NEWEST = b"AC1032"
"""The version that a file of the current release says (from memory)."""
SHOWN = 6


def receive(path: Path, *, unit: Unit | None = None, outline: str = layers.OUTLINE) -> Received:
    """The pieces of a file; see `received`.

    Raises:
        InputError: `received-no-file` when it cannot be opened, and what `received` raises.
    """
    name = str(path)
    try:
        if not path.is_file():
            raise refused("received-no-file", f"there is no file {name}", name, "look at its name and folder")
        if path.stat().st_size > LARGEST_BYTES:
            says = f"the file has {path.stat().st_size / 1e6:.0f} MB, {LARGEST_BYTES / 1e6:.0f} MB are read"
            raise refused("received-too-large", says, name, "have fewer pieces or sizes written into one file")
        data = path.read_bytes()
    except (OSError, ValueError) as error:
        if isinstance(error, InputError):
            raise
        reason = getattr(error, "strerror", None) or str(error)
        raise refused("received-no-file", f"cannot read it: {reason.lower()}", name, "look at its rights") from error
    return received(data, name, unit=unit, outline=outline)


def received(data: bytes, name: str, *, unit: Unit | None = None, outline: str = layers.OUTLINE) -> Received:
    """The pieces of a file that was read already.

    Args:
        data: The whole file.
        name: What it is called in problems.
        unit: Centimetre for a file in millimetres, inch for one in inches; None for what the file says.
        outline: The layer of the cut lines, where a file does not keep to the convention.

    Raises:
        InputError: `received-empty`, `received-too-large`, `received-not-dxf`, `received-broken` for a file that is
            not read at all, `received-no-pieces` for one without a closed outline.
    """
    drawn = read_things(data, name)
    version, page = _header(drawn, b"$ACADVER"), _header(drawn, b"$DWGCODEPAGE")
    blocks: dict[bytes, Block] = {}
    for block in drawn.blocks:
        blocks.setdefault(block.name.upper(), block)
    reader = Reader(name, 1.0, encoding_of(version, page), blocks)
    about = _about(drawn, reader)
    scale = scale_of(drawn.header, about.get("units", ""), unit)
    reader.scale = scale.mm
    reader.apart = _apart(drawn.blocks, reader, outline)
    gatherer = Gatherer(name, outline, reader.left, Doubts(), about.get("sample size", ""))
    pieces: list[ReceivedPiece] = []
    seen: set[bytes] = set()
    for block in drawn.blocks:
        if block.name.upper() not in reader.apart:
            continue
        place = f"block {reader.layer(block.name)}"
        if block.name.upper() in seen:
            reader.left.out("block", "0", "a second block of the same name", place)
            continue
        seen.add(block.name.upper())
        pieces += gatherer.pieces(reader.shapes(block.things, place), place)
    loose = [shape for shape in reader.shapes(drawn.loose, "the sheet") if not _of_the_file(shape)]
    pieces += gatherer.pieces(loose, "sheet")
    if not pieces:
        raise _no_pieces(drawn, version, reader, gatherer, name)
    _twice(pieces, gatherer.doubts)
    problems = [*_of_file(drawn, version, reader, name), *scale.problems(name, pieces), *gatherer.doubts.told(name)]
    told = reader.left.told()
    problems += _left_out(told, name)
    problems.sort(key=lambda problem: problem.severity.rank)
    style, author = about.get("style name", ""), about.get("author", "")
    return Received(name, tuple(pieces), scale.unit, style, author, told, tuple(problems))


def _header(drawn: Drawn, name: bytes) -> bytes:
    return drawn.header[name].value.strip() if name in drawn.header else b""


def _about(drawn: Drawn, reader: Reader) -> dict[str, str]:
    """What labels outside the pieces say of the whole file; a unit may stand on a piece too."""
    said: dict[str, str] = {}
    inner = (thing for block in drawn.blocks for thing in block.things)
    for thing, loose in [*((thing, True) for thing in drawn.loose), *((thing, False) for thing in inner)]:
        if thing.kind not in ("TEXT", "MTEXT", "ATTRIB"):
            continue
        for line in reader.text(thing).split("\n"):
            label = label_of(line)
            if label and (loose or label[0] in FILE_LABELS):
                said.setdefault(*label)
    reader.unsure_letters = 0
    return said


def _of_the_file(shape: Shape) -> bool:
    """A label that speaks of the whole file."""
    label = label_of(shape.text) if isinstance(shape, Words) else None
    return label is not None and label[0] in FILE_LABELS


def _apart(blocks: Sequence[Block], reader: Reader, outline: str) -> frozenset[bytes]:
    """Blocks that are pieces: with an outline of their own, and not a part of another such block."""

    def draws(thing: Thing) -> bool:
        return thing.kind in LINES and reader.layer(thing.layer) == outline

    own = {block.name.upper() for block in blocks if any(draws(thing) for thing in block.things)}
    parts = {
        (thing.first(2) or b"").strip().upper()
        for block in blocks
        if block.name.upper() in own
        for thing in block.things
        if thing.kind == "INSERT"
    }
    reader.unsure_letters = 0
    return frozenset(own - parts)


def _left_out(told: Sequence[NotUnderstood], name: str) -> list[Problem]:
    if not told:
        return []
    total = sum(one.count for one in told)
    more = f"; and {len(told) - SHOWN} other kinds" if len(told) > SHOWN else ""
    says = f"{total} things of the file were left out: {'; '.join(map(str, told[:SHOWN]))}{more}"
    hint = "look at the picture whether something of the piece is missing."
    return [Problem("received-not-understood", Severity.DOUBT, says, name, hint)]


def _no_pieces(drawn: Drawn, version: bytes, reader: Reader, gatherer: Gatherer, name: str) -> InputError:
    used: dict[str, int] = {}
    for thing in [*drawn.loose, *(thing for block in drawn.blocks for thing in block.things)]:
        if thing.kind in LINES:
            layer = reader.layer(thing.layer)
            used[layer] = used.get(layer, 0) + 1
    most = sorted(used, key=lambda layer: -used[layer])[:8]
    says = f"the file has no closed line on layer {gatherer.outline}, and so no pieces"
    lies = f"its lines lie on {', '.join(most)}; " if most else "it has no lines at all; "
    hint = f"{lies}where the cut lines lie on another layer, name it with --outline. Nothing was read."
    if set(most) == {gatherer.outline}:
        hint = f"{lies}have them drawn as closed lines in the program that wrote it. Nothing was read."
    # What was left out may be the very outlines: without it nobody knows why there are none.
    why = [*gatherer.doubts.told(name), *_of_file(drawn, version, reader, name), *_left_out(reader.left.told(), name)]
    return InputError([*why, Problem("received-no-pieces", Severity.ERROR, says, name, hint)])


def _twice(pieces: Sequence[ReceivedPiece], doubts: Doubts) -> None:
    seen: set[tuple[str, str]] = set()
    for piece in pieces:
        if (piece.name, piece.size) in seen:
            doubts.about("received-twice", piece.label)
        seen.add((piece.name, piece.size))


def _of_file(drawn: Drawn, version: bytes, reader: Reader, name: str) -> list[Problem]:
    """What is wrong with the file as a whole."""
    found = []
    if not drawn.whole:
        says = "the file breaks off before its end: pieces may be missing"
        found.append(Problem("received-broken-off", Severity.ERROR, says, name, "have it sent or written again."))
    if version > NEWEST or (version and not version.startswith(b"AC")):
        shown = version[:16].decode("ascii", "replace")
        says = f"the file says version {shown}, which is not known; it is read like the newest that is"
        found.append(Problem("received-version", Severity.DOUBT, says, name, "have it saved as R12, if in doubt."))
    if reader.distorted:
        which = ", ".join(reader.layer(block) for block in list(reader.distorted)[:SHOWN])
        says = f"{len(reader.distorted)} pieces are put down scaled or turned over, and are taken as drawn: {which}"
        found.append(Problem("received-scaled", Severity.DOUBT, says, name, "measure one of them."))
    if reader.unsure_letters:
        says = f"{reader.unsure_letters} texts hold letters that cannot be read in the encoding of the file"
        found.append(Problem("received-letters", Severity.NOTE, says, name, "they are shown as ? or as the nearest."))
    return found

"""`tapeline read`: pieces from another program, and what of their file was not understood."""

from __future__ import annotations

import json
from pathlib import Path
from typing import TYPE_CHECKING

import click

from tapeline.cli.commands import command
from tapeline.cli.options import as_json, force
from tapeline.cli.show import columns, heading, paragraph, say, show_problems

if TYPE_CHECKING:
    from tapeline.received import Received, ReceivedPiece

__all__ = ["COMMAND"]


@command(
    example="tapeline read theirs.dxf\ntapeline read theirs.dxf --picture theirs.svg\n"
    "tapeline read drawing.dxf --unit inch --outline CUT"
)
@click.argument("file", type=click.Path(path_type=Path, readable=False))
@click.option("--unit", type=click.Choice(["mm", "inch"]), help="What its numbers count.  [what the file says]")
@click.option("--outline", default="1", help="The layer of the cut lines.  [1, by the convention]")
@click.option("--picture", type=click.Path(path_type=Path), help="Draw the pieces as SVG into this file.")
@as_json
@force
def read(file: Path, unit: str | None, outline: str, picture: Path | None, *, as_json: bool, force: bool) -> int:
    """Read the pieces of another program's DXF.

    Understands the layers of ASTM D6673, in any release of the format that is written as text. Whatever it does not
    understand is counted and named: look at the picture before cloth is cut.
    """
    from tapeline.cli.output import may_write
    from tapeline.export import write_whole
    from tapeline.project import read_pieces, received_data, received_drawing

    found = read_pieces(file, unit or "", outline)
    if picture is not None:
        may_write(picture, file, force=force)
        write_whole(picture, received_drawing(found).encode())
    if as_json:
        say(json.dumps(received_data(found), indent=2, ensure_ascii=False))
    else:
        _show(found, picture)
    show_problems(found.problems)
    return 0 if found.holds else 1


def _show(found: Received, picture: Path | None) -> None:
    sizes = found.sizes
    in_sizes = f" in {len(sizes)} {'size' if len(sizes) == 1 else 'sizes'}: {', '.join(sizes[:12])}" if sizes else ""
    more = ", ..." if len(sizes) > 12 else ""
    say(f"{found.name}: {_count(len(found.pieces), 'piece')}{in_sizes}{more}.")
    if found.style or found.author:
        say(" ".join(part for part in (f"Style {found.style}." if found.style else "", _by(found.author)) if part))
    heading("Pieces")
    head = ("piece", "size", "cut", "cloth", "width", "height", "cm2", "with")
    columns([_row(piece) for piece in found.pieces], head, "llllrrrl")
    if found.not_understood:
        heading("Left out")
        for one in found.not_understood:
            paragraph(str(one), "  ", "    ")
    if picture is not None:
        say()
        say(f"Picture: {picture}")


def _row(piece: ReceivedPiece) -> tuple[str, ...]:
    wide, high = piece.size_mm
    parts = [
        _count(len(piece.notches), "notch") if piece.notches else "",
        "grain" if piece.grain else "no grain",
        "fold" if piece.fold else "",
        _count(len(piece.sew_lines), "sew line") if piece.sew_lines else "",
        _count(len(piece.inside), "line") + " inside" if piece.inside else "",
        _count(len(piece.cutouts), "cut-out") if piece.cutouts else "",
        _count(len(piece.drills), "hole") if piece.drills else "",
    ]
    return (
        piece.name,
        piece.size,
        f"{piece.quantity}{' in pairs' if piece.mirrored else ''}",
        piece.material,
        f"{wide / 10:.1f}",
        f"{high / 10:.1f}",
        f"{piece.area_mm2 / 100:.0f}",
        ", ".join(part for part in parts if part),
    )


def _by(author: str) -> str:
    return f"Written by {author}." if author else ""


def _count(count: int, word: str) -> str:
    many = f"{word}es" if word.endswith("ch") else f"{word}s"
    return f"{count} {word if count == 1 else many}"


COMMAND = read

"""Pictures of the page, made by a command."""

from __future__ import annotations

import re
import struct
import subprocess
import sys
import zlib
from pathlib import Path

import pytest

from tests.cli.process import ROOT

SCRIPT = ROOT / "scripts" / "pictures.py"
PAPER = {"light": (0xFB, 0xFA, 0xF7), "dark": (0x19, 0x1A, 0x1B)}
"""`--paper` in page.css, which is what the upper left corner of the page shows."""


def _size_and_corner(png: bytes) -> tuple[tuple[int, int], tuple[int, ...]]:
    """Read by the standard's own words (PNG, third edition): the first pixel is stored as it is by every filter."""
    assert png.startswith(b"\x89PNG\r\n\x1a\n")
    width, height, depth, colour = struct.unpack(">IIBB", png[16:26])
    assert depth == 8
    chunks, at = {b"IDAT": b"", b"PLTE": b""}, 8
    while at < len(png):
        (length,) = struct.unpack(">I", png[at : at + 4])
        kind = png[at + 4 : at + 8]
        if kind in chunks:
            chunks[kind] += png[at + 8 : at + 8 + length]
        at += 12 + length
    first = zlib.decompress(chunks[b"IDAT"])[1:4]
    # Type 3 is a place in the palette, types 2 and 6 are red, green and blue.
    return (width, height), tuple(chunks[b"PLTE"][3 * first[0] :][:3] if colour == 3 else first)


@pytest.mark.slow
def test_the_command_makes_a_picture(tmp_path: Path) -> None:
    """One place on the phone, in light and in dark: the two files are named, have its size, and their paper."""
    words = [str(tmp_path / "seen"), "--place", "measure", "--size", "phone"]
    done = subprocess.run([sys.executable, SCRIPT, *words], capture_output=True, text=True, check=False, timeout=120)
    assert done.returncode == 0, done.stderr
    made = [Path(line) for line in done.stdout.splitlines()]
    assert sorted(made) == sorted((tmp_path / "seen").iterdir())
    assert [path.name for path in made] == ["measure-phone-light.png", "measure-phone-dark.png"]
    for path, light in zip(made, PAPER, strict=True):
        assert _size_and_corner(path.read_bytes()) == ((390, 800), PAPER[light])


def test_the_readme_shows_two() -> None:
    """The README shows Measure in light and Draft in dark at laptop size; each is whole, and under 150 kB."""
    shown = re.findall(r"\(docs/images/((?:measure|draft)-.*?\.png)\)", (ROOT / "README.md").read_text("utf-8"))
    assert shown == ["measure-laptop-light.png", "draft-laptop-dark.png"]
    for name, light in zip(shown, PAPER, strict=True):
        png = (ROOT / "docs" / "images" / name).read_bytes()
        assert len(png) < 150_000
        size, corner = _size_and_corner(png)
        assert size == (1280, 800)
        # With fewer colours each is a shade off.
        assert corner == pytest.approx(PAPER[light], abs=4)

"""Two readers of a print, neither of them the writer: poppler's pdftoppm and pdfium."""

from __future__ import annotations

import subprocess
from typing import Any

import numpy as np

DPI = 254
"""10 pixels are 1 mm."""
PX = 10

READERS = ("poppler", "pdfium")


def picture(reader: str, data: bytes, page: int, box_mm: tuple[float, float, float, float] | None = None) -> Any:
    """A page (from 1) as grey pixels, first row on top; of a box from the upper left corner: x, y, width, height."""
    return _poppler(data, page, box_mm) if reader == "poppler" else _pdfium(data, page, box_mm)


def _poppler(data: bytes, page: int, box_mm: tuple[float, float, float, float] | None) -> Any:
    command = ["pdftoppm", "-r", str(DPI), "-gray", "-f", str(page), "-l", str(page)]
    if box_mm is not None:
        for flag, value in zip("xyWH", box_mm, strict=True):
            command += [f"-{flag}", str(round(value * PX))]
    done = subprocess.run([*command, "-"], input=data, capture_output=True, check=True)
    head = done.stdout.split(b"\n", 3)
    magic, (width, height), most, pixels = head[0], head[1].split(), head[2], head[3]
    assert magic == b"P5"
    assert most == b"255"
    return np.frombuffer(pixels, dtype=np.uint8).reshape(int(height), int(width))


def _pdfium(data: bytes, page: int, box_mm: tuple[float, float, float, float] | None) -> Any:
    import pypdfium2

    file = pypdfium2.PdfDocument(data)
    sheet = file[page - 1]
    unit = 72 / 25.4
    width, height = sheet.get_size()
    crop = (0.0, 0.0, 0.0, 0.0)
    if box_mm is not None:
        x, y, w, h = (v * unit for v in box_mm)
        crop = (x, height - y - h, width - x - w, y)
    pixels = sheet.render(scale=DPI / 72, grayscale=True, crop=crop).to_numpy()
    file.close()
    return pixels.reshape(pixels.shape[0], pixels.shape[1])


def lines_across(pixels: Any, axis: int) -> list[float]:
    """Middles of the dark lines met on the way across a picture, in mm: along rows (axis 0) or columns (axis 1)."""
    darkness = (255.0 - pixels.astype(float)).mean(axis=axis) / 255
    dark = np.flatnonzero(darkness > 0.05)
    runs = [run for run in np.split(dark, np.flatnonzero(np.diff(dark) > 1) + 1) if len(run)]
    return [float(((run + 0.5) * darkness[run]).sum() / darkness[run].sum()) / PX for run in runs]

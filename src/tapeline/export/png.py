"""PNG: a picture of small dots, written with the standard library alone."""

from __future__ import annotations

import struct
import zlib

import numpy as np
from numpy.typing import NDArray

__all__ = ["png"]

_DOTS_PER_METRE = 5669
"""144 dots to the inch: what a screen of today shows at its own size."""


def png(dots: NDArray[np.uint8]) -> bytes:
    r"""A picture as a PNG file, after ISO/IEC 15948.

    Args:
        dots: Rows from the top, columns from the left, then red, green and blue from 0 to 255.

    >>> png(np.zeros((2, 3, 3), np.uint8))[:8]
    b'\x89PNG\r\n\x1a\n'
    """
    height, width, _ = dots.shape
    rows = np.zeros((height, 1 + width * 3), np.uint8)  # each row begins with its filter: 0 is none
    rows[:, 1:] = dots.reshape(height, -1)

    def chunk(kind: bytes, data: bytes) -> bytes:
        return struct.pack(">I", len(data)) + kind + data + struct.pack(">I", zlib.crc32(kind + data))

    head = struct.pack(">IIBBBBB", width, height, 8, 2, 0, 0, 0)
    return (
        b"\x89PNG\r\n\x1a\n"
        + chunk(b"IHDR", head)
        + chunk(b"pHYs", struct.pack(">IIB", _DOTS_PER_METRE, _DOTS_PER_METRE, 1))
        + chunk(b"IDAT", zlib.compress(rows.tobytes(), 9))
        + chunk(b"IEND", b"")
    )

"""Loops over nodes and triangles, made into machine code when first called and kept for the next time."""

from __future__ import annotations

import os
from collections.abc import Callable
from typing import Any, TypeVar, cast

import numpy as np
from numpy.typing import NDArray

__all__ = ["Array", "Flags", "Whole", "compiled"]

Array = NDArray[np.float64]
Whole = NDArray[np.int64]
Flags = NDArray[np.bool_]

Loop = TypeVar("Loop", bound=Callable[..., Any])

# Threads that wait by spinning stand in each other's way on a busy machine.
os.environ.setdefault("OMP_WAIT_POLICY", "passive")


def compiled(loop: Loop) -> Loop:
    """The same function as machine code: one thread, sums in the order written, so that equal input gives equal bits.

    What is compiled is kept in a file beside the source or, where that cannot be written, in the user's own cache;
    `NUMBA_CACHE_DIR` names another place. A loop must call compiled functions of its own file only: the cache looks at
    no other file to know whether it is out of date.
    """
    import numba

    return cast("Loop", numba.njit(cache=True)(loop))

"""Getting the solver ready: its loops become machine code once, and are taken up from a file afterwards."""

from __future__ import annotations

import time

import numpy as np

from tapeline.drape.balance import Balance
from tapeline.drape.band import distance_to
from tapeline.drape.cloth import HANDS
from tapeline.drape.fabric import fabric

__all__ = ["ready"]


def ready() -> float:
    """Runs each loop once on four triangles; the seconds that took, most of them making machine code if it is new."""
    began = time.perf_counter()
    flat = np.array([[0, 0], [10, 0], [10, 10], [0, 10], [5, 5]], float)
    cloth = fabric(flat, np.array([[0, 1, 4], [1, 2, 4], [2, 3, 4], [3, 0, 4]]), HANDS["single jersey"])
    corners = np.array([[0, 0, 0], [20, 0, 0], [0, 20, 0], [0, 0, 20]], float)
    form = distance_to(corners, np.array([[0, 2, 1], [0, 1, 3], [1, 2, 3], [2, 0, 3]]), step=20.0)
    balance = Balance(cloth, np.column_stack([flat, flat[:, 0]]), form)
    balance.step(1.0)
    return time.perf_counter() - began

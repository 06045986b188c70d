"""Order lists of random wearers, as the survey met them: invented people, the same in every run."""

from __future__ import annotations

import csv
from pathlib import Path

from tapeline.measures import TAPES, Figure, required_tapes, survey_of

__all__ = ["write_orders"]

SEED = 1


def write_orders(path: Path, rows: int) -> None:
    """Writes a list of so many tees for women, tapes in mm to a tenth."""
    women = survey_of(Figure.WOMAN)
    if women is None:
        raise RuntimeError("there is no survey of women")
    names = [tape.name for tape in required_tapes(Figure.WOMAN)]
    believed = [
        tapes
        for tapes in women.draw(SEED, rows + rows // 10 + 10)
        if all(TAPES[name].limits[Figure.WOMAN].hold(tapes[name]) for name in names)
    ]
    with path.open("w", encoding="utf-8", newline="") as file:
        writer = csv.writer(file)
        writer.writerow(["name", "figure", *names])
        for number, tapes in enumerate(believed[:rows], 1):
            writer.writerow([f"Order {number}", Figure.WOMAN, *(f"{tapes[name]:.1f} mm" for name in names)])

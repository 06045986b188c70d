"""`./run bench --form`: 200 random wearers of each figure get a form: how long it takes, and whether all holds."""

from __future__ import annotations

from collections.abc import Sequence
from statistics import median
from time import perf_counter, process_time

from tapeline.form import fit_form
from tapeline.measures import Figure, Wearer
from tapeline.problems import InputError
from tests.wearers import LIMIT_WEARERS, random_wearers

__all__ = ["time_forms"]

WEARERS = 200
OPTIONAL = ("neck", "upper_arm", "wrist", "shoulder_length", "back_width")
"""Taken besides the eight by every second wearer."""


def time_forms() -> None:
    """Prints a row for each group of wearers."""
    print(
        f"{'wearers':34}{'number':>8}{'median s':>10}{'of cpu':>8}{'longest':>9}"
        f"{'residual mm':>13}{'inverted':>10}{'refused':>9}"
    )
    for figure in (Figure.WOMAN, Figure.MAN):
        half = WEARERS // 2
        _show(f"random, {figure}, eight tapes", random_wearers(figure, half))
        _show(f"random, {figure}, thirteen tapes", random_wearers(figure, half, 2, OPTIONAL))
    _show("odd, woman and man", LIMIT_WEARERS)


def _show(words: str, wearers: Sequence[Wearer]) -> None:
    seconds, cpu, residuals, inverted, refused = [], [], [], 0, 0
    for wearer in wearers:
        start, start_cpu = perf_counter(), process_time()
        try:
            form = fit_form(wearer)
        except InputError as error:
            refused += 1
            print(f"  {wearer.name}: {error.problems[0].says}")
            continue
        seconds.append(perf_counter() - start)
        cpu.append(process_time() - start_cpu)
        residuals.append(form.residual_mm)
        inverted += form.inverted
    print(
        f"{words:34}{len(wearers):>8}{median(seconds):>10.2f}{median(cpu):>8.2f}{max(seconds):>9.2f}"
        f"{max(residuals):>13.4f}{inverted:>10}{refused:>9}",
        flush=True,
    )

"""`./run bench`: prints how long the main things take, as medians; it judges nothing.

`./run bench --quick` takes fewer runs and fewer orders; `./run bench --page` times the page in a browser instead, and
`./run bench --lay [SECONDS]` lays every style on the cloth, 20 seconds each unless given;
`./run bench --form` makes the form of random wearers.
"""

from __future__ import annotations

import os
import platform
import sys
import tempfile
from collections.abc import Callable
from itertools import count
from pathlib import Path

from benchmarks.clock import ROOT, in_turns, medians_of, process
from benchmarks.lay import time_lays
from benchmarks.orders import write_orders
from tapeline.docket import read_docket
from tapeline.docket.edit import with_value
from tapeline.project import draft
from tapeline.web.drawing import drawing
from tapeline.web.view import look

DOCKET = ROOT / "examples" / "tee.toml"
JOBS = 2
LAY_S = 20.0
UNSEEN = 300
"""Texts, before the first comes again: more than the page remembers, or nothing would be drawn."""
Row = tuple[str, float, int]


def main(arguments: list[str]) -> int:
    """Runs everything and prints the table; exit code 2 for an argument that is not known."""
    if arguments[:1] == ["--lay"] and (seconds := _seconds(arguments[1:])):
        print(_machine())
        time_lays(seconds)
        return 0
    if arguments not in ([], ["--quick"], ["--page"], ["--form"]):
        print("bench: ./run bench [--quick | --page | --form | --lay [SECONDS]]", file=sys.stderr)
        return 2
    if arguments == ["--page"]:
        # The browser comes with what ./check sets up, so nothing else here may need it.
        from benchmarks.page import time_page

        print(_machine())
        time_page()
        return 0
    if arguments == ["--form"]:
        from benchmarks.form import time_forms

        print(_machine())
        time_forms()
        return 0
    quick = bool(arguments)
    few, many, orders = (3, 20, 100) if quick else (15, 200, 1000)
    print(_machine())
    print(f"{'what':60}{'median':>12}{'runs':>8}")
    for row in (*_imports(few), *_drafting(many), *_redrawing(many), *_printing(few)):
        _show(row)
    _batch(orders, 1 if quick else 3)
    return 0


def _seconds(arguments: list[str]) -> float:
    """What stands after --lay; 0 when it is no number of seconds."""
    if not arguments:
        return LAY_S
    return float(arguments[0]) if len(arguments) == 1 and arguments[0].isdigit() else 0.0


def _machine() -> str:
    system = f"{platform.system()} {platform.machine()}"
    return f"{system}, {os.cpu_count()} processors ({_processor()}), Python {platform.python_version()}"


def _processor() -> str:
    try:
        lines = Path("/proc/cpuinfo").read_text(encoding="utf-8").splitlines()
    except OSError:
        return platform.processor() or "unknown"
    return next((line.partition(":")[2].strip() for line in lines if line.startswith("model name")), "unknown")


def _imports(runs: int) -> list[Row]:
    names = (
        ("python that does nothing, whole process", ("-c", "pass")),
        ('python -c "import numpy", whole process', ("-c", "import numpy")),
        ("tapeline --help, whole process", ("-m", "tapeline", "--help")),
        ('python -c "import tapeline.project", whole process', ("-c", "import tapeline.docket, tapeline.project")),
    )
    medians = in_turns([process(*arguments) for _, arguments in names], runs)
    return [(name, seconds, runs) for (name, _), seconds in zip(names, medians, strict=True)]


def _drafting(runs: int) -> list[Row]:
    return [
        ("docket to trued garment, once imported", medians_of(lambda: draft(read_docket(DOCKET)), runs), runs),
    ]


def _redrawing(runs: int) -> list[Row]:
    """What the page does for a key in a tape, but for the way to the browser: another length every time."""
    return [
        (f"redraw of {path.stem}, tape to drawing", medians_of(_redraw(path), runs), runs)
        for path in sorted(DOCKET.parent.glob("*.toml"))
    ]


def _redraw(path: Path) -> Callable[[], None]:
    """Draws a docket with its first tape a tenth of a millimetre longer than the time before."""
    text = path.read_text(encoding="utf-8")
    tape, typed = next(iter(read_docket(path).wearer.tapes.items()))
    tenths = count()

    def redraw() -> None:
        longer = f"{(typed + next(tenths) % UNSEEN / 10) / 10:.2f} cm"
        if drawing(look(with_value(text, ("wearer", "tapes", tape), longer), path.name)) is None:
            raise RuntimeError(f"{path.name} was not drawn with {tape} {longer}")

    return redraw


def _printing(runs: int) -> list[Row]:
    with tempfile.TemporaryDirectory(prefix="tapeline bench ") as folder:
        out = Path(folder) / "tee.pdf"
        run = process("-m", "tapeline", "print", str(DOCKET), "--paper", "A4", "--out", str(out), "--force")
        return [("tapeline print of the tee on A4, whole process", medians_of(run, runs), runs)]


def _batch(orders: int, runs: int) -> None:
    with tempfile.TemporaryDirectory(prefix="tapeline bench ") as folder:
        listed, lines = Path(folder) / "orders.csv", Path(folder) / "orders.jsonl"
        write_orders(listed, orders)
        arguments = ("-m", "tapeline", "batch", str(listed), "--json-lines", "--out", str(lines), "--jobs", str(JOBS))
        said: list[str] = []
        # Random wearers meet the survey's rarest: some rows are refused, which is exit code 1.
        run = process(*arguments, "--force", codes=(0, 1))
        seconds = in_turns([lambda: said.append(run().splitlines()[0])], runs, first_counts=True)[0]
        written = len(lines.read_text(encoding="utf-8").splitlines())
    if written != orders:
        raise RuntimeError(f"{orders} orders went in, {written} lines came out")
    _show((f"tapeline batch of {orders} orders, {JOBS} at once, whole process", seconds, runs))
    print(f"  {said[-1]}")


def _show(row: Row) -> None:
    name, seconds, runs = row
    time = f"{seconds * 1000:.1f} ms" if seconds < 1 else f"{seconds:.2f} s"
    print(f"{name:60}{time:>12}{runs:>8}", flush=True)


if __name__ == "__main__":
    raise SystemExit(main(sys.argv[1:]))

"""The process in which the engine works: the only file that imports it, run by its path, never imported.

It reads one task as a line of JSON and answers with a line for every feasible plan, each better than the one before.
The engine is interrupted by SIGINT, and only on the main thread; it then gives the best plan it has. It ends when the
other end of its input is closed, so that it does not outlive who asked.
"""

from __future__ import annotations

import json
import os
import sys
import threading
from typing import Any


def main() -> None:
    """Solve the task on standard input."""
    task = json.loads(sys.stdin.readline())
    threading.Thread(target=_end_with_parent, daemon=True).start()
    try:
        _solve(task)
    except KeyboardInterrupt:
        _say({"ended": True})
    except BaseException as error:  # noqa: BLE001 - a panic of the engine is derived from BaseException
        _say({"failed": f"{type(error).__name__}: {error}".splitlines()[0][:200]})


def _solve(task: dict[str, Any]) -> None:
    import spyrrow

    items = [
        spyrrow.Item(item["id"], [tuple(p) for p in item["shape"]], item["demand"], item["turns"])
        for item in task["items"]
    ]
    strip = spyrrow.StripPackingInstance("lay", task["height"], items)
    config = spyrrow.StripPackingConfig(
        early_termination=False,
        total_computation_time=None,
        exploration_time=task["exploring"],
        compression_time=task["compressing"],
        num_workers=task["workers"],
        seed=task["seed"],
    )
    queue = spyrrow.ProgressQueue()
    done = threading.Event()
    reporter = threading.Thread(target=_report, args=(queue, done), daemon=True)
    reporter.start()
    try:
        best = strip.solve(config, progress=queue)
    finally:
        done.set()
        reporter.join()
    _say(_plan(best))
    _say({"ended": True})


def _report(queue: Any, done: threading.Event) -> None:  # noqa: ANN401 - a queue of the engine's
    """Pass on what is better than all before; plans that still overlap are the engine's own affair."""
    import spyrrow

    feasible = (spyrrow.ReportType.ExplFeas, spyrrow.ReportType.CmprFeas, spyrrow.ReportType.Final)  # not hashable
    shortest = float("inf")
    while not done.wait(0.05):
        found = [plan for kind, plan in queue.drain() if kind in feasible]
        best = min(found, key=lambda plan: plan.width, default=None)
        if best is not None and best.width < shortest:
            shortest = best.width
            _say(_plan(best))


def _plan(solution: Any) -> dict[str, Any]:  # noqa: ANN401 - a solution of the engine's
    return {
        "length": solution.width,
        "placed": [[item.id, item.rotation, *item.translation] for item in solution.placed_items],
    }


_LOCK = threading.Lock()


def _say(message: dict[str, Any]) -> None:
    with _LOCK:
        sys.stdout.write(json.dumps(message) + "\n")
        sys.stdout.flush()


def _end_with_parent() -> None:
    sys.stdin.read()
    os._exit(0)


if __name__ == "__main__":
    main()

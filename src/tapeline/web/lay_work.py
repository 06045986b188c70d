"""The child process in which pieces are laid: it writes a line of JSON for each better plan, and ends when told to.

It reads what is asked as one line; another line, or the end of its input, stops it. So it never outlives the page.
"""

from __future__ import annotations

import _thread
import json
import signal
import sys
import threading
from collections.abc import Callable, Iterator
from dataclasses import replace
from typing import Any

from tapeline.docket import docket_from_text
from tapeline.export import lay_picture
from tapeline.lay import Direction, LayCloth, LayPlan, Spread, kept
from tapeline.problems import InputError, Problem, Severity
from tapeline.project import draft, lay_plans, lay_tasks
from tapeline.units import Unit, parse_length, show_length

__all__ = ["main", "plans"]

LONGEST_S = 600.0


def main() -> None:
    """Lay what is asked for on standard input."""
    signal.signal(signal.SIGINT, signal.default_int_handler)
    asked = json.loads(sys.stdin.readline())
    threading.Thread(target=_stopped, daemon=True).start()
    try:
        for count, (plan, unit) in enumerate(plans(asked), 1):
            _say({"n": count, "picture": lay_picture(plan), "kept": kept(plan), **_words(plan, unit)})
    except InputError as error:
        _say({"problems": [f"{problem.says}. {problem.hint}".strip() for problem in error.problems[:3]]})
    except KeyboardInterrupt:
        pass


def plans(asked: dict[str, Any]) -> Iterator[tuple[LayPlan, Unit]]:
    """Plans of one cloth, each better, with the unit to tell them in.

    Raises:
        InputError: what was typed is no length or number, or cannot be laid.
    """
    docket = docket_from_text(asked["text"], asked["name"])
    unit = docket.unit
    garments = None if not asked["garments"] else _whole(asked["garments"], "garments", 1, 200)
    seconds = _number(asked["seconds"], "seconds", 1, LONGEST_S)
    changed = _changed(asked, unit)
    (task,) = lay_tasks([draft(docket)], garments=garments, cloths=[asked["cloth"]], changed=changed)
    for plan in lay_plans(task, seconds):
        yield plan, unit


def _changed(asked: dict[str, Any], unit: Unit) -> Callable[[LayCloth], LayCloth]:
    changes: dict[str, Any] = {}
    for key in ("width", "gap"):
        if asked[key]:
            changes[f"{key}_mm"] = parse_length(asked[key], unit)
    if asked["price"]:
        changes["price"] = _number(asked["price"], "price", 0, 1e6)
    for key, kind in (("spread", Spread), ("direction", Direction)):
        if asked[key]:
            if asked[key] not in list(kind):
                raise _wrong(f"{key} is {asked[key]}, which is none of {', '.join(kind)}")
            changes[key] = kind(asked[key])
    return lambda cloth: replace(cloth, **changes)


def _number(typed: str, name: str, least: float, most: float) -> float:
    try:
        number = float(typed.replace(",", "."))
    except ValueError:
        number = -1.0
    if not least <= number <= most:
        raise _wrong(f"{name} is {typed}; it lies between {least:g} and {most:g}")
    return number


def _whole(typed: str, name: str, least: int, most: int) -> int:
    number = _number(typed, name, least, most)
    if number != int(number):
        raise _wrong(f"{name} is {typed}; it is a whole number")
    return int(number)


def _wrong(says: str) -> InputError:
    return InputError(Problem("lay-cloth", Severity.ERROR, says, "cloth", "Nothing was laid"))


def _words(plan: LayPlan, unit: Unit) -> dict[str, Any]:
    """What the page says of a plan: a sentence, and rows."""
    length, width = show_length(plan.length_mm, unit), show_length(plan.cloth.width_mm, unit)
    rows = [
        ("Length", length),
        ("Cloth", f"{width} wide, {plan.cloth.spread}, {plan.cloth.direction}"),
        ("Off the roll", show_length(plan.bought_mm, unit)),
        ("Used", f"{plan.yield_share:.1%} of the cloth"),
        ("No shorter than", f"{show_length(plan.bound_mm, unit)}, without any waste"),
        ("Pieces", str(len(plan.placements))),
        ("Found after", f"{plan.seconds:.1f} s"),
    ]
    if plan.cost is not None:
        rows.insert(3, ("Cost", f"{plan.cost:.2f}"))
    if plan.cloth.shrink_length or plan.cloth.shrink_width:
        shrinks = f"{plan.cloth.shrink_length:g} % in length, {plan.cloth.shrink_width:g} % in width"
        rows.append(("Laid larger", f"by what the cloth shrinks, {shrinks}: cut it unwashed"))
    cost = "" if plan.cost is None else f", cost {plan.cost:.2f}"
    said = f"{plan.cloth.name}: {length} of cloth {width} wide, {plan.yield_share:.0%} used{cost}"
    return {"said": said, "rows": rows}


def _say(line: dict[str, Any]) -> None:
    sys.stdout.write(json.dumps(line) + "\n")
    sys.stdout.flush()


def _stopped() -> None:
    sys.stdin.readline()
    _thread.interrupt_main()


if __name__ == "__main__":
    main()

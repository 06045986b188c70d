"""The tapes as they were taken, each beside what the wearer's other tapes suggest."""

from __future__ import annotations

from tapeline.measures import DOUBT_FROM, TAPES, Estimate, Wearer, suggestion
from tapeline.sheets.html import paragraph, part, words

__all__ = ["tapes"]

WIDEST = 5.0
"""Standard deviations to either side that the small scale shows."""


def tapes(wearer: Wearer) -> str:
    """A row for each tape; no suggestion where no survey knows of it."""
    rows = "\n".join(_row(wearer, name) for name in wearer.tapes)
    made = paragraph(f"Made from {wearer.made_from}.") if wearer.made_from else ""
    says = (
        f"The dot shows how far a tape lies from what the others suggest; inside the bar ({DOUBT_FROM:g} spreads to "
        "either side) is nothing to remark."
    )
    head = "".join(f'<th scope="col">{title}</th>' for title in ("tape", "taken", "the others suggest", "how far off"))
    caption = "Tapes, and what the wearer's other tapes suggest for each"
    return part(
        "tapes",
        "Tapes",
        made,
        paragraph(says),
        f'<div class="wide" role="region" aria-label="{caption}" tabindex="0"><table><caption>{caption}</caption>'
        f"<thead><tr>{head}</tr></thead>\n<tbody>\n{rows}\n</tbody></table></div>",
    )


def _row(wearer: Wearer, name: str) -> str:
    tape = TAPES[name]
    expected = suggestion(wearer, name)
    suggests, picture = "nothing: no survey knows of it", ""
    if expected is not None:
        low, high = expected.span()
        suggests = f"{tape.show(low, wearer.unit)} to {tape.show(high, wearer.unit)}"
        picture = _scale(expected, wearer[name])
    title = words(name.replace("_", " "))
    return (
        f'<tr><th scope="row">{title}</th><td>{words(wearer.show(name))}</td><td>{words(suggests)}</td>'
        f"<td>{picture}</td></tr>"
    )


def _scale(expected: Estimate, value: float) -> str:
    off = expected.deviations(value)
    at = max(-WIDEST, min(WIDEST, off))
    kind = "far" if abs(off) > DOUBT_FROM else "near"
    way = "above" if off > 0 else "below"
    says = f"{abs(off):.1f} spreads {way}"
    return (
        f'<svg class="scale" viewBox="{-WIDEST - 0.5} -0.6 {2 * WIDEST + 1} 1.2" role="img" aria-label="{says}">'
        f'<rect x="{-DOUBT_FROM}" y="-0.3" width="{2 * DOUBT_FROM}" height="0.6" rx="0.3"/>'
        f'<circle class="{kind}" cx="{at:.2f}" r="0.42"/></svg>'
    )

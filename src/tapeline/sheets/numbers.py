"""How lengths read on a page: in the docket's unit, to a tenth of a millimetre or so."""

from __future__ import annotations

from tapeline.units import Unit

__all__ = ["change", "length", "plain"]


def plain(mm: float, unit: Unit) -> str:
    """A length without its unit, for a column that names it.

    >>> plain(254, Unit.INCH), plain(-0.001, Unit.CM)
    ('10.00', '0.00')
    """
    text = f"{mm / unit.mm:.2f}"
    return text.removeprefix("-") if float(text) == 0 else text


def length(mm: float, unit: Unit) -> str:
    """A length with its unit.

    >>> length(84.5, Unit.CM)
    '8.45 cm'
    """
    return f"{plain(mm, unit)} {unit.sign}"


def change(mm: float, unit: Unit) -> str:
    """A difference, with its sign.

    >>> change(15, Unit.CM), change(-15, Unit.CM), change(0, Unit.CM)
    ('+1.50', '−1.50', '0.00')
    """
    text = plain(mm, unit)
    if text.startswith("-"):
        return "−" + text[1:]
    return text if float(text) == 0 else f"+{text}"

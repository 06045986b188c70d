"""What is written of a draped garment: picture, solid, data."""

from __future__ import annotations

from typing import TYPE_CHECKING

from tapeline.project.draped import drape_document

if TYPE_CHECKING:
    from tapeline.drape import Draped

__all__ = ["drape_data", "drape_legend", "drape_maps", "drape_picture", "drape_solid"]


def drape_maps() -> tuple[str, ...]:
    """What a draped garment may be coloured by.

    >>> drape_maps()
    ('round', 'along', 'strongest', 'air', 'pressure')
    """
    from tapeline.export.drape_views import MAPS

    return tuple(MAPS)


def drape_legend(draped: Draped, shown: str = "round") -> str:
    """What the colours of a picture or solid mean, as a sentence with numbers; `shown` is one of `drape_maps`."""
    from tapeline.export.drape_views import legend

    return legend(draped, shown)


def drape_picture(draped: Draped, shown: str = "round") -> bytes:
    """Front, left side and back as a PNG, coloured by `shown` (one of `drape_maps`), with its legend.

    Raises:
        KeyError: `shown` is none of them.
    """
    from tapeline.export.drape_views import drape_views
    from tapeline.export.png import png

    return png(drape_views(draped, shown))


def drape_solid(draped: Draped, shown: str = "round") -> bytes:
    """Form, garment and seams as a binary glTF file; the garment's name in it says what its colours mean.

    Raises:
        KeyError: `shown` is none of `drape_maps`.
    """
    from tapeline.export.drape_views import drape_solids
    from tapeline.export.glb import glb

    return glb(drape_solids(draped, shown))


def drape_data(draped: Draped) -> str:
    """`drape_document` as JSON, with the mesh, what was read at each of its nodes, and the lines of the seams."""
    from tapeline.export import text
    from tapeline.export.drape_views import drape_places

    return text({**drape_document(draped), "places": drape_places(draped)}, indent=1)

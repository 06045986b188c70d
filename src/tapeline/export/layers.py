"""Layers of a print, which many readers can show and hide."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from io import BytesIO

from tapeline.export.line_kind import Layer
from tapeline.finish import Title

__all__ = ["KINDS", "PrintLayer", "with_layers"]


@dataclass(frozen=True, slots=True)
class PrintLayer:
    """What can be shown or hidden together, as the file knows it."""

    key: str
    """In the drawing's code: letters and figures."""
    title: str
    """For a person: `Cut line`, `Size 88`."""
    shown: bool = True
    """Whether it is there when the file is opened, and when it is printed."""


KINDS = tuple(PrintLayer(layer.name, layer.value) for layer in Layer)
"""Layers of the print of one garment."""


def with_layers(data: bytes, title: Title, made: Sequence[PrintLayer] = KINDS) -> bytes:
    """Name the layers, ask the viewer not to scale, set language and date."""
    import pikepdf
    from pikepdf import Array, Dictionary, Name, String

    with pikepdf.open(BytesIO(data)) as file:
        layers = {layer: file.make_indirect(Dictionary(Type=Name.OCG, Name=String(layer.title))) for layer in made}
        names = Dictionary({f"/{layer.key}": group for layer, group in layers.items()})
        for page in file.pages:
            for form in page.resources.get("/XObject", Dictionary()).values():
                if form.get("/Subtype") == Name.Form:
                    resources = form.get("/Resources", Dictionary())
                    resources["/Properties"] = names
                    form["/Resources"] = resources
        order = Array(layers.values())
        shown, hidden = (
            Array([group for layer, group in layers.items() if layer.shown is asked]) for asked in (True, False)
        )
        looks = Dictionary(Order=order, ON=shown, Name=String("Pattern"), BaseState=Name.ON)
        if len(hidden):
            looks["/OFF"] = hidden
        file.Root.OCProperties = Dictionary(OCGs=order, D=looks)
        file.Root.ViewerPreferences = Dictionary(
            PrintScaling=Name("/None"), PickTrayByPDFSize=True, DisplayDocTitle=True
        )
        file.Root.Lang = String("en")
        info = {"/Title": f"{title.style} for {title.wearer}", "/Creator": f"Tapeline {title.version}".strip()}
        day = title.date.replace("-", "")[:8]
        if len(day) == 8 and day.isdigit():
            info |= {"/CreationDate": f"D:{day}"}
        file.trailer["/Info"] = file.make_indirect(Dictionary({key: String(text) for key, text in info.items()}))
        out = BytesIO()
        file.save(out, deterministic_id=True, min_version="1.6")
    return out.getvalue()

"""Layers of a print, which many readers can show and hide."""

from __future__ import annotations

from io import BytesIO

from tapeline.export.line_kind import Layer
from tapeline.finish.finished import Title

__all__ = ["with_layers"]


def with_layers(data: bytes, title: Title) -> bytes:
    """Name the layers, ask the viewer not to scale, set language and date."""
    import pikepdf
    from pikepdf import Array, Dictionary, Name, String

    with pikepdf.open(BytesIO(data)) as file:
        layers = {layer: file.make_indirect(Dictionary(Type=Name.OCG, Name=layer.value)) for layer in Layer}
        names = Dictionary({f"/{layer.name}": group for layer, group in layers.items()})
        for page in file.pages:
            for form in page.resources.get("/XObject", Dictionary()).values():
                if form.get("/Subtype") == Name.Form:
                    resources = form.get("/Resources", Dictionary())
                    resources["/Properties"] = names
                    form["/Resources"] = resources
        order = Array(layers.values())
        file.Root.OCProperties = Dictionary(
            OCGs=order, D=Dictionary(Order=order, ON=order, Name=String("Pattern"), BaseState=Name.ON)
        )
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

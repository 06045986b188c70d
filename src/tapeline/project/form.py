"""The form of a docket's wearer, and what is written of it."""

from __future__ import annotations

from tapeline.docket import Docket
from tapeline.form import ARMS, Form, fit_form
from tapeline.problems import InputError

__all__ = ["form", "form_document", "form_glb", "form_png"]


def form(docket: Docket, arms: float = ARMS) -> Form:
    """The stand with the tapes of a docket's wearer; `arms` is their angle against hanging down, in radians.

    Raises `InputError`: `form-child`, `form-arms`, `form-not-met`; its problems stand at their lines of the docket.
    """
    try:
        return fit_form(docket.wearer, arms)
    except InputError as error:
        raise InputError(docket.placed(error.problems)) from error


def form_glb(made: Form) -> bytes:
    """The form and the lines of its tapes as a binary glTF file, for programs that show solids."""
    from tapeline.export.form_views import solid
    from tapeline.export.glb import glb

    return glb([solid(made)])


def form_png(made: Form) -> bytes:
    """Front, left side and back beside each other, without perspective, with the tapes: red were taken, blue not."""
    from tapeline.export.form_views import views
    from tapeline.export.png import png

    return png(views(made))


def form_document(made: Form) -> str:
    """Landmarks, levels and tapes as JSON, in mm and radians; the mesh is in the glTF file."""
    from tapeline.export.form_views import form_document as written

    return written(made)

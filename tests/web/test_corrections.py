"""The page offers every correction with a picture, and an edit of one redraws."""

from __future__ import annotations

from tapeline.pattern import Corrections
from tapeline.web.style_place import choices
from tests.web.test_app import Client
from tests.web.test_drawing import TEE, seen


def keys_of(corrections: Corrections) -> set[str]:
    """Every key below `garment.corrections`."""
    return {one.key for one in corrections.every()}


def test_every_correction_is_offered_with_a_picture() -> None:
    """Among the choices of a tee stand all corrections, each with its range, its words and the pieces it changes."""
    fields = [field for group in choices(seen()) for field in group.fields if "corrections" in field.keys]
    assert {".".join(field.keys[2:]) for field in fields} == keys_of(Corrections())
    for field in fields:
        assert field.picture is not None, field.keys
        assert field.says
        assert field.least == "0"
        assert not field.changed


def test_a_correction_is_set_on_the_page_and_drawn() -> None:
    """A sway back entered on the page stands in the docket and moves the hem."""
    client = Client(TEE)
    answer = client.edit("garment.corrections.sway_back", "2")
    assert "sway_back = 2" in answer["text"]
    view = client.table.view
    assert view.docket is not None
    assert view.drafted is not None
    assert view.docket.corrections.sway_back.mm == 20
    assert "back.swayed_hem_centre" in view.drafted.garment.points

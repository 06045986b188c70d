"""The JSON document of real dockets."""

import json
from pathlib import Path

import jsonschema
import pytest

from tapeline.docket import read_docket
from tapeline.export import schema, text
from tapeline.project import document, draft

EXAMPLES = sorted((Path(__file__).parents[2] / "examples").glob("*.toml"))


@pytest.mark.parametrize("path", EXAMPLES, ids=lambda path: path.stem)
def test_the_document_of_every_example_meets_the_schema(path: Path) -> None:
    """What is written of a docket is what the schema promises."""
    jsonschema.validate(json.loads(text(document(draft(read_docket(path))))), schema())

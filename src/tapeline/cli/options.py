"""Options and arguments that several commands take."""

from __future__ import annotations

from pathlib import Path

import click

__all__ = ["as_json", "docket", "force"]

docket = click.argument("docket", type=click.Path(path_type=Path, readable=False))
"""Reading says what is wrong with a file; click is not asked to look."""
as_json = click.option("--json", "as_json", is_flag=True, help="Print it as JSON, for programs.")
force = click.option("--force", is_flag=True, help="Write over a file that Tapeline did not make.")

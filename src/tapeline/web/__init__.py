"""The page: measure to cut at one table, in the browser of this machine, or of those that have the password."""

from tapeline.web.door import Password
from tapeline.web.serve import serve

__all__ = ["Password", "serve"]

"""The page: measure to cut at one table, in the browser of this machine."""

from tapeline.web.serve import serve

__all__ = ["serve"]

"""Sizes of a garment, looked up by name."""

from __future__ import annotations

from tapeline.pattern import Garment

__all__ = ["size"]


def size(garment: Garment, name: str) -> float:
    """A size, mm."""
    return next(s.length.mm for s in garment.sizes if s.name == name)

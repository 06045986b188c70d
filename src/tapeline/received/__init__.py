"""Pieces that come from other programs: exchange files read, with everything that was not understood."""

from tapeline.received.piece import NotUnderstood, Received, ReceivedNotch, ReceivedPiece
from tapeline.received.receive import receive, received

__all__ = ["NotUnderstood", "Received", "ReceivedNotch", "ReceivedPiece", "receive", "received"]

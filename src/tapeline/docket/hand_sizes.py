"""The sizes of the frame that a docket may set by hand, and between which values they are believed."""

from __future__ import annotations

from tapeline.pattern import Choice

__all__ = ["HAND_SIZES"]

HAND_SIZES = {
    "armhole_depth": Choice(7, 42, "from the nape down to the chest line"),
    "half_back_width": Choice(6, 36, "from the centre back to the armhole"),
    "half_chest_width": Choice(6, 36, "from the centre front to the armhole"),
    "neck_width": Choice(3, 14, "from the centre to the neck point"),
    "back_shoulder_fall": Choice(0, 14, "how far the back shoulder falls over a run of 14 cm"),
    "front_shoulder_fall": Choice(0, 14, "how far the front shoulder falls over a run of 14 cm"),
    "front_drop": Choice(0, 12, "how much lower the front hem hangs at the centre"),
    "shoulder_length": Choice(3, 26, "from the neck point to the shoulder tip"),
}
"""In cm. Common practice, no source: from half a small child's to one and a half of a large man's."""

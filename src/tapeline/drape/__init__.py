"""The cloth and the garment of it on a form: what a maker measures of a cloth, and how that cloth then hangs."""

from tapeline.drape.cloth import HANDS, Hand, hand_of
from tapeline.drape.home_test import HomeTest, Strip
from tapeline.drape.pull import Pull

__all__ = ["HANDS", "Hand", "HomeTest", "Pull", "Strip", "hand_of"]

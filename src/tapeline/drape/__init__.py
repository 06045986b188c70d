"""The cloth and the garment of it on a form: what a maker measures of a cloth, and how that cloth then hangs."""

from tapeline.drape.cloth import HANDS, Hand, hand_of
from tapeline.drape.drape import Draped, drape
from tapeline.drape.home_test import HomeTest, Strip
from tapeline.drape.pull import Pull

__all__ = ["HANDS", "Draped", "Hand", "HomeTest", "Pull", "Strip", "drape", "hand_of"]

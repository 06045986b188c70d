"""Measures: the tapes of a wearer, what surveys of real bodies say about them, and the sizes of tables.

A docket's values are read by `Tape.parse` and become a `Wearer`, which refuses what cannot be. `doubts` names the tapes
to take again; `estimates` gives the sizes that were not taped, with how far they may be off.

>>> marit = size_wearer("92").with_tape("waist", 760)
>>> doubts(marit)
[]
>>> wrist = estimates(marit)["wrist"]
>>> f"{wrist.mm:.0f} mm, give or take {wrist.sd_mm:.0f}"
'152 mm, give or take 5'
"""

from tapeline.measures.conversions import CONVERSIONS, Conversion
from tapeline.measures.doubts import DOUBT_FROM, ERROR_FROM, doubts, suggestion
from tapeline.measures.estimate import Estimate
from tapeline.measures.estimates import estimates, large_head
from tapeline.measures.figures import Figure
from tapeline.measures.size_list import size_labels
from tapeline.measures.sizes import LETTER_CODES, WOMEN_INTERVALS, SizeInterval, letter_code, size_wearer, women_size
from tapeline.measures.survey import Survey, survey_of
from tapeline.measures.tape import Limits, Tape
from tapeline.measures.tapes import TAPES, required_tapes, tapes_of
from tapeline.measures.wearer import Wearer, wearer_problems

__all__ = [
    "CONVERSIONS",
    "DOUBT_FROM",
    "ERROR_FROM",
    "LETTER_CODES",
    "TAPES",
    "WOMEN_INTERVALS",
    "Conversion",
    "Estimate",
    "Figure",
    "Limits",
    "SizeInterval",
    "Survey",
    "Tape",
    "Wearer",
    "doubts",
    "estimates",
    "large_head",
    "letter_code",
    "required_tapes",
    "size_labels",
    "size_wearer",
    "suggestion",
    "survey_of",
    "tapes_of",
    "wearer_problems",
    "women_size",
]

"""How the sizes of one garment differ: where they meet, how points move, what the garment measures, what is uneven."""

from tapeline.grade.chart import ChartRow, Measure, measurement_chart, measures
from tapeline.grade.common_point import CommonPoint, Meet, common_point
from tapeline.grade.grade_table import GradedPoint, grade_table, shared_pieces
from tapeline.grade.uneven import Cause, Departure, GradedSize, Uneven, departures, told_together

__all__ = [
    "Cause",
    "ChartRow",
    "CommonPoint",
    "Departure",
    "GradedPoint",
    "GradedSize",
    "Measure",
    "Meet",
    "Uneven",
    "common_point",
    "departures",
    "grade_table",
    "measurement_chart",
    "measures",
    "shared_pieces",
    "told_together",
]

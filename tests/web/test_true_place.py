"""True on the page: hints that can be carried out are, and mend what they are for."""

from __future__ import annotations

from dataclasses import replace

from tapeline.docket.edit import with_value
from tapeline.problems import Problem, Severity
from tapeline.web.true_place import truing
from tapeline.web.unfolded import unfolded
from tapeline.web.view import look

TAPES = """
[wearer]
figure = "woman"
[wearer.tapes]
bust = 84
upper_chest = 82
waist = 68
hip = 92
shoulder_width = 38
back_length = 39
hip_depth = 20
arm_length = 57
head_girth = 56
[garment]
looseness = "close"
[cloth]
stretch_across = 20
"""


def test_a_hint_done_mends_its_finding() -> None:
    """A neck too small for the head is lowered by as much as the hint says, and then the head passes."""
    view = look(TAPES, "test.toml")
    finding = next(f for f in truing(view)["findings"] if f.problem.code == "head-does-not-pass")
    assert finding.keys == "garment.neckline.lower_front"
    keys = tuple(finding.keys.split("."))
    text = with_value(unfolded(view, keys), keys, finding.value)
    after = look(text, "test.toml")
    assert after.drafted is not None
    assert "head-does-not-pass" not in {problem.code for problem in after.problems}


def test_every_seam_and_corner_has_its_close_up() -> None:
    """Edges of one length are drawn at one length, and lines that run straight on say so."""
    shown = truing(look(TAPES, "test.toml"))
    strips = {strip.name: strip for strip in shown["strips"]}
    assert abs(strips["shoulder"].a - strips["shoulder"].b) < 1e-6
    assert strips["neckline"].a < strips["neckline"].b
    assert {corner.words for corner in shown["corners"]} == {"runs straight on"}


def test_a_finding_opens_its_place() -> None:
    """A line that bends over a seam lights its two edges; a seam that does not fit lights them and can be laid out."""
    view = look(TAPES, "test.toml")
    assert view.drafted is not None
    joins = [replace(join, bend=0.1) if join.line == "neckline" else join for join in view.drafted.truing.joins]
    bent = next(join for join in joins if join.bend == 0.1)
    # What is worked out when it is first asked for is laid where it would be kept.
    drafted = replace(view.drafted)
    vars(drafted)["truing"] = replace(view.drafted.truing, joins=tuple(joins))
    invented = replace(view, drafted=drafted)
    vars(invented)["problems"] = (
        Problem("join-bends", Severity.ERROR, "invented", ", ".join(bent.corners)),
        Problem("seam-mismatch", Severity.ERROR, "invented", "seam side"),
    )
    bends, seam = truing(invented)["findings"]
    assert set(bends.marks) == {"front.neckline", "back.neckline"}
    assert bends.seam == ""
    assert set(seam.marks) == {"front.side", "back.side"}
    assert seam.seam == "side"

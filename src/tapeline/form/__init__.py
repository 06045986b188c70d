"""Form: a plain dress stand with a wearer's tapes.

>>> from tapeline.measures import size_wearer
>>> form = fit_form(size_wearer("92").with_tape("waist", 760))
>>> round(form.readings["waist"].read), form.levels["bust"] > form.levels["waist"] > form.levels["hip"]
(760, True)
>>> form.points["shoulder_point"].shape, form.armholes[0].shape[1]
((3,), 3)
"""

from tapeline.form.fit import ARMS, ARMS_FROM, ARMS_TO, fit_form
from tapeline.form.form import Form, Reading

__all__ = ["ARMS", "ARMS_FROM", "ARMS_TO", "Form", "Reading", "fit_form"]

"""What all tests share: how thorough hypothesis is.

The profile is chosen by `--hypothesis-profile`; `./check quick` takes `quick`, `./check` takes `full`. Both meet the
same wearers in every run, so that what passes here passes there. `hunt` meets new ones each time: to look for trouble.
"""

from __future__ import annotations

from hypothesis import HealthCheck, settings

# How quick a machine is says nothing about what is drafted, so neither a slow example nor slow making of one fails.
settings.register_profile(
    "full", max_examples=200, derandomize=True, deadline=None, suppress_health_check=[HealthCheck.too_slow]
)
settings.register_profile("quick", settings.get_profile("full"), max_examples=20)
settings.register_profile("hunt", settings.get_profile("full"), derandomize=False, max_examples=5000)
settings.load_profile("quick")

"""How long random examples are sought: the same few each time, or with WALLPLAN_LONG=1 twenty times as many, new ones."""

from __future__ import annotations

from hypothesis import HealthCheck, settings

from tests.long_run import LONG

settings.register_profile("wallplan", deadline=None, derandomize=not LONG, print_blob=True,
                          suppress_health_check=[HealthCheck.too_slow])
settings.load_profile("wallplan")

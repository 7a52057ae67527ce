"""NHBC standards 6.1.12, lintels (nhbc-standards.co.uk, 2020): bearing of 100 mm, and of 150 mm over openings wider than 1.2 m."""

from __future__ import annotations

import pytest

from tests.jobs import MM, make_job, make_masonry, make_opening, make_wall
from tests.rules.breaking import tell_bearing
from wallplan.layout.build import lay

# Width of opening and bearing in mm; what the check says.
BEARINGS = [
    (910, 100, ""), (910, 90, "under the 100 mm of NHBC 6.1.12"), (1210, 140, "under the 150 mm of NHBC 6.1.12"),
    (1210, 150, ""), (2410, 100, "under the 150 mm of NHBC 6.1.12"),
]


@pytest.mark.parametrize(("width", "bearing", "said"), BEARINGS)
def test_a_bearing_under_the_standard_is_told(width: int, bearing: int, said: str) -> None:
    hatch = make_opening(1340 * MM, (1340 + width) * MM, 0, 900 * MM, lintel="precast", name="Hatch")
    wall = make_wall((2680 + width) * MM, 1800 * MM, [hatch])
    layout = lay(make_job(make_masonry("block-uk-100", joints_move=False), wall, measure="metric"))
    told = f"Hatch: bears {bearing} mm and {bearing} mm" + (f", {said}: ask whoever sized it" if said else "")
    assert tell_bearing(layout, bearing * MM) == told

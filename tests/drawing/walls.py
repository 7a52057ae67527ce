"""Walls of the ferry landing that the drawing tests share, laid once."""

from __future__ import annotations

from functools import cache

from tests.plan.kiosk import KIOSK
from wallplan.drawing.drafts import number_sheets
from wallplan.drawing.primitives import Drawing
from wallplan.drawing.wall_sheet import plan_wall_sheets
from wallplan.findings import Finding
from wallplan.layout.build import lay
from wallplan.layout.model import Layout
from wallplan.plan.load import read_plan
from wallplan.rules.check import check

PIER = """\
title = "Ferry landing"
measure = "feet"
date = "2026-05-01"
[masonry]
unit = "block-8"
[[wall]]
name = "Pier"
length = "38"
height = "8' 8"
"""

QUAY = """\
title = "Boat store <script>alert('x')</script> & \\"slip\\""
measure = "feet"
[masonry]
unit = "block-8"
[[wall]]
name = "Quay side"
length = "60'"
height = "10'"
bond_beams = ["top"]
control_joints = ["20'", "40'"]
[[wall.opening]]
name = "Boat door"
from_left = "25'"
width = "10'"
height = "8'"
lintel = "precast"
[[wall.opening]]
name = "Vent"
from_left = "48'"
width = "1' 4"
sill = "5' 4"
height = "1' 4"
[[wall.opening]]
name = "Steel door"
from_left = "53' 4"
width = "3' 4"
height = "6' 10"
lintel = "steel"
"""

SHELTER = """\
title = "Cycle shelter"
measure = "metric"
[masonry]
unit = "brick-uk"
[[wall]]
name = "South"
length = 3600
height = 2400
[[wall.opening]]
name = "Door"
from_left = 600
width = 910
height = 2100
[[wall.opening]]
name = "Window"
from_left = 2000
width = 1100
sill = 900
height = 1200
"""

TOWER = """\
title = "Pump house"
measure = "metric"
[masonry]
unit = "brick-uk"
[[wall]]
name = "Stair tower"
length = 2475
height = 9000
"""

PLANS = {"kiosk": KIOSK, "pier": PIER, "quay": QUAY, "shelter": SHELTER, "tower": TOWER}


@cache
def laid(name: str) -> tuple[Layout, tuple[Finding, ...]]:
    """The layout of one of PLANS and what was found of it."""
    layout = lay(read_plan(PLANS[name], f"{name}.toml"))
    return layout, check(layout)


@cache
def drawn(name: str, paper: str | None = None) -> Drawing:
    """The wall sheets of one of PLANS."""
    layout, findings = laid(name)
    return Drawing(layout.job.title, number_sheets(plan_wall_sheets(layout, findings, paper)))

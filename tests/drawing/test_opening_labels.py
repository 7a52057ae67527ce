"""The opening's label on the wall sheet tells the bearing that the lintel has as laid."""

from __future__ import annotations

from pathlib import Path

import pytest

from wallplan.drawing.opening_labels import find_bearings
from wallplan.layout.build import lay
from wallplan.lengths import print_length, print_size
from wallplan.plan.load import load_plan
from wallplan.rules.check import check

SAMPLES = sorted((Path(__file__).parents[2] / "samples").glob("*.toml"))


def test_a_lintel_unit_that_begins_where_the_bearing_asked_for_ends_is_counted() -> None:
    # The door's left jamb is at 47 5/8 in., lintel units stand from 24, 40, ... to 103 5/8; 8 in. are asked for, and the unit at
    # 40 gives 7 5/8 alone.
    (wall,) = lay(load_plan(next(path for path in SAMPLES if path.stem == "ticket-kiosk"))).walls
    left, right = find_bearings(wall, wall.wall.openings[0])
    assert (print_length(left, "feet"), print_length(right, "feet")) == ("1'-11 5/8\"", "1'-3 5/8\"")


@pytest.mark.parametrize("path", SAMPLES, ids=lambda path: path.stem)
def test_sheet_and_check_tell_the_same_of_every_lintel(path: Path) -> None:
    layout = lay(load_plan(path))
    for wall in layout.walls:
        told = " ".join(finding.figure for finding in check(layout) if finding.rule == "openings" and finding.wall == wall.wall.name)
        for opening in wall.wall.openings:
            if opening.lintel in ("block", "precast") and f"{opening.name}: bears" in told:
                left, right = (print_size(side, layout.job.measure) for side in find_bearings(wall, opening))
                assert f"{opening.name}: bears {left} and {right}" in told

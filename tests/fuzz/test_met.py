"""Plans that long runs met and that were dealt with wrongly once: each goes the whole way now."""

from __future__ import annotations

import pytest

from tests.fuzz.walk import walk_plan

HEAD = 'title = "Ferry landing"\nmeasure = "metric"\n'


def wall(name: str, length: str, courses: int, left: str = "outside corner", right: str = "outside corner") -> str:
    return f'[[wall]]\nname = "{name}"\nlength = "{length}"\ncourses = {courses}\nleft = "{left}"\nright = "{right}"\n'


def own_brick(height: str, thickness: str, length: str, joint: str, *more: str) -> str:
    sizes = f'height = "{height}"\nthickness = "{thickness}"\nlength = "{length}"\njoint = "{joint}"\n'
    return '[own_unit]\nkey = "quay"\nkind = "brick"\n' + sizes + "".join(f"{line}\n" for line in more)


MET = {
    # Third bond laps 135 mm of 406; a closed store may keep 186 all the same, which only the last attempt finds.
    "a lap over the bond's own": HEAD + '[masonry]\nunit = "block-8"\nbond = "third"\nleast_lap = "0.186 m"\n'
    + wall("Side 1", "2438.4 mm", 4) + wall("Side 2", "2844.8 mm", 4) + wall("Side 3", "2438.4 mm", 4) + wall("Side 4", "2844.8 mm", 4),
    # A quarter of 283 + 8 mm is 72.75; the moulded quarter is 64 + 8 = 72.
    "moulded quarters a hair short": HEAD + 'sizes = "nominal"\n' + own_brick("71 mm", "172 mm", "283 mm", "8 mm", 'quarter = "64 mm"')
    + '[masonry]\nunit = "quay"\n' + wall("Side 1", "2700 mm", 4, "end") + wall("Side 2", "2700 mm", 4, right="end"),
    "moulded quarters under the least piece": HEAD + 'sizes = "nominal"\n'
    + own_brick("71 mm", "172 mm", "283 mm", "8 mm", 'quarter = "64 mm"')
    + '[masonry]\nunit = "quay"\nleast_piece = "75 mm"\n' + wall("Side 1", "2700 mm", 4, "end") + wall("Side 2", "2700 mm", 4, right="end"),
}


@pytest.mark.parametrize("plan", MET.values(), ids=MET.keys())
def test_a_plan_once_met_goes_the_whole_way(plan: str) -> None:
    walked = walk_plan(plan, draw=False, advise=False)
    assert [fault for fault in walked.faults if ": took" not in fault] == [] and walked.pieces > 20 and not walked.broken

"""No place on the ground is taken twice: walls that run into others, cross, or stand in one another's piers."""

from __future__ import annotations

import pytest

from tests.plan.kiosk import mistakes_in
from tests.plan.test_abuts import HEAD, SIDE, STORE, told
from wallplan.plan.load import read_plan
from wallplan.planner import prove

# The store is 20 by 12 ft of 7 5/8 in walls: 12 ft less 2 x 7 5/8 in = 10 ft 8 3/4 in from face to face.
ON_LANDING = '[[wall]]\nname = "{}"\nlength = "{}"\nheight = "8\'"\n[[wall.abuts]]\nmeets = "Landing"\nat = "{}"\ntie = "control joint"\n'
OPEN = '[[wall]]\nname = "{}"\nlength = "{}"\nheight = "8\'"\nleft = "{}"\nright = "{}"\n'
FREE, OUT = "end", "outside corner"


@pytest.mark.parametrize(("length", "shorter"), [
    ("11'", '3 5/8"'),  # 3 1/4 in too long, and a joint of 3/8 in
    ("11' 2", '5 5/8"'),
    ("14'", "3'-3 5/8\""),  # right through the wall on the other side
])
def test_a_partition_that_runs_into_the_wall_on_the_other_side_is_told(length: str, shorter: str) -> None:
    assert told(HEAD + STORE + ON_LANDING.format("Stem", length, "8'")) == [
        f'wall "Stem": length: the wall runs into wall "Water"; make it {shorter} shorter at least, or move one of them']


def test_a_partition_that_ends_before_the_other_wall_is_laid_and_proven() -> None:
    from wallplan.layout.build import lay

    layout = lay(read_plan(HEAD + STORE + ON_LANDING.format("Stem", "8'", "8'"), "store.toml"))
    assert [finding for finding in prove(layout) if finding.rule == "in plan" and not finding.held] == []


def test_partitions_that_cross_are_told() -> None:
    west = ON_LANDING.format("Cross", "10'", "6'").replace('"Landing"', '"West"')
    assert told(HEAD + STORE + ON_LANDING.format("Stem", "8'", "8'") + west) == [
        # Cross runs from West, 20 ft less 7 5/8 in away from East; Stem stands 8 ft from Landing's left end, 7 5/8 in
        # thick. Cross may be 8 ft less 7 5/8 and 3/8 in long: 7 ft 4 in.
        'wall "Cross": length: the wall runs into wall "Stem"; make it 2\'-8" shorter at least, or move one of them']


def test_a_row_of_walls_that_comes_back_into_its_first_is_told() -> None:
    rows = [("Landing", "20'", FREE, OUT), ("East", "12'", OUT, OUT), ("Water", "16'", OUT, OUT), ("West", "12'", OUT, FREE)]
    text = HEAD + "".join(OPEN.format(*row) for row in rows)
    assert told(text) == [
        'wall "West": length: the wall runs into wall "Landing"; make it 8" shorter at least, or move one of them']
    shorter = "".join(OPEN.format(*row) for row in (*rows[:3], ("West", "11' 4", OUT, FREE)))
    assert read_plan(HEAD + shorter, "store.toml").walls[3].right_end == "end"


def test_piers_that_stand_in_other_walls_are_told() -> None:
    # Piers of Landing and West that both stand 16 in into the corner between them.
    pier = '[[wall.pier]]\nname = "{}"\nfrom_left = "{}"\nwidth = "15 5/8"\nprojects = "16"\n'
    landing = SIDE.format("Landing", "20'")
    text = HEAD + STORE.replace(landing, landing + pier.format("Post", "1'")) + pier.format("Prop", "9' 8 3/8")
    assert told(text) == ['wall "West", pier "Prop": from_left: stands where pier "Post" stands; move one of them']
    # A partition beside Landing, 1 ft into the store, would stand in Post.
    beside = ON_LANDING.format("Stem", "8'", "2'").replace('"Landing"', '"West"').replace('at = "2\'"', 'at = "9\'"')
    text = HEAD + STORE.replace(landing, landing + pier.format("Post", "4'").replace('"16"', '"32"')) + beside
    assert told(text) == ['wall "Landing", pier "Post": from_left: stands where wall "Stem" stands; move one of them']


def test_a_pier_as_wide_as_the_wall_is_told_too() -> None:
    narrow = SIDE.format("Landing", "20'") + '[[wall.pier]]\nfrom_left = "6\'"\nprojects = "32"\n'
    beside = ON_LANDING.format("Stem", "8'", "9'").replace('"Landing"', '"West"')
    # The pier ends 7 5/8 + 32 in = 3 ft 3 5/8 in behind Landing's face; Stem's face stands 12 ft less 9 ft 7 5/8 in from it.
    assert told(HEAD + STORE.replace(SIDE.format("Landing", "20'"), narrow) + beside) == [
        'wall "Landing", pier 1: from_left: the pier runs into wall "Stem"; make it 11 5/8" shorter at least, or move one of '
        "them"]


def test_each_is_told_once_and_on_the_line_of_its_length() -> None:
    text = HEAD + STORE + ON_LANDING.format("Stem", "14'", "8'")
    ((line, _, message),) = mistakes_in(text)
    assert text.splitlines()[line - 1].startswith('length = "14') and "Water" in message

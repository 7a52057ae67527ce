"""Bays between piers: in bricks, the centres at which they come out, and the row of bays over all, by hand."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest

from tests.jobs import MM, inches, make_job, make_masonry, make_opening, make_wall
from wallplan.advice.advise import advise
from wallplan.advice.bays import Bay, find_bays, offer_bays, tell_bricks
from wallplan.advice.fit import measure_fit
from wallplan.advice.fit_table import report_fit, report_fit_shortly
from wallplan.advice.tell import report_advice
from wallplan.plan.job import Job, Pier


def mm(value: str | int) -> int:
    return int(Fraction(value) * MM)


def garden_wall(centres: str, bays: int = 3, size: int = 440) -> Job:
    """A wall of UK brick with a pier at each end and so many bays, centres in millimetres, four courses high."""
    masonry = make_masonry("brick-uk")
    piers = tuple(Pier(f"pier {number + 1}", number * mm(centres), mm(size), mm("168.75"), mm("168.75"))
                  for number in range(bays + 1))
    wall = make_wall(bays * mm(centres) + mm(size), masonry.unit.height_of_courses(4), name="Garden wall")
    return make_job(masonry, replace(wall, piers=piers), measure="metric")


def the_bay(job: Job) -> Bay:
    (bay,) = find_bays(job.walls[0])
    return bay


def test_a_pier_wall_of_440_asked_at_three_metres_as_the_hand_has_it() -> None:
    # Situation of practice: piers of 440, asked 3.0 m centres. Between faces 2,560 = 11.33 bricks: 2,925 centres (11 bricks,
    # 2,485) or 3,037.5 (11 1/2); three bays overall 9,215.
    job = garden_wall("3000")
    bay = the_bay(job)
    assert (bay.size, bay.count, bay.centres) == (mm(2560), 3, mm(3000))
    assert tell_bricks(bay.size, 2, job.masonry) == "11.33 bricks"
    assert offer_bays(bay, job.masonry, "metric") == (
        "piers at 2925 mm centres (11 bricks, 2485 mm between faces): 3 bays 9215 mm over all",
        "piers at 3037.5 mm centres (11 1/2 bricks, 2597.5 mm between faces): 3 bays 9552.5 mm over all")


def test_lay_check_and_advise_all_tell_it() -> None:
    job = garden_wall("3000")
    for report in (report_fit(job, 200)["Garden wall"], report_advice(advise(job), (), 200)):
        told = " ".join(report.split())
        assert "3 bays of 11.33 bricks" in told
        assert "2925 mm centres (11 bricks, 2485 mm between faces): 3 bays 9215 mm over all" in told
        assert "3037.5 mm centres (11 1/2 bricks, 2597.5 mm between faces)" in told
    assert "3 bays of 11.33 bricks" in report_fit_shortly(job, 200)["Garden wall"]


@pytest.mark.parametrize(("centres", "bricks"), [("2925", "11 bricks"), ("3037.5", "11 1/2 bricks")])
def test_at_either_of_the_two_centres_every_bay_fits(centres: str, bricks: str) -> None:
    job = garden_wall(centres)
    assert tell_bricks(the_bay(job).size, 2, job.masonry) == bricks
    assert [size.taken for size in measure_fit(job) if size.what == "bay"] == ["fits"]


def test_bays_of_block_are_told_in_blocks_and_feet() -> None:
    # Piers of 16 in. at 10 ft centres: 120 - 15 5/8 = 104 3/8 in. between faces is 104 on the module, 6 1/2 blocks.
    masonry = make_masonry()
    piers = tuple(Pier(f"pier {number}", inches(at), inches("15 5/8"), 0, inches(8)) for number, at in ((1, 0), (2, 122)))
    wall = make_wall(inches(122) + inches("15 5/8"), masonry.unit.height_of_courses(4), name="Wall")
    bay = the_bay(make_job(masonry, replace(wall, piers=piers)))
    # 122 - 15 5/8 = 106 3/8: 106 on the module, 6.62 blocks; 104 and 112 fit.
    assert tell_bricks(bay.size, 2, masonry) == "6.62 blocks"
    assert offer_bays(bay, masonry, "feet") == (
        "piers at 10'-0\" centres (6 1/2 blocks, 8'-8 3/8\" between faces): 11'-3 5/8\" over both piers",
        "piers at 10'-8\" centres (7 blocks, 9'-4 3/8\" between faces): 11'-11 5/8\" over both piers")


def test_at_a_free_end_a_bay_has_one_joint_less() -> None:
    # Ten bricks and the joint before the pier: n x 225.
    masonry = make_masonry("brick-uk")
    wall = make_wall(mm(2465), masonry.unit.height_of_courses(4), name="Wall")
    job = make_job(masonry, replace(wall, piers=(Pier("pier", mm(2250), mm(215), 0, mm("112.5")),)), measure="metric")
    assert tell_bricks(the_bay(job).size, 1, masonry) == "10 bricks"
    assert [size.taken for size in measure_fit(job) if size.what == "bay"] == ["fits"]
    off = make_job(masonry, replace(wall, piers=(Pier("pier", mm(2200), mm(215), 0, mm("112.5")),)), measure="metric")
    bays = find_bays(off.walls[0])
    assert offer_bays(bays[0], masonry, "metric") == ("make it 2137.5 mm (9 1/2 bricks)", "make it 2250 mm (10 bricks)")


def test_what_a_gate_parts_is_no_bay_and_a_joint_at_a_face_parts_nothing() -> None:
    job = garden_wall("2925")
    wall = job.walls[0]
    gate = make_opening(mm(1000), mm(1900), 0, mm(300), "none", 0)
    assert [bay.count for bay in find_bays(replace(wall, openings=(gate,)))] == [2]
    assert [bay.count for bay in find_bays(replace(wall, control_joints=(mm(445),)))] == [3]
    assert [bay.count for bay in find_bays(replace(wall, control_joints=(mm(1500),)))] == [2]
    assert find_bays(replace(wall, piers=())) == ()

"""Sizes against module and coursing: off by how much, which joint takes it, what a mason would try first."""

import pytest

from tests.jobs import INCH, MM, inches, make_job, make_masonry, make_opening, make_wall, pump_house
from wallplan.advice.fit import Size, measure_fit, shared_joint
from wallplan.advice.fit_table import report_fit, report_fit_shortly
from wallplan.advice.remedies import find_remedies
from wallplan.plan.job import Job


def wall_of(length: int, height: int = 4 * 8 * INCH) -> Job:
    """A plain block wall."""
    return make_job(make_masonry(), make_wall(length, height))


def the(sizes: tuple[Size, ...], what: str) -> Size:
    """The one size of its kind."""
    (size,) = (size for size in sizes if size.what == what)
    return size


@pytest.mark.parametrize(("length", "off", "taken"), [
    ("119 5/8", 0, "fits"), ("111 5/8", 0, "fits"),
    # 7 1/2 blocks have 7 joints: 7/16 in. at 1/16 in. each go unnoticed, 7/8 in. at 1/8 in. are noticed.
    ("120 1/16", inches("7/16"), "unnoticed"), ("120 1/8", inches("1/2"), "noticed"), ("120 1/2", inches("7/8"), "noticed"),
    ("120 9/16", inches("15/16"), "broken"), ("118 3/4", -inches("7/8"), "noticed"), ("117", -inches("2 5/8"), "broken"),
])
def test_what_joints_take_of_a_length(length: str, off: int, taken: str) -> None:
    size = the(measure_fit(wall_of(inches(length))), "length")
    assert (size.off, size.taken) == (off, taken)


def test_a_joint_that_the_plan_does_not_allow_takes_nothing() -> None:
    job = make_job(make_masonry(joints_move=False), make_wall(inches("120 1/16"), 32 * INCH))
    assert the(measure_fit(job), "length").taken == "broken"


@pytest.mark.parametrize(("length", "taken"), [("120 1/2", "noticed"), ("120 15/16", "broken")])
def test_joints_that_the_plan_lets_gape_are_poor_work_over_an_eighth(length: str, taken: str) -> None:
    # Joints of up to 3/4 in. allowed: 7/8 in. over 7 joints is 1/8 in. each, 1 5/16 in. is 3/16 in. each.
    job = make_job(make_masonry(widest_joint=inches("3/4")), make_wall(inches(length), 32 * INCH))
    assert the(measure_fit(job), "length").taken == taken


def test_an_odd_number_of_halves_is_reverse_bond_and_wants_no_remedy() -> None:
    odd, even = (the(measure_fit(wall_of(inches(length))), "length") for length in ("119 5/8", "111 5/8"))
    assert (odd.odd, even.odd) == (True, False)
    assert find_remedies(odd, wall_of(inches("119 5/8"))) == ()


def test_metric_limits_are_a_millimetre_and_a_half_and_three() -> None:
    for over, taken in ((6, "unnoticed"), (7, "noticed"), (12, "noticed"), (13, "broken")):
        job = make_job(make_masonry("brick-uk"), make_wall((5 * 225 - 10 + over) * MM, 300 * MM), measure="metric")
        assert the(measure_fit(job), "length").taken == taken


def test_remedies_come_in_the_order_in_which_they_are_tried() -> None:
    job = wall_of(inches("120 1/8"))
    size = the(measure_fit(job), "length")
    # 1/2 in. over 7 joints: 3/8 + 1/14 in.
    assert find_remedies(size, job) == ("make it 9'-11 5/8\"", '7 head joints of 0.446", and it shows')
    assert shared_joint(job.masonry, size) == inches("3/8") + inches("1/2") // 7
    far = wall_of(inches("117"))
    assert find_remedies(the(measure_fit(far), "length"), far) == ("make it 9'-11 5/8\"", "cut in the middle")


def test_a_wall_on_the_module_fits_everywhere_and_gets_one_line() -> None:
    job = pump_house()
    assert {size.taken for size in measure_fit(job)} == {"fits"}
    # Length, height, two widths, two heads, one sill, three piers beside and between, two beside one opening alone.
    assert len(measure_fit(job)) >= 9
    assert report_fit(job, 80) == {"Landing": "Fit: every length, opening, sill and head stands on the module."}


def test_levels_are_measured_from_the_nearest_course_line_and_a_half_high_unit_counts() -> None:
    def levels(bottom: int, top: int) -> list[int]:
        opening = make_opening(inches("47 5/8"), inches("88"), bottom, top)
        sizes = measure_fit(make_job(make_masonry(), make_wall(inches("239 5/8"), 104 * INCH, [opening])))
        return [size.off for size in sizes if size.what in ("sill", "head")]

    assert levels(40 * INCH, 88 * INCH) == [0, 0]
    assert levels(41 * INCH, 86 * INCH) == [INCH, -2 * INCH]
    assert levels(36 * INCH, 88 * INCH) == [0, 0]


def test_levels_are_measured_from_the_lines_that_a_ripped_first_course_leaves() -> None:
    # 7 ft 10 in. of 8 in. courses: the first rises 6 in., so the lines are at 6, 14 ... 78 and 86 in.: a head at 78 in. is on
    # one of them and a sill at 40 in. is 2 in. over another.
    openings = [make_opening(inches("47 5/8"), inches(88), 0, inches(78)),
                make_opening(inches("127 5/8"), inches(168), inches(40), inches(78), name="Hatch")]
    job = make_job(make_masonry(), make_wall(inches("215 5/8"), inches(94), openings))
    off = {(size.what, size.name): size.off for size in measure_fit(job) if size.taken != "fits"}
    assert off == {("sill", "Hatch"): inches(2), ("height", "Landing"): inches(-2)}


def test_a_table_within_the_terminal_names_each_misfit_once() -> None:
    opening = make_opening(inches("46"), inches("88"), 3 * INCH, inches("87"), name="Ticket window")
    job = make_job(make_masonry(), make_wall(inches("238"), 104 * INCH, [opening]))
    told = report_fit(job, 80)["Landing"]
    assert max(map(len, told.splitlines())) <= 80
    misfits = [size for size in measure_fit(job) if size.taken != "fits"]
    assert told.startswith(f"Fit: {len(misfits)} of ")
    assert told.count("Ticket window") == sum("Ticket window" in size.name for size in misfits)


def test_check_is_told_shortly_of_what_is_off_and_of_nothing_that_fits() -> None:
    assert report_fit_shortly(pump_house(), 80) == {}
    told = report_fit_shortly(wall_of(inches("117")), 80)["Landing"]
    assert told.splitlines()[0] == "  off    length, 9'-9\": 2 5/8\" under; no joint takes it"
    assert max(map(len, told.splitlines())) <= 80 and "make it" not in told

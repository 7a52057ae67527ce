"""Piers in walls with steps and gables: from which course to which they stand, by pencil, and that every rule is held."""

from __future__ import annotations

import random

import pytest

from tests.jobs import broken
from tests.long_run import LONG
from wallplan.findings import PlanError
from wallplan.layout.build import lay
from wallplan.layout.model import Layout, PierLayout, WallLayout
from wallplan.plan.load import read_plan
from wallplan.rules.check import check

TOP = 'title = "Landing terrace"\nmeasure = "{measure}"\nsizes = "nominal"\nmasonry.unit = "{unit}"\n[[wall]]\nname = "Terrace"\n'
WIDE = "width = 16\ndepth = 16\n"


def text(body: str, unit: str = "block-8", measure: str = "feet") -> str:
    return TOP.format(unit=unit, measure=measure) + body


def lay_terrace(body: str, unit: str = "block-8", measure: str = "feet") -> Layout:
    return lay(read_plan(text(body, unit, measure), "terrace.toml"))


def step(at: str, **rise: int) -> str:
    return f'[[wall.step]]\nat = "{at}"\n' + "".join(f"{key} = {value}\n" for key, value in rise.items())


def pier(at: str, more: str = WIDE) -> str:
    return f'[[wall.pier]]\nfrom_left = "{at}"\n{more}'


def courses(laid: PierLayout) -> tuple[int, int]:
    return laid.laid[0].number, laid.laid[-1].number


def own_courses(stem: WallLayout) -> list[int]:
    return [course.number for course in stem.courses if course.pieces]


def test_a_pier_begins_on_its_own_footing_and_ends_at_the_top_where_it_stands() -> None:
    # 8 ft are twelve courses; the footing rises two courses at 10 ft 8, the top two at 16 ft: courses 1 to 12, 3 to 14.
    layout = lay_terrace('length = "32\'"\nheight = "8\'"\n' + step("10' 8", up=16) + '[[wall.top_step]]\nat = "16\'"\nup = 16\n'
                         + pier("4'") + pier("20'"))
    assert broken(check(layout)) == []
    assert [courses(one) for one in layout.walls[0].piers] == [(1, 12), (3, 14)]
    # Two block flush with the wall's face and two behind it, or two through the wall: 16 x 16 in. are two block a course.
    assert [sum(len(course.pieces) for course in one.laid) for one in layout.walls[0].piers] == [6 * 1 + 6 * 2] * 2


def test_astride_a_step_of_the_top_it_ends_with_the_lower_side_and_the_wall_goes_on_over_it() -> None:
    layout = lay_terrace('length = "24\'"\nheight = "8\'"\n[[wall.top_step]]\nat = "12\'"\nup = 16\n' + pier("11' 4"))
    assert broken(check(layout)) == []
    assert courses(layout.walls[0].piers[0]) == (1, 12)
    assert len(layout.walls[0].courses) == 14


@pytest.mark.parametrize("more", [WIDE, ""])
def test_under_a_slope_it_ends_with_the_last_whole_course_that_leaves_a_piece_beside_it(more: str) -> None:
    # 4 in 12 over 8 ft: a joint and the least piece, 4 3/8 in., beside a pier at 4 ft the slope has risen 14 1/2 in.: one
    # course over the eaves' twelve.
    layout = lay_terrace('length = "32\'"\nheight = "8\'"\n[[wall.gable]]\nrise = 64\n' + pier("4'", more))
    assert broken(check(layout)) == []
    numbers = [*range(1, 14)]
    if more:
        assert courses(layout.walls[0].piers[0]) == (1, 13)
    else:
        assert own_courses(layout.walls[1]) == numbers


def test_a_pier_as_thick_as_its_wall_stands_on_the_footing_beneath_it() -> None:
    layout = lay_terrace('length = "24\'"\nheight = "6\'"\n' + step("10' 8", up=16) + pier("16'", ""))
    assert broken(check(layout)) == []
    assert own_courses(layout.walls[1]) == [*range(3, 10)]
    parts = [course.number for course in layout.walls[0].courses if any(piece.of == "Terrace, pier 1" for piece in course.pieces)]
    assert parts in ([4, 6, 8], [3, 5, 7, 9])


def test_british_brick_with_a_pier_at_a_gables_wall_end() -> None:
    # 2.4 m are 32 courses to the eaves; at the gable's foot the pier ends there.
    layout = lay_terrace("length = 4500\nheight = 2400\n[[wall.gable]]\nrise = 1500\n[[wall.pier]]\nfrom_left = 0\nwidth = 450\ndepth = 450\n",
                         "brick-uk", "metric")
    assert broken(check(layout)) == []
    assert courses(layout.walls[0].piers[0]) == (1, 32)


def mistakes(body: str) -> list[str]:
    with pytest.raises(PlanError) as told:
        read_plan(text(body), "terrace.toml")
    return [f"{one.place}: {one.message}" for one in told.value.mistakes]


def test_astride_a_step_of_the_footing_is_refused_with_where_it_may_stand() -> None:
    wall = 'length = "24\'"\nheight = "6\'"\n' + step("12'", up=16)
    assert mistakes(wall + pier("11' 4")) == [
        'wall "Terrace", pier 1: from_left: from 11\'-4" to 12\'-7 5/8" it stands astride the step of the footing of wall '
        '"Terrace" at 11\'-11 5/8"; write 10\'-8" or less, or 11\'-11 5/8" or more, or move the step']
    for place in ("10' 8", "12'"):
        assert broken(check(lay_terrace(wall + pier(place)))) == []
    assert "astride" in mistakes(wall + pier("11' 8", ""))[0]


def test_a_sliver_between_a_pier_and_a_step_is_refused() -> None:
    assert mistakes('length = "24\'"\nheight = "6\'"\n' + step("12'", up=16) + pier("10' 6")) == [
        'wall "Terrace", pier 1: from_left: 2" of wall are left between it and the step of the footing at 11\'-11 5/8"; leave '
        'none, or 4 3/8" at least']


def random_terrace(number: int) -> str:
    chance = random.Random(f"pier on steps {number}")
    unit, module, gauge, measure = chance.choice([("block-8", 16, 8, "feet"), ("brick-uk", 225, 300, "metric"),
                                                  ("block-uk-215", 450, 225, "metric"), ("block-ca-190", 400, 200, "metric")])
    long = chance.randint(10, 24)
    body = f"length = {long * module}\nheight = {chance.randint(6, 12) * gauge}\n"
    kind = chance.choice(["step", "top", "gable", "lean-to", "step and gable"])
    if "step" in kind:
        body += f"[[wall.step]]\nat = {chance.randint(4, long // 2) * module}\n{chance.choice(['up', 'down'])} = {chance.randint(1, 2) * gauge}\n"
    if kind == "top":
        body += f"[[wall.top_step]]\nat = {chance.randint(4, long - 4) * module}\nup = {chance.randint(1, 2) * gauge}\n"
    if "gable" in kind or kind == "lean-to":
        body += f"[[wall.gable]]\nrise = {chance.randint(2, 7) * gauge}\n" + ("ridge = 0\n" if kind == "lean-to" else "")
    size = chance.choice(["", f"width = {module}\ndepth = {module}\n", f"width = {module}\ndepth = {2 * module}\nface = \"both\"\n"])
    return text(body + f"[[wall.pier]]\nfrom_left = {chance.randint(2, long - 3) * module}\n{size}", unit, measure)


@pytest.mark.parametrize("first", range(0, 400 if LONG else 24, 8))
def test_random_piers_on_steps_and_under_gables_keep_every_rule(first: int) -> None:
    for number in range(first, first + 8):
        try:
            layout = lay(read_plan(random_terrace(number), "terrace.toml"))
        except PlanError as error:
            assert "step of the" in str(error), number
            continue
        assert [f"{one.rule}: {one.where}: {one.figure}" for one in broken(check(layout))] == [], number

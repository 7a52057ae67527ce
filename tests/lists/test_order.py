"""The order: counted piece by piece, every sum followed by a pencil, and nothing lost between layout and yard."""

from __future__ import annotations

import csv
import io
import re
from collections import Counter
from fractions import Fraction
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.jobs import INCH, make_job, make_masonry, make_opening, make_wall
from tests.lists.pencil import follow, round_half_up
from tests.lists.walls import BRICK, PIER, lay_text
from tests.long_run import examples
from tests.strategies import laid_jobs
from wallplan.layout.build import lay
from wallplan.layout.model import Layout, Piece
from wallplan.lists.order.compose import list_order, total_cost
from wallplan.lists.order.line import Line, Order
from wallplan.lists.order.report import report_difference, report_order, write_order_csv
from wallplan.lists.order.steel import find_runs
from wallplan.plan.job import Job
from wallplan.plan.load import load_plan

ROOT = Path(__file__).parents[2]
SAMPLES = sorted((ROOT / "samples").glob("*.toml"))

RIPPED = """
title = "Rips"
measure = "metric"
[masonry]
unit = "block-ca-190"
[[wall]]
name = "Front"
length = 4790
height = 2630
  [[wall.opening]]
  name = "Light"
  from_left = 1230
  width = 910
  sill = 870
  height = 690
  lintel = "steel"
"""


def layouts() -> list[tuple[str, Layout]]:
    """Every sample, and walls that rip and cut."""
    return [*((path.stem, lay(load_plan(path))) for path in SAMPLES), ("ripped", lay_text(RIPPED)), ("brick", lay_text(BRICK))]


ORDERS = [pytest.param(layout, list_order(layout), id=name) for name, layout in layouts()]
IN_ONE_LEAF = [one for one in ORDERS if not one.values[0].job.masonry.one_brick]  # type: ignore[union-attr]
"""Those but one-brick walls, whose pencil is in ``tests/published/test_common_practice.py``."""


def pieces(layout: Layout) -> list[Piece]:
    """Every piece that a wall counts, front and back, and those of its piers."""
    return [piece for wall in layout.walls for course in wall.courses
            for piece in (*(brick for brick in course.bricks if brick.of == wall.wall.name), *wall.pier_pieces(course.number))]


def unit_lines(order: Order) -> list[Line]:
    """Lines of units but for precast lintels."""
    return [line for line in order.lines if line.group == "units" and not line.item.startswith("precast")]


@pytest.mark.parametrize(("layout", "order"), ORDERS)
def test_every_line_is_reckoned_again_from_its_why(layout: Layout, order: Order) -> None:
    for line in order.lines:
        reached = follow(line.why)
        counted = {Fraction(n) for n in re.findall(r"(?:laid whole|counted in the layout) (\d+)", line.why)}
        assert line.net in reached | counted, line
        assert line.order in reached | counted, line
        assert line.spare in reached | {line.order - line.net if line.spare == 0 else None}, line
        assert line.spare >= 0 and line.order == line.net + line.spare


@pytest.mark.parametrize(("layout", "order"), IN_ONE_LEAF)
def test_what_the_sums_begin_with_is_in_the_layout(layout: Layout, order: Order) -> None:
    """The figures that no sum leads to: whole units, and lengths of courses, counted here once more."""
    unit, joint = layout.job.masonry.unit, layout.job.masonry.joint
    whole = {piece.name for piece in unit.pieces if not piece.sawn}
    laid = Counter(
        (piece.piece, piece.shape, piece.height == unit.half_high) for piece in pieces(layout)
        if piece.piece in whole and piece.shape != "precast")
    told = {line.item: int(re.search(r"laid whole (\d+)", line.why)[1]) for line in unit_lines(order)}  # type: ignore[index]
    for (name, shape, half_high), count in laid.items():
        item = f"{unit.key} {'half-high ' if half_high else ''}{name}{'' if shape == 'stretcher' else f', {shape}'}"
        assert told.pop(item) == count
    assert not any(told.values())
    step = INCH if layout.job.measure == "feet" else 960
    run = sum((Fraction(piece.length + joint, step) for piece in pieces(layout)), Fraction(0))
    mixed = next(line for line in order.lines if line.item == "mortar, mixed")
    assert sum(map(Fraction, re.findall(r"([\d.]+) (?:in|mm) of courses", mixed.why))) == round_half_up(run, 3)


@pytest.mark.parametrize(("layout", "order"), IN_ONE_LEAF)
def test_laid_sawn_off_kerf_and_spare_are_what_is_ordered_to_the_tick(layout: Layout, order: Order) -> None:
    """In ticks of face, square: pieces laid + offcuts + kerf + spare units = units ordered."""
    unit = layout.job.masonry.unit
    lengths = {piece.name: piece.length for piece in unit.pieces}

    def face(line: Line) -> int:
        """One unit of a line."""
        name = next(name for name in sorted(lengths, key=len, reverse=True) if name in line.item.split(", ")[0].split()[-1])
        return lengths[name] * ((unit.half_high or 0) if "half-high" in line.item else unit.height)

    ordered = sum(line.order * face(line) for line in unit_lines(order))
    spare = sum(line.spare * face(line) for line in unit_lines(order))
    raked = {piece.mark for piece in pieces(layout) if piece.rake}
    laid = sum(piece.length * piece.height for piece in pieces(layout) if piece.shape != "precast" and not piece.rake)
    # Of a raked cut, or a pair of them, the rectangle that it is sawn from.
    laid += sum(sort.length * sort.count * unit.height for sawing in order.sawings for sort in sawing.nesting.sorts
                if sort.name.split(" + ")[0] in raked)
    lost = 0
    for sawing in order.sawings:
        height = unit.half_high or 0 if sawing.half_high else unit.height
        for sawn in sawing.sawn:
            assert sawn.kerf <= len(sawn.cuts) * layout.job.order.kerf and sawn.offcut >= 0
            lost += sawn.times * (sawn.kerf + sawn.offcut) * (height if sawing.rip is None else sawing.rip)
        if sawing.rip is not None:
            for ripped in sawing.rip_units():
                assert ripped.units * sawing.strips >= ripped.strips - ripped.reused
                kerfs = (sawing.strips - 1) * layout.job.order.kerf
                assert sawing.strips == 1 or sawing.strips * sawing.rip + kerfs <= unit.height
                lost += unit.length * (ripped.units * unit.height - ripped.strips * sawing.rip)
    assert laid + lost + spare == ordered


def test_cuts_share_units_and_their_patterns_are_told() -> None:
    # Four courses of 1,015 mm in UK brick, joints 10: cuts and bats, sawn from as few bricks as hold them.
    order = list_order(lay_text(BRICK))
    (line,) = unit_lines(order)
    sawing = order.sawings[0].nesting
    assert sawing.proven and sawing.units == sum(times for _, times in sawing.patterns)
    assert f"= {line.net}" in line.why and "sawn: " in line.why


def test_the_pier_is_counted_by_hand() -> None:
    # Six courses of 38 in.: a half, a 14 in. cut and a full. 14 in. leaves 1 1/2 in.: nothing else comes of that block.
    lines = {line.item: line for line in list_order(lay_text(PIER)).lines}
    assert {item: (line.net, line.spare, line.order) for item, line in lines.items() if line.group == "units"} == {
        "block-8 full": (6, 1, 7), "block-8 full, corner": (6, 1, 7), "block-8 half, corner": (6, 1, 7)}
    # 7 5/8 + 14 + 15 5/8 and a joint each are 38 3/8 in., six times over.
    assert lines["mortar, mixed"].why.startswith("230.25 in of courses / 16 in = 14.4 block")


def with_order(text: str, wishes: str) -> Order:
    """The order of a plan with more below it."""
    return list_order(lay_text(f"{text}\n{wishes}"))


def test_pallets_prices_and_a_line_s_own_spare() -> None:
    order = with_order(PIER, """
[order]
currency = "USD"
[[order.item]]
name = "block-8 full"
pallet = 90
price = 2.5
[[order.item]]
name = "block-8 full, corner"
spare = 50
[[order.item]]
name = "block-9 full"
""")
    full, corner = (next(line for line in order.lines if line.item == item) for item in ("block-8 full", "block-8 full, corner"))
    assert (full.net, full.spare, full.order, full.cost) == (6, 84, 90, 225)
    assert (corner.net, corner.spare) == (6, 3)
    assert {full.order, full.spare} <= follow(full.why)
    assert total_cost(order) == 225
    assert any(note.endswith('"block-9 full", but the order has no such line. Nearest: "block-8 full".') for note in order.notes)
    rows = list(csv.reader(io.StringIO(write_order_csv(order), newline="")))
    assert rows[0][-2:] == ["price of one (USD)", "cost"] and rows[1][-2:] == ["2.50", "225.00"]
    assert "Priced lines together: 225.00 USD" in report_order(order, "feet", 100)


def test_the_csv_is_rfc_4180_and_json_has_the_keys_that_were_promised() -> None:
    order = list_order(lay_text(PIER))
    text = write_order_csv(order)
    assert text.endswith("\r\n") and "\n" not in text.replace("\r\n", "")
    rows = list(csv.DictReader(io.StringIO(text, newline="")))
    told = order.as_json()
    assert told["wallplan_order"] == 1
    lines = told["lines"]
    assert isinstance(lines, list) and len(lines) == len(rows)
    for line, row in zip(lines, rows, strict=True):
        assert list(line) == ["group", "item", "measure", "net", "spare", "order", "why"]
        assert [row["group"], row["item"], row["why"]] == [line["group"], line["item"], line["why"]]
        assert Fraction(row["order (in measure)"]) == Fraction(str(line["order"]))


def test_two_orders_side_by_side() -> None:
    first, second = list_order(lay_text(PIER)), list_order(lay_text(PIER.replace("4'", "5' 4")))
    told = report_difference(first, second, 100)
    # Eight courses in place of six: two fulls more, and a spare of 5 % is one either way.
    assert re.search(r"block-8 full +7 +9 +\+2 +each", told)
    assert not re.search(r"\+[1-9]", report_difference(first, first, 100))
    # 5 ft 4 in. are over a day's rise.
    assert re.search(r"days, at the least output +1 +2 +\+1 +days", told)
    priced = [with_order(plan, "[order]\ncurrency = 'USD'\n[[order.item]]\nname = 'block-8 full'\nprice = 2.5\n")
              for plan in (PIER, PIER.replace("4'", "5' 4"))]
    assert re.search(r"priced lines together +17.5 +22.5 +\+5 +USD", report_difference(*priced, 100))


def total_units(order: Order) -> Fraction:
    """All units of an order."""
    return sum((line.order for line in unit_lines(order)), Fraction(0))


def lay_of(job: Job) -> Order:
    """The order of a job."""
    return list_order(lay(job))


@given(laid_jobs(), laid_jobs())
@settings(max_examples=examples(12))
def test_one_wall_more_never_orders_less(first: Job, second: Job) -> None:
    wall = second.walls[0]
    more = make_job(first.masonry, *first.walls, make_wall(wall.length, wall.height, name="More"), measure=first.measure)
    before, after = lay_of(first), lay_of(more)
    assert total_units(before) < total_units(after)
    smaller, larger = ({line.item: line.order for line in order.lines if line.group in ("mortar", "grout")}
                       for order in (before, after))
    assert all(larger[item] >= ordered for item, ordered in smaller.items())


@given(st.integers(2, 12), st.sampled_from(["block-8", "brick-uk", "brick-modular"]))
@settings(max_examples=examples(20))
def test_a_course_more_never_orders_less(courses: int, key: str) -> None:
    masonry = make_masonry(key)
    low, high = (lay_of(make_job(masonry, make_wall(7 * masonry.module - masonry.joint, masonry.unit.height_of_courses(n))))
                 for n in (courses, courses + 1))
    assert total_units(low) < total_units(high)
    assert all(one.order <= two.order for one, two in zip(low.lines, high.lines, strict=True) if one.group == "mortar")


def net_area(layout: Layout) -> int:
    """Face of all courses between ends and jambs, joints with it, in ticks square."""
    widest = max(layout.job.masonry.widest_joint, *(max(wall.joints) for wall in layout.walls))
    return sum((course.top - course.bottom) * run for wall in layout.walls for course in wall.courses
               for run in find_runs(course.pieces, widest))


@given(st.sampled_from(["block-8", "brick-uk", "brick-modular", "block-ca-190"]), st.integers(0, 24), st.integers(0, 24))
@settings(max_examples=examples(40))
def test_moving_an_opening_never_changes_the_net_area(key: str, one: int, other: int) -> None:
    """By any sixth of a unit; the area is the wall's less the opening's."""
    masonry = make_masonry(key)
    module, joint, gauge = masonry.module, masonry.joint, masonry.unit.height_of_courses
    areas = []
    for place in (one, other):
        left = 2 * module - joint + place * module // 6
        opening = make_opening(left, left + 2 * module + joint, gauge(1), gauge(4), "none")
        job = make_job(masonry, make_wall(10 * module - joint, gauge(6), [opening]))
        areas.append(net_area(lay(job)))
    rise = gauge(4) - gauge(1)
    assert areas[0] == areas[1] == (10 * module - joint) * gauge(6) - (2 * module + joint) * rise


@given(laid_jobs(on_coursing=False))
@settings(max_examples=examples(40))
def test_no_spare_is_negative_and_every_sum_holds(job: Job) -> None:
    for line in lay_of(job).lines:
        assert line.net >= 0 and line.spare >= 0
        assert line.order in follow(line.why) | {Fraction(n) for n in re.findall(r"in the layout (\d+)", line.why)}


def test_mortar_of_a_one_brick_wall_fills_beds_head_joints_and_what_lies_between_stretchers() -> None:
    """Flemish bond, 14 stretchers and 13 headers face odd courses, 14 headers, 13 stretchers and 2 closers of 46.25 even ones.

    By the rule for solid units (BIA Technical Note 10) a stretcher takes 225 x 102.5 x 10 and 65 x 102.5 x 10, a header
    112.5 x 215 x 10 and 65 x 215 x 10, a closer 56.25 x 215 x 10 and as much; between two stretchers 215 x 65 x 10 more.
    """
    layout = lay_text("""
        title = "Quay"
        measure = "metric"
        [masonry]
        unit = "brick-uk"
        bond = "flemish"
        [[wall]]
        name = "Front"
        length = 4602.5
        courses = 12
    """)
    stretchers, headers, closers = 6 * 2 * (14 + 13), 6 * (13 + 14), 6 * 2
    litres = (stretchers * (225 + 65) * 102.5 + (headers * (112.5 + 65) + closers * (56.25 + 65)) * 215
              + stretchers / 2 * 215 * 65) * 10 / 1e6
    mixed = next(line for line in list_order(layout).lines if line.item == "mortar, mixed")
    assert abs(float(mixed.net) - litres) < 0.03

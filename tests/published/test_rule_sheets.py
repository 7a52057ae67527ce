"""Rules of thumb: five block suppliers' rule sheets (A to E, unnamed) and a trade book. The lowest authority, and they disagree.

Block and brick by the wall, bags and sand to a hundred or a thousand, grout of a block, joint reinforcement by the block. What
the order says must cover all that it says it covers.
"""

from __future__ import annotations

import re
from fractions import Fraction

import pytest

from tests.jobs import MM, count_units
from tests.lists.pencil import follow
from tests.lists.walls import count_whole, lay_text, line_of, plan_wall, take_off
from wallplan.catalogue.load import find_unit
from wallplan.lists.order.compose import list_order
from wallplan.lists.order.figures import FEET
from wallplan.lists.order.grout import measure_void
from wallplan.lists.order.mortar import YIELD_RULES

MASONRY_CEMENT = "[order.mix]\nmasonry_cement = 1\nsand = 3\n"


@pytest.mark.parametrize(("length", "height", "block"), [("120'", "24'", 3240), ("100'", "6'", 675)])
def test_block_of_a_wall(length: str, height: str, block: int) -> None:
    # A: 120 by 24 ft wall, 3,240; another: a 6 by 100 ft fence, 675.
    assert count_units(lay_text(plan_wall(length, height))) == count_whole(take_off(length, height)) == block


@pytest.mark.parametrize(("key", "least"), [("brick-modular", "6.75"), ("brick-standard", "6.4")])
def test_7_brick_to_the_sq_ft_cover_the_count_without_halving_it(key: str, least: str) -> None:
    # Suppliers: 7 to the sq ft, with cuts and waste; a trade book 6.75 (modular, no waste). Counted: 6.75 and, for standard
    # brick of 8 3/8 in. on the same courses, 6.45.
    layout = lay_text(plan_wall("40'", "8'", unit=key).replace('unit = "brick-standard"', 'unit = "brick-standard"\njoint = "3/8"'))
    pieces = sum((Fraction(piece.length + layout.job.masonry.joint, layout.job.masonry.module)
                  for course in layout.walls[0].courses for piece in course.pieces), Fraction(0))
    assert Fraction(least) <= pieces / 320 <= Fraction("7")
    order = list_order(layout)
    bought = sum((line.order / (2 if "half" in line.item else 1) for line in order.lines if line.group == "units"), Fraction(0))
    assert bought / 320 <= Fraction("7.2")


def test_large_wall_sand_and_bags_lie_where_sheet_a_puts_them() -> None:
    # A: 120 x 24 ft, 3,240 block: 11.34 tons of sand (3.5 to 1,000) and 98 bags of masonry cement (30 to 1,000).
    order = take_off("120'", "24'", MASONRY_CEMENT)
    sand, bags = line_of(order, "sand"), line_of(order, "masonry cement")
    assert sand.net * 80 / 2000 <= Fraction("11.34") <= sand.order * 80 / 2000
    assert bags.measure == "bag of 70 lb" and bags.net <= 98 <= bags.order


# Mortar to 100 block of 8 x 16 in. face, in cu ft, as each rule comes out with sand at 80 lb to the cu ft.
MORTAR = {
    "trade book: 3 cu ft of sand lay 35 block": Fraction(300, 35),
    "A: 3.5 tons of sand to 1,000": Fraction(7000, 80) / 10,
    "B: 800 lb of sand to 100": Fraction(800, 80),
    "B again: a ton of sand to 250": Fraction(2000, 80) / Fraction("2.5"),
    "C: 600 lb of sand to 100": Fraction(600, 80),
    "D: 9 bags to 1 cu yd of sand, 35 block a bag": Fraction(27, 9) / 35 * 100,
    "E: a cu yd of sand to 7 bags, 40 block a bag": Fraction(27, 7) / 40 * 100,
}


@pytest.mark.parametrize("rule", MORTAR)
def test_low_and_high_of_the_order_cover_each_rule(rule: str) -> None:
    # 20 ft by 10 ft: 225 block.
    mortar = line_of(take_off("20'", "10'"), "mortar")
    assert mortar.net - Fraction("0.01") <= MORTAR[rule] * Fraction("2.25") <= mortar.order  # 16.875 is printed 16.88


def test_low_and_high_are_rules_that_stand_in_a_source_and_not_wider() -> None:
    figures = [rule.per_100 for rule in YIELD_RULES]
    assert figures == sorted(figures)
    assert (figures[0], figures[-1]) == (min(MORTAR.values()), max(MORTAR.values()))


# Bags of masonry cement: 30 to 1,000 (A), 2 1/2 and 3 to 100 (B, C), 35 and 40 block to a bag (D, E), the trade book's 35.
BAGS = [Fraction(30, 1000), Fraction(5, 200), Fraction(3, 100), Fraction(1, 35), Fraction(1, 40)]


@pytest.mark.parametrize("length", [20, 120])
def test_bags_of_masonry_cement_cover_every_rule(length: int) -> None:
    bags = line_of(take_off(f"{length}'", "24'", MASONRY_CEMENT), "masonry cement")
    block = length * 27
    assert {bags.net, bags.order} <= follow(bags.why)
    assert all(bags.net <= block * rule <= bags.order for rule in BAGS)
    assert bags.order <= block / Fraction(28) + 1  # 28 block to a bag is the most that any source asks for


# Bags of masonry cement to 1,000 brick: 8 1/2 (A), 7 (B and C), 143 brick a bag (B), 135 modular brick a bag (trade book).
BRICK_BAGS = [Fraction("8.5"), Fraction(7), Fraction(1000, 143), Fraction(1000, 135)]


def test_an_order_of_brick_says_that_the_rules_ask_for_twice_its_mortar() -> None:
    # Sand: a ton to 1,000 brick (A and B), 1,500 lb (C). By geometry, full joints and 20 % of waste, an order has half of both:
    # the rules have cores, frogs, furrows and droppings in them. The order tells them, and how to follow them.
    order = list_order(lay_text(plan_wall("40'", "8'", MASONRY_CEMENT, unit="brick-modular")))
    thousand = count_whole(order) / 1000
    bags, pounds = line_of(order, "masonry cement").order / thousand, line_of(order, "sand").order * 80 / thousand
    assert bags < min(BRICK_BAGS) and pounds < 1500
    (told,) = (note for note in order.notes if "to 1,000 brick" in note)
    assert "7 to 8.5 bags of masonry cement" in told and "1,500 to 2,000 lb of sand" in told and "mortar_waste" in told


def test_a_waste_of_100_percent_follows_the_rules_for_brick() -> None:
    more = MASONRY_CEMENT.replace("[order.mix]", "[order]\nmortar_waste = 100\n[order.mix]")
    order = list_order(lay_text(plan_wall("40'", "8'", more, unit="brick-modular")))
    thousand = count_whole(order) / 1000
    assert line_of(order, "sand").order * 80 / thousand > 1400
    assert not any("to 1,000 brick" in note for note in order.notes)


def test_joint_reinforcement_of_the_large_wall() -> None:
    # A: 3,240 block x 1.34 / 2 = 2,171 ft at 16 in. (exactly 2,160): by area, so a row too many, on the wall's top.
    line = line_of(take_off("120'", "24'", '[order.steel]\nreinforcement_courses = 2\n'), "joint reinforcement")
    found = re.search(r"under (\d+) courses, every 2 of a wall, parted at control joints: ([\d.]+) ft", line.why)
    assert found and int(found[1]) == 36 // 2 - 1
    run = Fraction(found[2])
    assert abs(run + 120 - 2160) <= 1
    assert abs(run * 18 / 17 - 2171) <= Fraction(2171) / 100
    # 120 ft of 10 ft pieces lapped 6 in.: 1 + 11 x 9 1/2 ft reach 114 1/2, so 13 pieces and 12 laps, 17 times over.
    assert f"laps {12 * 17} x 0.5 = {6 * 17}" in line.why


def test_joint_reinforcement_at_24_in() -> None:
    # A: block x 1.34 / 3 at 24 in.: 3,240 x 1.34 / 3 = 1,447 ft by area; counted, one row fewer: under every third of 36.
    line = line_of(take_off("120'", "24'", '[order.steel]\nreinforcement_courses = 3\n'), "joint reinforcement")
    found = re.search(r"under (\d+) courses, every 3 of a wall, parted at control joints: ([\d.]+) ft", line.why)
    assert found and int(found[1]) == 36 // 3 - 1
    assert abs(Fraction(found[2]) * 12 / 11 - 1447) <= Fraction(1447) / 100


def test_grout_of_a_block() -> None:
    # B: 0.93 cu yd to 100 of 8 in., 1.64 to 100 of 12 in.; A: .28 cu ft of 8 in., .37 of 12 in., .26 of 6 in., and 5 % more.
    # 12 in. lies between the two; A's 6 in. is left alone: gross less measured net volume gives 0.15.
    eight, twelve, six = (measure_void(find_unit(key), FEET) for key in ("block-8", "block-12", "block-6"))
    assert eight and twelve and six
    assert abs(eight * 100 / 27 - Fraction("0.93")) <= Fraction("0.93") * 2 / 100
    assert abs(eight - Fraction("0.28")) <= Fraction("0.03")
    assert Fraction("0.37") <= twelve <= Fraction("1.64") * 27 / 100
    assert six < Fraction("0.26")


def test_five_percent_of_grout_on_top() -> None:
    # A: 5 % on top.
    grout = line_of(take_off("20'", "8'", 'bond_beams = ["top"]\n'), "grout")
    assert abs(grout.spare / grout.net - Fraction(5, 100)) <= Fraction("0.01") / grout.net
    assert lay_text(plan_wall("20'", "8'")).job.order.grout_waste == 5


def test_reinforcement_laps_6_in() -> None:
    # A supplier: 6 in. (150 mm).
    assert lay_text(plan_wall("20'", "8'")).job.order.steel.reinforcement_lap == 6 * 24_384
    metric = plan_wall("6090", "2400", unit="block-ca-190").replace('"feet"', '"metric"')
    assert lay_text(metric).job.order.steel.reinforcement_lap == 150 * MM

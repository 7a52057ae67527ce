"""Mixes as a mason writes them: shovels, bags and shovels, putty, masonry cement, ready-mixed bags; all followed by a pencil."""

from __future__ import annotations

from fractions import Fraction

import pytest

from tests.lists.pencil import follow
from tests.lists.walls import PIER, lay_text
from wallplan.lists.order.compose import list_order
from wallplan.lists.order.figures import FEET, METRIC
from wallplan.lists.order.ingredients import make_ready, resolve_mix
from wallplan.lists.order.line import Line, Order
from wallplan.plan.order_wishes import Mix, OrderWishes


def order_with(wishes: str, text: str = PIER) -> Order:
    """An order whose mortar lines a pencil has followed."""
    order = list_order(lay_text(f"{text}\n{wishes}"))
    for line in order.lines:
        if line.group == "mortar":
            assert line.order in follow(line.why) | {line.net + line.spare} and line.net in follow(line.why)
    return order


def mortar_of(order: Order) -> dict[str, Line]:
    """The lines of mortar by their item."""
    return {line.item: line for line in order.lines if line.group == "mortar"}


def note_of(order: Order) -> str:
    """What is said of the mix."""
    return next(note for note in order.notes if note.startswith("Mortar"))


def test_water_is_two_thirds_of_cement_and_lime_without_the_sand() -> None:
    # 18 shovels of sand, 3 of cement, 3 of lime, 6 to the cu ft: 1 cu ft of cement and lime, 2/3 cu ft or 4.99 US gallons of
    # water (7.48 to the cu ft).
    assert "as a guide 5 US gallons" in dict(order_with("").batch)["water"]


def test_a_field_mix_of_12_3_2_is_type_n() -> None:
    order = order_with("[order]\nbatch = 12\n[order.mix]\nsand = 12\ncement = 3\nlime = 2\n")
    assert "Type N by proportion: lime 0.67 to 1" in note_of(order)
    assert dict(order.batch)["one batch"] == "3 shovels portland cement, 2 shovels hydrated lime, 12 shovels sand, damp and loose"


def test_a_mix_in_bags_and_shovels() -> None:
    """1 bag of cement, 25 lb of lime (half a bag) and 28 shovels of sand at 6 to the cubic foot: 1, 0.625 and 4.67 cu ft.

    That is 6, 3.75 and 28 shovels; sand 2.87 to 1 of cement and lime; lime 0.63 to 1 of cement: Type N by proportion."""
    wishes = OrderWishes(mix=Mix(Fraction(1), Fraction(1, 2), sand=Fraction(28), bags=True))
    assert resolve_mix(wishes, FEET) == Mix(Fraction(6), Fraction("3.75"), sand=Fraction(28))
    order = order_with("[order.mix]\ncement = 1\nlime = 0.5\nsand = 28\nbags = true\n")
    assert "Type N" in note_of(order) and "1 bag of portland cement: 6 shovels" in note_of(order)
    told = dict(order.batch)
    assert told["one batch"].startswith("1 bag portland cement, 0.5 bag hydrated lime, 28 shovels sand")
    assert told["volume"].startswith("37.8 shovels / 6 to the cu ft = 6.3 cu ft")
    # In a metric plan a 25 kg bag of cement at 1.506 kg to the litre is 16.6 litres: 3.52 shovels of 4.72.
    assert resolve_mix(wishes, METRIC).cement == Fraction("3.52")


def test_lime_putty_counts_as_lime_and_is_ordered_by_volume() -> None:
    order = order_with("[order.mix]\ncement = 1\nlime_putty = 1\nsand = 6\n")
    assert "Type N" in note_of(order)
    line = mortar_of(order)["lime putty"]
    assert line.measure == "cu ft" and line.order == -(-line.net // 1)


def test_fire_clay_and_masonry_cement() -> None:
    clay = order_with("[order.mix]\ncement = 3\nfire_clay = 2\nsand = 12\n")
    assert "fire clay" in note_of(clay) and "outside the standard" in note_of(clay) and "fire clay" in mortar_of(clay)
    assert "printed on the bag" in note_of(order_with("[order.mix]\nmasonry_cement = 1\nsand = 3\n"))


def test_ready_mixed_bags() -> None:
    """Six courses of 38 in. are 14.4 block: 1.08 to 1.44 cu ft. 80 lb at 120 to the cubic foot make 0.67: 1.61 to 2.15 bags."""
    order = order_with("[order]\nready_bag = 80\n")
    assert set(mortar_of(order)) == {"mortar, mixed", "ready-mixed mortar"}
    line = mortar_of(order)["ready-mixed mortar"]
    assert (line.measure, line.net, line.order) == ("bag of 80 lb", Fraction("1.61"), 3)
    assert "printed on the bag" in note_of(order) and "sand and all" in dict(order.batch)["one batch"]
    own = mortar_of(order_with("[order]\nready_bag = 80\nready_yield = 0.5\n"))["ready-mixed mortar"]
    assert own.order == 3 and "the plan's own figure" in own.why
    # 25 kg at 1.9 kg to the litre.
    assert make_ready(OrderWishes(ready_bag=Fraction(25)), METRIC)[0] == Fraction("13.16")


def test_a_thin_joint_is_not_told_to_be_laid_in_mortar_from_the_shovel() -> None:
    # Thin-layer mortar has joints of 0.5 to 3 mm and general-purpose mortar of 6 mm at least (EN 1996-1-1, from memory).
    plan = """
        title = "Ferry landing: wheelhouse"
        measure = "metric"
        masonry = {{unit = "aerated"}}
        wall = [{{name = "Lee", length = 2999, courses = 3}}]
        {order}
        [own_unit]
        key = "aerated"
        kind = "block"
        length = 599
        height = 199
        thickness = 200
        joint = {joint}
        tightest_joint = 2
        widest_joint = 10
        solid = true
    """
    told = ["\n".join(list_order(lay_text(plan.format(joint=joint, order=order))).notes)
            for joint, order in ((3, ""), (6, ""), (3, "order = {ready_bag = 25}"))]
    assert ["thin-joint mortar from the bag" in one for one in told] == [True, False, False]
    assert "Joints of 3 mm" in told[0]


@pytest.mark.parametrize("wishes", [
    "[order]\nshovels = 1000000\n", "[order]\nbatch = 0.0001\n", "[order]\nready_bag = 1\n", "[order]\ncement_bag = 1\nlime_bag = 1\n",
    "[order.mix]\ncement = 0.0001\nsand = 28\nbags = true\n", "[order.mix]\nmasonry_cement = 0.001\nsand = 28\nbags = true\n",
])
def test_what_would_be_rounded_to_nothing_is_not_divided_by(wishes: str) -> None:
    metric = ('title = "Pier"\nmeasure = "metric"\n[masonry]\nunit = "block-8"\n[[wall]]\nname = "Pier"\nlength = 1000\n'
              "courses = 4\n")
    for text in (PIER, metric):
        assert list_order(lay_text(f"{text}\n{wishes}")).lines

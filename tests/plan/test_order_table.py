"""``[order]``: what is left out counts as published, and every mistake is told with its line and what to write."""

from __future__ import annotations

from fractions import Fraction

import pytest

from tests.plan.kiosk import mistakes_in
from wallplan.lengths import from_mm
from wallplan.plan.describe import EXAMPLE
from wallplan.plan.load import read_plan
from wallplan.plan.order_wishes import Mix, OrderWishes
from wallplan.plan.schema import TABLES, list_keys
from wallplan.plan.shape import read_shape


def order_of(text: str, plan: str = EXAMPLE) -> OrderWishes:
    """The wishes of the kiosk with this below it."""
    return read_plan(f"{plan}\n{text}", "kiosk.toml").order


def test_a_plan_without_an_order_wants_what_is_published() -> None:
    assert order_of("") == order_of("[order]") == OrderWishes()
    metric = order_of("", EXAMPLE.replace('measure = "feet"', 'measure = "metric"'))
    assert metric.day_height == from_mm(1500) and metric.steel.stock == from_mm(6000)


def test_what_is_written_is_what_is_wanted() -> None:
    wishes = order_of("""[order]
spare = 7.5
kerf = '3/16"'
output = [80, 120]
mix = { cement = 1, lime = 0.5, sand = 4.5 }
[order.steel]
bar = "12 mm"
bond_beam_bars = 1
[[order.item]]
name = "block-8 full"
pallet = 90
""")
    assert (wishes.spare, wishes.kerf, wishes.output) == (Fraction("7.5"), 4572, (80, 120))
    assert wishes.mix == Mix(Fraction(1), Fraction(1, 2), sand=Fraction("4.5"))
    assert wishes.steel.lap == from_mm(48 * 12)
    assert (wishes.of("block-8 full").pallet, wishes.of("block-8 half").pallet) == (90, None)


@pytest.mark.parametrize(("text", "told"), [
    ("[order]\nspare = -1", 'spare: -1 percent; write 0 to 100'),
    ("[order]\nspare = true", 'spare: true is not a number; write spare = 10'),
    ("[order]\nspare = nan", 'spare: nan is not a number; write spare = 10'),
    ("[order]\nbatch = 0", "batch: 0 is not over nothing"),
    ("[order]\ncement_bag = 0.33", "cement_bag: 0.33 pounds are no bag; write its weight, 1 or more"),
    ("[order]\nready_bag = 0.001", "ready_bag: 0.001 pounds are no bag; write its weight, 1 or more"),
    ("[order.steel]\nreinforcement_stock = \"2 mm\"", 'reinforcement_stock: 1/16" is under 4 in. (102 mm); write the length in '
     "which it is sold"),
    ("[order]\nmasons = 0", "masons: 0 is not a number from 1 to 1,000"),
    ("[order]\nmasons = 1.5", "masons: 1.5 is not a whole number; write masons = 2"),
    ("[order]\noutput = [200, 100]", "output: not a low and a high figure"),
    ("[order]\noutput = [100]", "output: not a low and a high figure"),
    ('[order]\noutput = [1, "x"]', 'output 2: "x" is not a number'),
    ("[order]\nmortar_per_100 = [1, 2, 3]", "mortar_per_100: more than a low and a high figure; write mortar_per_100 = [7.5, 8.5]"),
    ("[order]\nday_height = 0", "day_height: 0\" is nothing"),
    ("[order]\nwaste = 5", "waste: unknown key"),
    ("[order]\nready_bag = 80\n[order.mix]\ncement = 1\nsand = 3", "ready_bag: ready-mixed mortar has its sand in it"),
    ("[order]\nready_yield = 0.6", "ready_yield: of which bag? Write ready_bag"),
    ("[order]\ncell_volume = 0", "cell_volume: 0 is not over nothing"),
    ("[order]\nscaffold = '6\"'", "scaffold: 6\" is under 1 ft"),
    ("[order.cap]\nname = 'coping'", "length: missing; write length = '23 5/8\"'"),
    ("[order.cap]\nlength = 0", "length: 0\" is nothing"),
    ("[order.cap]\nlength = '12\"'\nwalls = ['Landing']", 'walls 1: "Landing" is no wall of this plan; write "Landing side"'),
    ("[order.cap]\nlength = '12\"'\nname = ' '", 'name: " " is not a name of 1 to 80 letters'),
    ("[order.mix]\nsand = 3", "cement: nothing that binds the sand"),
    ("[order.mix]\ncement = 1", "sand: missing; write sand = 12"),
    ("[order.mix]\ncement = 1\nsand = 0", "sand: nothing; write the parts of sand"),
    ("[order.mix]\ncement = -1\nsand = 3", "cement: -1 parts"),
    ('[order.steel]\nbar = "#44"', 'bar: "#44" is not a bar; write bar = "#4" or "12 mm"'),
    ('[order.mix]\ncement = "3 shovels"\nsand = 12', 'cement: "3 shovels" is not a number; write cement = 3'),
    ("[order.cap]\nlength = '24\"'\nwalls = 'Landing side'", 'walls: "Landing side" is not a list in brackets'),
    ('[order.steel]\nbar = "4"', 'bar: "4" is not a bar; write bar = "#4"'),
    ("[order.steel]\nbond_beam_bars = 2", "bar: missing; write what the bars are"),
    ("[order.steel]\nbar = \"#4\"\nlap = \"11'\"", "lap: over half of stock; write a shorter lap"),
    ("[order.steel]\ntie_courses = 2", "tie_spacing: missing"),
    ("[order.steel]\nbar = \"#4\"\ncell_spacing = '1\"'", "cell_spacing: 1\" is under 4 in."),
    ("[[order.item]]\npallet = 9", 'name: missing; write name = "block-8 full"'),
    ('[[order.item]]\nname = "x"\nprice = 0', "price: 0 is not over nothing"),
    ('[order.item]\nname = "x"', "item: one table; write its heading in double brackets, [[order.item]]"),
])
def test_a_mistake_is_told_with_its_line(text: str, told: str) -> None:
    ((line, place, message),) = mistakes_in(f"{EXAMPLE}\n{text}\n")
    assert told in message
    assert place.startswith("order") or message.startswith("item")
    assert line is not None and line > EXAMPLE.count("\n")


def test_every_table_of_the_schema_is_known_where_mistakes_are_explained() -> None:
    """A wrong type in a table that is not known there once ended in a traceback."""
    for heading, table in TABLES:
        for key in list_keys(table):
            names = [name for name in heading.strip("[]").split(".") if name]
            wrong: object = {key: object()}
            for name in reversed(names):
                wrong = {name: [wrong] if name in ("wall", "opening", "item", "step", "top_step", "gable") else wrong}
            assert isinstance(wrong, dict)
            read_shape(wrong)

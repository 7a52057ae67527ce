"""What a plan asks of its order: spare, mortar, crew, steel, pallets and prices. Values only, every default filled in.

Lengths are ticks; percentages, volumes and weights are exact fractions in the plan's own measure (cubic feet and
pounds, or litres and kilograms).
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from wallplan.lengths import TICKS_PER_FOOT, TICKS_PER_INCH


@dataclass(frozen=True)
class Mix:
    """Parts of a mortar by volume, in shovels or any other measure. A cement-lime mortar of Type N where nothing is said.

    With ``bags`` cement, lime and masonry cement are in bags and the rest in shovels: parts only once they are turned into
    volumes.
    """

    cement: Fraction = Fraction(1)
    lime: Fraction = Fraction(1)
    masonry_cement: Fraction = Fraction(0)
    fire_clay: Fraction = Fraction(0)
    sand: Fraction = Fraction(6)
    lime_putty: Fraction = Fraction(0)
    bags: bool = False

    @property
    def parts(self) -> Fraction:
        """All parts together."""
        return self.cement + self.lime + self.masonry_cement + self.fire_clay + self.sand + self.lime_putty


@dataclass(frozen=True)
class SteelWishes:
    """Steel and what goes with it, as the designer gave it; None or nought for what is not asked for.

    ``bar`` is what bars are called; ``lap`` and ``stock`` are lengths of a bar splice and of a bar as sold; ``hook`` is
    added to every upright bar. ``through_joints`` has the bars of bond beams run through control joints.
    ``cell_spacing`` puts a grouted cell with a bar at both ends of a wall and at this spacing between.
    ``reinforcement_courses`` is 2 for joint reinforcement in every second bed.
    """

    bar: str = ""
    lap: int = 0
    stock: int = 20 * TICKS_PER_FOOT
    hook: int = 0
    bond_beam_bars: int = 0
    through_joints: bool = False
    cell_spacing: int | None = None
    jamb_cells: bool = False
    reinforcement_courses: int | None = None
    reinforcement_stock: int = 10 * TICKS_PER_FOOT
    reinforcement_lap: int = 6 * TICKS_PER_INCH
    gasket: bool = False
    tie_courses: int | None = None
    tie_spacing: int = 0


@dataclass(frozen=True)
class CapWish:
    """Caps or coping: what they are called, length of one, the joint between two, how far they stand out past a free end
    (ticks), and the walls that have them; () for all."""

    name: str
    length: int
    joint: int
    overhang: int
    walls: tuple[str, ...]


@dataclass(frozen=True)
class ItemWish:
    """What a plan says of one line of the order: spare in percent, how many make a pallet, the price of one."""

    name: str
    spare: Fraction | None = None
    pallet: int | None = None
    price: Fraction | None = None


@dataclass(frozen=True)
class OrderWishes:
    """The order as a plan wants it. None means the published figure, chosen by unit and measure.

    ``mortar_per_100`` is (low, high) for 100 hollow block; ``output`` is (low, high) units that one mason lays in a day.
    Bags are by weight. ``batch`` is the sand of one batch in shovels, ``shovels`` how many fill a cubic foot.
    ``ready_bag`` is the weight of a bag of ready-mixed dry mortar and ``ready_yield`` what it makes; None where mortar
    is mixed from its parts. ``cell_volume`` is what a full unit's cells hold, None for the catalogue's figure.
    ``pour_height`` is how high grout is poured at once; ``scaffold`` how far a mason reaches, from the ground and from
    each platform.
    """

    spare: Fraction = Fraction(5)
    kerf: int = TICKS_PER_INCH // 8
    mortar_waste: Fraction = Fraction(20)
    grout_waste: Fraction = Fraction(5)
    mortar_per_100: tuple[Fraction, Fraction] | None = None
    mix: Mix = Mix()
    batch: Fraction = Fraction(18)
    shovels: Fraction = Fraction(6)
    cement_bag: Fraction | None = None
    lime_bag: Fraction | None = None
    ready_bag: Fraction | None = None
    ready_yield: Fraction | None = None
    cell_volume: Fraction | None = None
    masons: int = 1
    output: tuple[Fraction, Fraction] | None = None
    day_height: int = 5 * TICKS_PER_FOOT
    pour_height: int = 5 * TICKS_PER_FOOT
    scaffold: int = 5 * TICKS_PER_FOOT
    steel: SteelWishes = SteelWishes()
    cap: CapWish | None = None
    items: tuple[ItemWish, ...] = ()
    currency: str = ""

    def of(self, name: str) -> ItemWish:
        """What is said of a line by its item's name; an ItemWish without wishes where nothing is."""
        return next((item for item in self.items if item.name == name), ItemWish(name))

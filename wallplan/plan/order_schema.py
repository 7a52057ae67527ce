"""The keys of ``[order]`` and the tables in it, as ``schema`` takes them."""

from wallplan.plan.table import REQUIRED, Length, Table
from wallplan.plan.table import write_key as _key

MOST_ITEMS = 200


class MixTable(Table):
    """The mortar, in parts by volume: cubic feet, buckets or shovels, all alike. What is left out is not in it."""

    cement: float | None = _key("Parts of portland cement.", "3", "0")
    lime: float | None = _key("Parts of hydrated lime.", "2", "0")
    masonry_cement: float | None = _key("Parts of masonry cement, as it comes in the bag.", "1", "0")
    lime_putty: float | None = _key(
        "Parts of lime putty; it counts as as much hydrated lime (ASTM C270, from memory).", "2", "0")
    fire_clay: float | None = _key(
        "Parts of fire clay. No mortar that ASTM C270 knows has any, and the order says so.", "1", "0")
    sand: float | None = _key("Parts of damp, loose sand.", "12", REQUIRED)
    bags: bool | None = _key(
        "true: cement, lime and masonry_cement are in bags, all else in shovels: 1 bag, 0.5 bag, 28 shovels.", "true",
        "false")


class SteelTable(Table):
    """Steel, and what else is built in. Sizes and spacings are the designer's; only what stands here is counted."""

    bar: str | None = _key('What bars are: by US number, "#4", or by diameter, "12 mm".', '"#4"', "none")
    lap: Length = _key("How far two bars lap.", "'24\"'", "48 bar diameters")
    stock: Length = _key("Length of a bar as it is sold.", '"20\'"', "20 ft or 6 m")
    hook: Length = _key("Length of a hook, added to every upright bar.", "'8\"'", "0")
    bond_beam_bars: int | None = _key("Bars in a bond beam; lintels of lintel units carry as many.", "2", "0")
    through_joints: bool | None = _key(
        "true: the bars of bond beams run through control joints; the designer says so.", "true",
        "false: they stop there (common practice, no source)")
    cell_spacing: Length = _key(
        "Upright bars in grouted cells: one at both ends of each wall, and others at this spacing from the left end.",
        "'32\"'", "none")
    jamb_cells: bool | None = _key("true: a bar in a grouted cell beside each jamb as well.", "true", "false")
    reinforcement_courses: int | None = _key("Joint reinforcement in the bed under every so many courses.", "2",
                                            "none")
    reinforcement_stock: Length = _key("Length of a piece of joint reinforcement.", '"10\'"', "10 ft or 3 m")
    reinforcement_lap: Length = _key("How far two pieces lap.", "'6\"'", "6 in. or 150 mm")
    gasket: bool | None = _key("true: a gasket in every control joint.", "true", "false")
    tie_courses: int | None = _key("Wall ties on every so many courses.", "2", "none")
    tie_spacing: Length = _key("How far apart the ties of a course are.", "'24\"'", "none")


class CapTable(Table):
    """Caps or coping along the tops of walls, counted piece by piece; not where an opening cuts the top."""

    name: str | None = _key("What they are called.", '"coping"', '"cap"')
    length: Length = _key("Actual length of one, without a joint.", "'23 5/8\"'", REQUIRED)
    joint: Length = _key("Joint between two.", "'3/8\"'", "the wall's head joint")
    overhang: Length = _key("How far they stand out past a wall's free end.", "'1\"'", "0")
    walls: list[str] | None = _key(
        "The walls that have them; walls that go straight on are called by the first of them.", '["Landing side"]', "all",
        200)


class ItemTable(Table):
    """One line of the order by its name: its own spare, how many make a pallet, what one costs."""

    name: str | None = _key("The line's item, as wallplan order prints it.", '"block-8 full"', REQUIRED)
    spare: float | None = _key("Spare in percent.", "10", "that of [order]")
    pallet: int | None = _key("How many come on a pallet; the order is rounded up to whole ones.", "90", "none")
    price: float | None = _key("The price of one.", "2.35", "none")


class OrderTable(Table):
    """The order list: all of it may be left out."""

    spare: float | None = _key("Spare units in percent, rounded up.", "10", "5")
    kerf: Length = _key("Width of the saw's cut.", "'1/8\"'", "1/8 in. (common practice, no source)")
    mortar_waste: float | None = _key("Mortar of solid units: percent on top of full joints.", "15",
        "20 (NAVEDTRA 14045); rules of thumb for brick come to 100")
    grout_waste: float | None = _key("Grout: percent on top of what the units leave empty.", "10", "5 (a supplier's rule)")
    mortar_per_100: list[float] | None = _key(
        "Mortar for 100 hollow block of a 16 in. (400 mm) face, low and high: cubic feet, or litres in a metric plan.",
        "[7.5, 8.5]", "7.5 to 10 cu ft, which covers the published rules", 2)
    mix: MixTable | None = _key("The mortar's parts.", "[order.mix]", "1 cement, 1 lime, 6 sand")
    batch: float | None = _key("Shovels of sand in one batch.", "18", "18")
    shovels: float | None = _key("Shovels to a cubic foot (28.3 litres).", "6.5", "6 (common practice, heaped)")
    cement_bag: float | None = _key("Weight of a bag of cement: pounds, or kilograms in a metric plan.", "94",
                                   "94 lb or 25 kg")
    lime_bag: float | None = _key("Weight of a bag of lime, likewise.", "50", "50 lb or 25 kg")
    ready_bag: float | None = _key(
        "Weight of a bag of ready-mixed dry mortar, likewise: all mortar comes from such bags, and there is no mix.", "80",
        "none")
    ready_yield: float | None = _key(
        "Mortar that such a bag makes, as it says on the bag: cubic feet, or litres in a metric plan.", "0.65",
        "a cubic foot to 120 lb, a litre to 1.9 kg (from memory)")
    cell_volume: float | None = _key(
        "What the cells of one full unit hold, to be grouted: cubic feet, or litres in a metric plan.", "0.25",
        "by the catalogue's net volume, where one is known")
    masons: int | None = _key("How many lay.", "2", "1")
    output: list[float] | None = _key(
        "Units that one mason lays in a day, low and high.", "[100, 150]",
        "100 to 180 block (from memory), 300 to 400 brick (an old handbook)", 2)
    day_height: Length = _key(
        "A wall rises no higher in one day.", '"5\'"',
        "5 ft (common practice, no source) or 1.5 m (LABC, a British warranty; another text says 1 m)")
    pour_height: Length = _key(
        "Grout is poured no higher at once; from 5 ft on a pour needs cleanouts.", "'40\"'",
        "5 ft or 1.5 m (http://www.masonryconstruction.com/how-to/how-to-place-grout_o)")
    scaffold: Length = _key(
        "How high a mason lays from the ground, and from each platform of the scaffold.", "\"4' 6\"",
        "5 ft or 1.5 m (common practice, no source)")
    steel: SteelTable | None = _key("Bars, joint reinforcement, gaskets, ties.", "[order.steel]", "none")
    cap: CapTable | None = _key("Caps or coping.", "[order.cap]", "none")
    item: list[ItemTable] | None = _key(
        "A line's own spare, pallet or price, each in an [[order.item]] of its own.", "[[order.item]]", "none", MOST_ITEMS)
    currency: str | None = _key("What prices are in.", '"USD"', "none")

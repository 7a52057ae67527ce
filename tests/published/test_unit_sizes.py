"""The catalogue's sizes and coursings against printed tables. Each table names its source above its rows.

"From memory" marks a figure of the named standard that was not read again for this test.
"""

from __future__ import annotations

from fractions import Fraction

import pytest

from wallplan.catalogue.load import find_unit, units
from wallplan.catalogue.unit import Unit
from wallplan.lengths import print_inches, print_length

INCH = 24_384
MM = 960
SQUARE_FOOT = (12 * INCH) ** 2
SQUARE_METRE = (1000 * MM) ** 2


def in_inches(unit: Unit) -> tuple[str, str, str]:
    """Thickness, height, length as the US trade orders them."""
    return print_inches(unit.thickness)[:-1], print_inches(unit.height)[:-1], print_inches(unit.length)[:-1]


def in_mm(unit: Unit) -> tuple[float, float, float]:
    """Length, width, height in millimetres; whole and half millimetres come out exact."""
    return unit.length / MM, unit.thickness / MM, unit.height / MM


# NCMA TEK 5-9A (2004), widths 3-5/8 to 11-5/8 in.; NCMA TEK 2-1A (1995),
# https://masoncontractors.com/Default?pageID=26357. The mm column is theirs, to the nearest millimetre.
US_BLOCK = [
    ("block-4", ("3 5/8", "7 5/8", "15 5/8"), (92, 194, 397)),
    ("block-6", ("5 5/8", "7 5/8", "15 5/8"), (143, 194, 397)),
    ("block-8", ("7 5/8", "7 5/8", "15 5/8"), (194, 194, 397)),
    ("block-10", ("9 5/8", "7 5/8", "15 5/8"), (244, 194, 397)),
    ("block-12", ("11 5/8", "7 5/8", "15 5/8"), (295, 194, 397)),
]


@pytest.mark.parametrize(("key", "inches", "millimetres"), US_BLOCK)
def test_us_block(key: str, inches: tuple[str, str, str], millimetres: tuple[int, int, int]) -> None:
    block = find_unit(key)
    assert in_inches(block) == inches
    for size, printed in zip((block.thickness, block.height, block.length), millimetres, strict=True):
        assert abs(size - printed * MM) <= MM / 2
    # The size's fraction is exact, not only to the sixteenth that is printed.
    assert all(size % (INCH // 8) == 0 for size in (block.thickness, block.height, block.length))


@pytest.mark.parametrize("key", [row[0] for row in US_BLOCK])
def test_us_half_block_and_half_high(key: str) -> None:
    """Half W x 8 x 8: 7-5/8 in. long (NCMA TEK 2-1A). Half-high: 3-5/8 in. (NAVEDTRA 14045, table note)."""
    block = find_unit(key)
    assert [(piece.name, piece.length, piece.sawn) for piece in block.pieces[1:]] == [("half", 61 * INCH // 8, False)]
    assert block.half_high == 29 * INCH // 8
    assert set(block.shapes) == {"stretcher", "corner", "sash", "bond beam", "lintel"}


# NCMA laboratory report, Masonry Magazine June 1989 p. 10, https://masonrymagazine.com/?pageID=24988:
# light lb, light net cf, heavy lb, heavy net cf.
LABORATORY = [
    ("block-4", 17.0, 0.19, 24.3, 0.19),
    ("block-6", 19.1, 0.23, 32.6, 0.25),
    ("block-8", 25.3, 0.28, 34.3, 0.27),
    ("block-12", 35.6, 0.40, 48.4, 0.38),
]


@pytest.mark.parametrize(("key", "light", "light_net", "heavy", "heavy_net"), LABORATORY)
def test_us_block_weight_and_net_volume(
    key: str, light: float, light_net: float, heavy: float, heavy_net: float
) -> None:
    block = find_unit(key)
    assert block.mass_kg is not None and block.net_litres is not None
    assert [mass / 0.45359237 for mass in block.mass_kg] == pytest.approx([light, heavy], abs=0.02)
    assert block.net_litres / 28.316846592 == pytest.approx((light_net + heavy_net) / 2, abs=0.0001)
    # The report's own density column is weight by rounded net volume: a net volume is never over the gross.
    gross_litres = block.length * block.height * block.thickness / MM**3 / 1e6
    assert 0.4 < block.net_litres / gross_litres < 0.8


def test_10_in_block_has_no_weight_because_no_source_gives_one() -> None:
    assert find_unit("block-10").mass_kg is None and find_unit("block-10").net_litres is None


# Masonry Magazine October 1993 p. 34, https://masonrymagazine.com/?pageID=25760 (specified W x H x L for a 3/8 in.
# joint); coursing from BIA Technical Note 10B (June 1993), reprinted April 1994,
# https://masonrymagazine.com/?pageID=25926. A pair is a printed range, which the catalogue must lie in.
THIN = ("3 5/8", "3 5/8")
ENGINEER = ("2 3/4", "2 13/16")
US_BRICK = [
    ("brick-modular", THIN, ("2 1/4", "2 1/4"), ("7 5/8", "7 5/8"), (3, 8)),
    ("brick-engineer-modular", THIN, ENGINEER, ("7 5/8", "7 5/8"), (5, 16)),
    ("brick-closure-modular", THIN, ("3 5/8", "3 5/8"), ("7 5/8", "7 5/8"), (1, 4)),
    ("brick-roman", THIN, ("1 5/8", "1 5/8"), ("11 5/8", "11 5/8"), (2, 4)),
    ("brick-norman", THIN, ("2 1/4", "2 1/4"), ("11 5/8", "11 5/8"), (3, 8)),
    ("brick-engineer-norman", THIN, ("2 13/16", "2 13/16"), ("11 5/8", "11 5/8"), (5, 16)),
    ("brick-utility", THIN, ("3 5/8", "3 5/8"), ("11 5/8", "11 5/8"), (1, 4)),
    ("brick-standard", THIN, ("2 1/4", "2 1/4"), ("8", "8"), (3, 8)),
    ("brick-engineer-standard", THIN, ENGINEER, ("8", "8"), (5, 16)),
    ("brick-closure-standard", THIN, ("3 5/8", "3 5/8"), ("8", "8"), (1, 4)),
    ("brick-king", ("3", "3"), ("2 5/8", "2 3/4"), ("9 1/2", "9 5/8"), (5, 16)),
    ("brick-queen", ("3", "3"), ("2 3/4", "2 3/4"), ("7 5/8", "8"), (5, 16)),
]


def ticks_of(inches: str) -> int:
    """Inches as the tables print them, read without the planner's own grammar."""
    return int(sum(Fraction(part) for part in inches.split()) * INCH)


@pytest.mark.parametrize(("key", "width", "height", "length", "coursing"), US_BRICK)
def test_us_brick(
    key: str, width: tuple[str, str], height: tuple[str, str], length: tuple[str, str], coursing: tuple[int, int]
) -> None:
    brick = find_unit(key)
    for size, (least, most) in ((brick.thickness, width), (brick.height, height), (brick.length, length)):
        assert ticks_of(least) <= size <= ticks_of(most)
    courses, risen = coursing
    assert brick.height_of_courses(courses) == risen * INCH


@pytest.mark.parametrize(("key", "size"), [
    ("brick-engineer-modular", ("3 5/8", "2 13/16", "7 5/8")), ("brick-engineer-standard", ("3 5/8", "2 13/16", "8")),
    ("brick-king", ("3", "2 3/4", "9 5/8")), ("brick-queen", ("3", "2 3/4", "7 5/8")),
])
def test_where_the_table_prints_a_range_the_source_says_what_was_taken(key: str, size: tuple[str, str, str]) -> None:
    brick = find_unit(key)
    assert (brick.thickness, brick.height, brick.length) == tuple(ticks_of(inches) for inches in size)
    assert "measure the brick" in brick.source and "taken" in brick.source


def test_every_us_brick_of_the_catalogue_stands_in_the_table() -> None:
    assert {unit.key for unit in units().values() if unit.country == "United States" and unit.kind == "brick"} == {
        row[0] for row in US_BRICK}


def test_bed_of_a_modular_brick_is_a_little_over_three_eighths() -> None:
    """2-2/3 less 2-1/4 is 0.4167 in.: the coursing rules, not the joint (BIA Technical Note 10B)."""
    brick = find_unit("brick-modular")
    assert Fraction(brick.bed_joint, INCH) == Fraction(5, 12)
    assert brick.bed_joint > brick.joint == 3 * INCH // 8


# BIA Technical Note 10B Table 3, Masonry Magazine April 1994 p. 25, https://masonrymagazine.com/?pageID=25929.
# The fractions of the row of one course are arithmetic: the page that was read had lost them.
COURSING = [
    (1, '2"', '2 11/16"', '3 3/16"', '4"'),
    (3, '6"', '8"', '9 5/8"', "1'-0\""),
    (5, '10"', "1'-1 5/16\"", "1'-4\"", "1'-8\""),
    (6, "1'-0\"", "1'-4\"", "1'-7 3/16\"", "2'-0\""),
    (9, "1'-6\"", "2'-0\"", "2'-4 13/16\"", "3'-0\""),
    (10, "1'-8\"", "2'-2 11/16\"", "2'-8\"", "3'-4\""),
    (12, "2'-0\"", "2'-8\"", "3'-2 3/8\"", "4'-0\""),
    (15, "2'-6\"", "3'-4\"", "4'-0\"", "5'-0\""),
    (24, "4'-0\"", "5'-4\"", "6'-4 13/16\"", "8'-0\""),
    (25, "4'-2\"", "5'-6 11/16\"", "6'-8\"", "8'-4\""),
    (30, "5'-0\"", "6'-8\"", "8'-0\"", "10'-0\""),
    (36, "6'-0\"", "8'-0\"", "9'-7 3/16\"", "12'-0\""),
    (45, "7'-6\"", "10'-0\"", "12'-0\"", "15'-0\""),
    (48, "8'-0\"", "10'-8\"", "12'-9 5/8\"", "16'-0\""),
    (50, "8'-4\"", "11'-1 5/16\"", "13'-4\"", "16'-8\""),
    (100, "16'-8\"", "22'-2 11/16\"", "26'-8\"", "33'-4\""),
]
COLUMNS = ("brick-roman", "brick-modular", "brick-engineer-modular", "brick-closure-modular")


@pytest.mark.parametrize("row", COURSING, ids=lambda row: f"{row[0]} courses")
@pytest.mark.parametrize("column", range(4), ids=COLUMNS)
def test_coursing_table(row: tuple[int, str, str, str, str], column: int) -> None:
    courses, *printed = row
    assert print_length(find_unit(COLUMNS[column]).height_of_courses(courses), "feet") == printed[column]


# Nominal heights of block: NAVEDTRA 14043 Tables 8-2 and 8-3, 14045 Tables 4-1 and 4-2 (rows from memory and by
# arithmetic); 11 courses at 7'-4": http://www.masonryconstruction.com/how-to/sizing-metal-door-openings_o.
BLOCK_HEIGHTS = [
    (1, '8"', '4"'), (2, "1'-4\"", '8"'), (3, "2'-0\"", "1'-0\""), (4, "2'-8\"", "1'-4\""), (5, "3'-4\"", "1'-8\""),
    (6, "4'-0\"", "2'-0\""), (9, "6'-0\"", "3'-0\""), (10, "6'-8\"", "3'-4\""), (11, "7'-4\"", "3'-8\""),
    (12, "8'-0\"", "4'-0\""), (15, "10'-0\"", "5'-0\""), (20, "13'-4\"", "6'-8\""), (30, "20'-0\"", "10'-0\""),
]


@pytest.mark.parametrize(("courses", "full_high", "half_high"), BLOCK_HEIGHTS)
def test_block_heights(courses: int, full_high: str, half_high: str) -> None:
    block = find_unit("block-8")
    assert block.half_high is not None
    assert print_length(block.height_of_courses(courses), "feet") == full_high
    assert print_length(courses * (block.half_high + block.bed_joint), "feet") == half_high


# The same tables: nominal lengths by stretchers. The 11-5/8 in. column is met by a 12 in. brick's module.
BLOCK_LENGTHS = [
    ("1", "1'-4\"", "1'-0\""), ("3/2", "2'-0\"", "1'-6\""), ("2", "2'-8\"", "2'-0\""), ("5/2", "3'-4\"", "2'-6\""),
    ("3", "4'-0\"", "3'-0\""), ("9/2", "6'-0\"", "4'-6\""), ("6", "8'-0\"", "6'-0\""), ("15/2", "10'-0\"", "7'-6\""),
    ("9", "12'-0\"", "9'-0\""), ("12", "16'-0\"", "12'-0\""),
    ("15", "20'-0\"", "15'-0\""), ("20", "26'-8\"", "20'-0\""),
]


@pytest.mark.parametrize(("stretchers", "block", "norman"), BLOCK_LENGTHS)
def test_nominal_lengths(stretchers: str, block: str, norman: str) -> None:
    fulls, halves = divmod(Fraction(stretchers), 1)
    for key, printed in (("block-8", block), ("brick-norman", norman)):
        unit = find_unit(key)
        half = next(piece.length for piece in unit.pieces if piece.name == "half")
        laid = fulls * unit.module + (half + unit.joint if halves else 0)
        assert print_length(laid, "feet") == printed


# UK brick: a brick maker's Technical Information Sheet 9, Table 1; explained at
# https://www.firstinarchitecture.co.uk/brick-dimension-tables-explained/. Bricks, CO+, CO, CO- in mm.
UK_CO = [
    ("1/2", "122.5", "112.5", "102.5"), ("1", "235", "225", "215"), ("3/2", "347.5", "337.5", "327.5"),
    ("2", "460", "450", "440"), ("3", "685", "675", "665"), ("4", "910", "900", "890"),
    ("9/2", "1022.5", "1012.5", "1002.5"), ("5", "1135", "1125", "1115"), ("6", "1360", "1350", "1340"),
    ("34", "7660", "7650", "7640"), ("77/2", "8672.5", "8662.5", "8652.5"),
    ("68", "15310", "15300", "15290"), ("72", "16210", "16200", "16190"),
]


@pytest.mark.parametrize(("bricks", "opening", "returned", "pier"), UK_CO)
def test_uk_brick_coordinating_lengths(bricks: str, opening: str, returned: str, pier: str) -> None:
    brick = find_unit("brick-uk")
    fulls, halves = divmod(Fraction(bricks), 1)
    half = next(piece.length for piece in brick.pieces if piece.name == "half")
    laid = int(fulls) * brick.module + (half + brick.joint if halves else 0)
    printed = [Fraction(size) * MM for size in (opening, returned, pier)]
    assert [laid + brick.joint, laid, laid - brick.joint] == printed


def test_uk_brick_size_and_gauge() -> None:
    """215 x 102.5 x 65; gauge 75, four courses to 300 mm (same sheet)."""
    brick = find_unit("brick-uk")
    assert in_mm(brick) == (215, 102.5, 65)
    assert brick.gauge == 75 * MM and brick.height_of_courses(4) == 300 * MM


@pytest.mark.parametrize("width", [75, 90, 100, 140, 150, 190, 200, 215])
def test_uk_block(width: int) -> None:
    """440 x 215 mm face on 450 x 225; from memory (practice under BS EN 771-3)."""
    block = find_unit(f"block-uk-{width}")
    assert in_mm(block) == (440, width, 215)
    assert (block.module, block.gauge, block.pieces[1].length) == (450 * MM, 225 * MM, 215 * MM)


@pytest.mark.parametrize("width", [90, 140, 190, 240, 290])
def test_canadian_block(width: int) -> None:
    """CSA A165.1: 390 x 190 mm face on 400 x 200 (CCMPA manual, section 3)."""
    block = find_unit(f"block-ca-{width}")
    assert in_mm(block) == (390, width, 190)
    assert (block.module, block.gauge, block.pieces[1].length) == (400 * MM, 200 * MM, 190 * MM)


# DIN 4172 formats: NF 8.33 - 1.2 = 7.1 cm; DF and 2DF sizes read, DF's 16 courses to the metre from memory.
GERMAN = [("brick-df", (240, 115, 52), 16), ("brick-nf", (240, 115, 71), 12), ("brick-2df", (240, 115, 113), 8)]


@pytest.mark.parametrize(("key", "size", "courses"), GERMAN)
def test_german_brick(key: str, size: tuple[int, int, int], courses: int) -> None:
    brick = find_unit(key)
    assert in_mm(brick) == size
    assert brick.height_of_courses(courses) == 1000 * MM
    assert brick.gauge * courses == 1000 * MM, "a metre of courses closes to the tick"
    assert brick.module == 250 * MM and brick.pieces[1].length == 115 * MM


# https://www.klb-klimaleichtblock.de/: opening = n x 12.5 + 1 cm, outside = n x 12.5 - 1 cm. Raster, opening, outside
# in mm. The source prints 1.375 m outside for the raster of 1.375 m: a typing error, left out.
DIN_4172 = [
    (1000, 1010, 990), (1125, 1135, 1115), (1250, 1260, 1240), (1500, 1510, 1490), (1625, 1635, 1615),
    (1750, 1760, 1740), (1875, 1885, 1865), (2000, 2010, 1990), (2500, 2510, 2490),
]


@pytest.mark.parametrize(("raster", "opening", "outside"), DIN_4172)
def test_din_4172_lengths(raster: int, opening: int, outside: int) -> None:
    brick = find_unit("brick-nf")
    eighths = raster // 125
    laid = (eighths // 2) * brick.module + (eighths % 2) * (brick.pieces[1].length + brick.joint)
    assert [laid, laid + brick.joint, laid - brick.joint] == [raster * MM, opening * MM, outside * MM]


def test_australian_brick() -> None:
    """230 x 110 x 76 on 240 x 86 (AS/NZS 4455); 7 courses 602 mm; taller bricks 119 and 162 mm follow the gauge."""
    brick = find_unit("brick-au")
    assert in_mm(brick) == (230, 110, 76)
    assert (brick.module, brick.gauge) == (240 * MM, 86 * MM)
    assert brick.height_of_courses(7) == 602 * MM
    assert brick.height_of_courses(3) // 2 - brick.bed_joint == 119 * MM
    assert brick.height_of_courses(2) - brick.bed_joint == 162 * MM


# Units to an area of wall, no waste: 112.5 block per 100 sq ft, NCMA TEK 14 (1969),
# https://masonrymagazine.com/?pageID=17919; brick from BIA Technical Note 10 (from memory; printed to a whole brick).
PER_100_SQUARE_FEET = [
    ("block-8", 112.5), ("brick-modular", 675), ("brick-engineer-modular", 563), ("brick-closure-modular", 450),
    ("brick-roman", 600), ("brick-norman", 450), ("brick-utility", 300),
]
# Exact figures behind the trade's 60, 10 and 48.5 to the square metre.
PER_SQUARE_METRE = [("brick-uk", 59.26), ("block-uk-100", 9.88), ("brick-au", 48.45)]


@pytest.mark.parametrize(("key", "printed"), PER_100_SQUARE_FEET)
def test_units_per_100_square_feet(key: str, printed: float) -> None:
    unit = find_unit(key)
    assert abs(100 * SQUARE_FOOT / (unit.module * unit.gauge) - printed) <= 0.51


@pytest.mark.parametrize(("key", "printed"), PER_SQUARE_METRE)
def test_units_per_square_metre(key: str, printed: float) -> None:
    unit = find_unit(key)
    assert abs(SQUARE_METRE / (unit.module * unit.gauge) - printed) <= 0.006


def test_joints() -> None:
    """US 3/8 in. (TMS 602), planned from 1/4 to 1/2 in., inside the code's -1/4 and +3/8 in.
    (http://www.masonryconstruction.com/how-to/mortar-joints-in-residential-construction_o); metric 10 mm from 7 to 13,
    where 7 is LABC's least perpend
    (https://www.labcwarranty.co.uk/blog/build-walls-to-last-guide-to-laying-bricks-and-blocks/)."""
    for unit in units().values():
        joints = (unit.tightest_joint, unit.joint, unit.widest_joint)
        if unit.country == "United States":
            assert joints == (INCH // 4, 3 * INCH // 8, INCH // 2)
        else:
            assert joints == (7 * MM, 10 * MM, 13 * MM)


def test_leads() -> None:
    """Block 4 or 5 courses (NAVEDTRA 14043,
    https://constructionmanuals.tpub.com/14043/css/Figure-8-12-Checking-horizontal-block-spacing-221.htm); brick 7, the
    rise of seven bricks (http://zhclg.com/brickwork-bricklaying/building-the-third-and-remaining-courses.htm)."""
    assert {(unit.kind, unit.leads) for unit in units().values()} == {("block", 5), ("brick", 7)}


def test_which_units_are_solid() -> None:
    """Brick, cored a quarter at most, and UK block (from memory) are bedded solid; US and Canadian block is hollow.

    NCMA TEK 2-1B (2017): solid is a net area of at least 75 % of the gross."""
    hollow = {unit.country for unit in units().values() if not unit.solid}
    assert hollow == {"United States", "Canada"}
    assert all(unit.solid == (unit.kind == "brick" or unit.country == "United Kingdom") for unit in units().values())

"""The keys of a plan file: the one place that names them, says what they mean and what may stand there.

Every key may be absent from these tables, also the required ones, so that a plan with mistakes is still read as far as
it goes and all its mistakes are told at once; ``shape`` reports what is missing. Lengths are any value here: the
grammar of ``lengths.read_length`` judges them.

The tables are held by pydantic's core, given its schema directly: building pydantic's own model classes takes longer than
laying a wall does, and every command would wait for it.
"""

from functools import cache
from types import NoneType
from typing import Any, Literal, TypeVar, cast, get_args, get_origin, get_type_hints

from pydantic_core import CoreSchema, SchemaValidator, core_schema

from wallplan.plan.abuts_schema import MOST_ABUTS, MOST_PIERS, AbutsTable, PierTable
from wallplan.plan.height import MOST_COURSES
from wallplan.plan.job import Bond
from wallplan.plan.order_schema import CapTable, ItemTable, MixTable, OrderTable, SteelTable
from wallplan.plan.outline_schema import MOST_STEPS, GableTable, StepTable, TopStepTable
from wallplan.plan.table import REQUIRED as REQUIRED
from wallplan.plan.table import Key as Key
from wallplan.plan.table import Length as Length
from wallplan.plan.table import Table as Table
from wallplan.plan.table import write_key as _key

AnyTable = TypeVar("AnyTable", bound=Table)

MOST_WALLS, MOST_OPENINGS, MOST_CONTROL_JOINTS = 200, 200, 500


class OpeningTable(Table):
    """An opening: under its wall, each below a heading of its own."""

    name: str | None = _key("What the sheets call it; no two alike in a wall.", '"Ticket window"', '"opening 1", ...')
    from_left: Length = _key(
        "From the wall's left end to the left jamb, masonry to masonry, on the face that is drawn: the outside.",
        "\"6' 8\"", REQUIRED)
    width: Length = _key("Jamb to jamb: the masonry opening, not the door or frame.", "\"3' 4\"", REQUIRED)
    sill: Length = _key("From the bottom of the wall (top of footing) to the bottom of the opening.", "\"3' 4\"", "0")
    height: Length = _key("From the sill to the underside of the lintel.", '"4\'"', REQUIRED)
    lintel: Literal["block", "precast", "steel", "none"] | None = _key(
        "What carries the wall above: lintel units, grouted (block), precast concrete, a steel angle or plate, or none. "
        "Have lintels sized by whoever answers for the structure.", '"precast"',
        '"block" where the unit comes in lintel units, else "precast" for block and "steel" for brick')
    bearing: Length = _key(
        "How far the lintel reaches past each jamb at least. It has no meaning where there is no lintel.", "'8\"'",
        "8 in. or 200 mm for block, 4 in. or 100 mm for brick (common practice, no source)")


class WallTable(Table):
    """A wall: each below a heading of its own, in order, left to right as seen from outside."""

    name: str | None = _key(
        "What the sheets call it. Names must differ in their letters and digits: files are named after them.",
        '"Landing side"', REQUIRED)
    length: Length = _key("Out to out of the masonry.", '"20\'"', REQUIRED)
    height: Length = _key(
        "From the top of the footing to the top of the masonry. Where the footing steps, from its lowest level, as all "
        "heights are; where the top steps, at the wall's left end; under a gable, to the eaves.", "\"8' 8\"", "from courses")
    courses: int | None = _key(
        "The number of courses, in place of a height. Where both are given, the beds must be able to take the difference.",
        "13", "from height")
    left: Literal["end", "outside corner", "inside corner", "straight"] | None = _key(
        "How the wall ends on the left, seen from outside: free, or at a corner of the building, where it must be the "
        "same as the right of the wall before. The last wall's right goes with the first wall's left.",
        '"end"', '"end"')
    right: Literal["end", "outside corner", "inside corner", "straight"] | None = _key(
        "How the wall ends on the right. A corner must be the same as the next wall's left. Walls that go "
        "straight on from one another are laid as one wall, of one height.", '"end"', '"end"')
    control_joints: list[Length] | None = _key(
        "Distances from the wall's left end to the middle of each control joint.", '["10\'"]', "none",
        MOST_CONTROL_JOINTS)
    bond_beams: list[object] | None = _key(
        "Courses laid as bond beams, counted from 1 at the bottom; \"top\" is the last.", '[7, "top"]', "none",
        MOST_COURSES)
    opening: list[OpeningTable] | None = _key(
        "An opening, each in a [[wall.opening]] of its own, under its wall.", "[[wall.opening]]", "none", MOST_OPENINGS)
    step: list[StepTable] | None = _key(
        "A step of the footing, each in a [[wall.step]] of its own, from left to right.", "[[wall.step]]", "level",
        MOST_STEPS)
    top_step: list[TopStepTable] | None = _key(
        "A step of the top, each in a [[wall.top_step]] of its own, from left to right.", "[[wall.top_step]]", "level",
        MOST_STEPS)
    gable: list[GableTable] | None = _key(
        "A gable, each in a [[wall.gable]] of its own, from left to right.", "[[wall.gable]]", "none", MOST_STEPS)
    abuts: list[AbutsTable] | None = _key(
        "An end that abuts another wall in a T, each in a [[wall.abuts]] of its own; left or right is then left out.",
        "[[wall.abuts]]", "none", MOST_ABUTS)
    pier: list[PierTable] | None = _key(
        "A pier bonded into the wall, each in a [[wall.pier]] of its own, from left to right.", "[[wall.pier]]", "none",
        MOST_PIERS)


class MasonryTable(Table):
    """The masonry of all walls of the plan."""

    unit: str | None = _key(
        "A key of the unit catalogue (shown by wallplan units), or of the plan's own unit.", '"block-8"', REQUIRED)
    bond: Bond | None = _key(
        "How far head joints stand from those of the course below, in parts of a unit; in stack bond they stand in line. "
        "flemish: headers and stretchers in turn in every course; flemish garden wall: a header after three stretchers; "
        "english: courses of stretchers and of headers in turn; english garden wall and common: a course of headers after "
        "stretcher_courses; header: headers alone. These make walls one brick thick, of solid bricks as long as two are "
        "thick with a joint between.",
        '"half"', '"half"')
    stretcher_courses: int | None = _key(
        "Courses of stretchers from one course of headers to the next, in english garden wall and common bond. An odd "
        "number, so that corners come out.", "5", "3 in english garden wall, 5 in common bond")
    joint: Length = _key("The head joint aimed for.", "'3/8\"'", "the unit's own")
    tightest_joint: Length = _key("Head joints may close to this.", "'1/4\"'", "the unit's own")
    widest_joint: Length = _key("Head joints may open to this.", "'1/2\"'", "the unit's own")
    least_lap: Length = _key(
        "Head joints of neighbouring courses stand at least this far apart. Not used in stack bond.", "'4\"'",
        "a quarter of the unit's nominal length; what a plain corner laps where that is a little less")
    least_piece: Length = _key(
        "No piece is shorter, in nominal length: the piece with one joint.", "'4\"'",
        "a quarter of the unit's nominal length, or the shortest moulded length")
    leads: int | None = _key("Courses in a lead.", "5", "the unit's own: 5 for block, 7 for brick")
    keep_bond: bool | None = _key(
        "true: the bond's own lap is kept before cuts are saved, so that cells line up for grout and steel; false: in half "
        "bond any lap from least_lap up will do. Third and quarter bond are always kept.", "true", "false")
    corner_unit: Literal["plain", "L", "L where it saves"] | None = _key(
        "What turns the corners. plain: the unit itself, the other wall stopping against it. L: L corner units, one in each "
        "course of each corner, so that a wall bonds as if it were half a unit thick. L where it saves: only at corners "
        "where that saves more than a cut in two courses. Ask first whether the yard has them.", '"L"', '"plain"')


class AdviceTable(Table):
    """What `wallplan advise` may move, and how far. What stands fast for a reason of yours is left out of `move`."""

    farthest: Length = _key("Nothing is moved farther than this.", "'12\"'", "12 in. or 300 mm")
    step: Length = _key(
        "Moves sideways are tried at the distances, either way, that make a length fit; and, where this is given, also at "
        "every step of it.", "'4\"'", "only distances that fit")
    least_pier: Length = _key(
        "No move makes masonry between jambs, ends and control joints narrower than this.", "'16\"'",
        "the unit's length (common practice, no source)")
    move: list[str] | None = _key(
        "What may be moved: openings (sideways), widths (the right jamb alone), ends (the wall's length, either end), "
        "sills, heads, tops (the wall's height), control joints.",
        '["openings", "sills"]', "all of these but widths", 7)


class TeachingTable(Table):
    """Within what the marking sheet of `wallplan teach` has a pupil's wall marked, each more or less."""

    dimension: Length = _key("Lengths, heights and jambs.", "'1/8\"'", "1/8 in. or 3 mm (common practice, no source)")
    plumb: Length = _key("Plumb over the wall's height, at its ends and on its face.", "'1/8\"'",
                         "1/8 in. or 3 mm (common practice, no source)")
    level: Length = _key("Level over the wall's length.", "'1/8\"'", "1/8 in. or 3 mm (common practice, no source)")
    joint: Length = _key("Thickness of head and bed joints.", "'1/16\"'", "1/16 in. or 2 mm (common practice, no source)")
    bond: Length = _key("Head joints plumb over each other.", "'1/8\"'", "1/8 in. or 3 mm (common practice, no source)")


class OwnUnitTable(Table):
    """A unit that the catalogue does not hold; its sizes are actual ones."""

    key: str | None = _key("What [masonry] unit calls it; no key of the catalogue.", '"landing-brick"', REQUIRED)
    name: str | None = _key("What the sheets call it.", '"Reclaimed landing brick"', "the key")
    kind: Literal["block", "brick"] | None = _key("Block or brick.", '"brick"', REQUIRED)
    length: Length = _key(
        "Actual length, without a joint. A list of several units as measured stands for their mean; so it does for "
        "height and thickness.", '["228 mm", "231 mm", "230 mm"]', REQUIRED)
    height: Length = _key("Actual height, without a joint.", '"68 mm"', REQUIRED)
    thickness: Length = _key("Actual thickness: the wall's.", '"110 mm"', REQUIRED)
    joint: Length = _key("The head joint that goes with it.", '"10 mm"', REQUIRED)
    tightest_joint: Length = _key("Head joints may close to this.", '"7 mm"', "1/8 in. or 3 mm under joint")
    widest_joint: Length = _key("Head joints may open to this.", '"13 mm"', "1/8 in. or 3 mm over joint")
    gauge: Length = _key("Height of gauge_courses courses with their bed joints.", '"300 mm"', "height and joint")
    gauge_courses: int | None = _key("How many courses the gauge is of: three courses to 8 in., say.", "4", "1")
    half: object = _key(
        "true: halves are to be had; false: they are cut; or the length of a moulded half.", "true", "true")
    three_quarter: Length = _key("Length of a moulded three-quarter.", '"170 mm"', "none")
    quarter: Length = _key("Length of a moulded quarter.", '"50 mm"', "none")
    half_high: Length = _key("Height of a half-high unit.", '"30 mm"', "none")
    ell_return: Length = _key(
        "Length of an L corner unit's shorter face; its longer one is as long as the unit.", '"215 mm"', "none")
    shapes: list[str] | None = _key(
        "Shapes it comes in: stretcher, corner, sash, bond beam, lintel.", '["stretcher", "corner"]',
        "all for block, stretcher for brick", 20)
    leads: int | None = _key("Courses in a lead.", "7", "5 for block, 7 for brick")
    solid: bool | None = _key("true where the unit has no cells to grout.", "true", "true for brick, false for block")


class PlanTable(Table):
    """The job."""

    title: str | None = _key("What the job is called on every sheet.", '"Ferry landing: ticket kiosk"', REQUIRED)
    measure: Literal["feet", "metric"] | None = _key(
        "\"feet\": feet and inches. \"metric\": millimetres. How bare numbers are read and lengths are printed.",
        '"feet"', REQUIRED)
    sizes: Literal["actual", "nominal"] | None = _key(
        "\"actual\": as the tape reads. \"nominal\": every length and opening is given on the module, so a joint is taken "
        "off a wall's length and put onto an opening's width; from_left is to the module line, a joint to the right of "
        "the jamb; a control joint's middle is half a joint left of its module line. Heights and bearings are as given.",
        '"nominal"', '"actual"')
    date: object = _key("Printed on the sheets as written: a date or a text.", "2031-04-02", "none")
    masonry: MasonryTable | None = _key("Unit, bond and joints.", "[masonry]", REQUIRED)
    advice: AdviceTable | None = _key("What advice may move, and how far.", "[advice]", "none")
    order: OrderTable | None = _key("What the order list asks of mortar, crew, steel and spare.", "[order]", "none")
    teaching: TeachingTable | None = _key("Within what a pupil's wall is marked.", "[teaching]", "none")
    own_unit: OwnUnitTable | None = _key("A unit that the catalogue does not hold.", "[own_unit]", "none")
    wall: list[WallTable] | None = _key(
        "A straight wall, each in a [[wall]] of its own.", "[[wall]]",
        REQUIRED, MOST_WALLS)


TABLES: tuple[tuple[str, type[Table]], ...] = (
    ("", PlanTable), ("[masonry]", MasonryTable), ("[[wall]]", WallTable), ("[[wall.opening]]", OpeningTable),
    ("[[wall.step]]", StepTable), ("[[wall.top_step]]", TopStepTable), ("[[wall.gable]]", GableTable),
    ("[[wall.abuts]]", AbutsTable), ("[[wall.pier]]", PierTable),
    ("[advice]", AdviceTable),
    ("[teaching]", TeachingTable),
    ("[own_unit]", OwnUnitTable),
    ("[order]", OrderTable), ("[order.mix]", MixTable), ("[order.steel]", SteelTable),
    ("[order.cap]", CapTable), ("[[order.item]]", ItemTable),
)
"""Every table with its heading, in the order in which the page about the plan file shows them."""


MODELS: dict[str, type[Table]] = {heading.strip("[]").split(".")[-1]: table for heading, table in TABLES if heading}
"""Every table but the plan itself by its key."""


def list_keys(table: type[Table]) -> tuple[str, ...]:
    """The known keys of a table, in the schema's order."""
    return tuple(name for name, key in vars(table).items() if isinstance(key, Key))


def key_of(table: type[Table], key: str) -> Key:
    """What the schema says of a key. Raises KeyError for no key."""
    found = vars(table)[key]
    if not isinstance(found, Key):
        raise KeyError(key)
    return found


def example_of(table: type[Table], key: str) -> str:
    """The example of a key as TOML: ``width = "3' 4"``, or the heading for a table. Raises KeyError for no key."""
    example = key_of(table, key).example
    return example if example.strip("[]").split(".")[-1] == key else f"{key} = {example}"


def default_of(table: type[Table], key: str) -> str:
    """What counts where the key is left out, in words; REQUIRED where it may not be. Raises KeyError for no key."""
    return key_of(table, key).default


def words_of(table: type[Table]) -> dict[str, tuple[str, ...]]:
    """The words that may stand at each key that takes no others."""
    return _words_of(cast("Any", table))


@cache
def _words_of(table: Any) -> dict[str, tuple[str, ...]]:
    choices = {name: [one for one in get_args(hint) if get_origin(one) is Literal]
               for name, hint in get_type_hints(table).items() if name in list_keys(table)}
    return {name: get_args(found[0]) for name, found in choices.items() if found}


def read_table(table: type[AnyTable], raw: object) -> AnyTable:
    """A table, with those in it. Raises pydantic_core's ValidationError with all that is wrong with keys and types."""
    read: AnyTable = _validator(cast("Any", table)).validate_python(raw)
    return read


@cache
def _validator(table: Any) -> SchemaValidator:
    return SchemaValidator(_table_schema(table))


def _table_schema(table: Any) -> CoreSchema:
    hints = get_type_hints(table)
    fields = {
        name: core_schema.model_field(
            core_schema.with_default_schema(_value_schema(hints[name], key_of(table, name).most), default=None))
        for name in list_keys(table)
    }
    return core_schema.model_schema(table, core_schema.model_fields_schema(fields, extra_behavior="forbid"))


def _value_schema(hint: Any, most: int | None) -> CoreSchema:
    if hint is object:
        return core_schema.any_schema()
    if NoneType in get_args(hint):
        given = next(one for one in get_args(hint) if one is not NoneType)
        return core_schema.nullable_schema(_value_schema(given, most))
    if get_origin(hint) is Literal:
        return core_schema.literal_schema(list(get_args(hint)))
    if get_origin(hint) is list:
        return core_schema.list_schema(_value_schema(get_args(hint)[0], None), max_length=most, strict=True)
    if issubclass(hint, Table):
        return _table_schema(hint)
    if hint is str:
        return core_schema.str_schema(strict=True)
    if hint is float:
        return core_schema.float_schema(strict=True, allow_inf_nan=False)
    return core_schema.int_schema(strict=True) if hint is int else core_schema.bool_schema(strict=True)

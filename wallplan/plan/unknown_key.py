"""Keys that the plan file does not have: what they were likely meant to be, or where they belong."""

from __future__ import annotations

from typing import NamedTuple

from wallplan.plan.found import find_nearest, make_plain, print_choices
from wallplan.plan.schema import MODELS, REQUIRED, TABLES, Table, WallTable, default_of, list_keys

_SURE = 0.88
"""So near is a key by a letter or two: it is meant, though another table should have one of its very name."""

_OTHER_NAMES: dict[str, dict[str, str]] = {
    "PlanTable": {"title": "name project job job_name", "measure": "units unit_system system measures"},
    "MasonryTable": {
        "unit": "brick block cmu material", "bond": "pattern bonding bond_type bond_pattern",
        "joint": "mortar mortar_joint head_joint bed_joint joint_size joint_width joint_thickness",
        "tightest_joint": "min_joint minimum_joint smallest_joint", "widest_joint": "max_joint maximum_joint largest_joint",
        "least_lap": "lap min_lap minimum_lap", "corner_unit": "corner corners",
        "least_piece": "min_piece minimum_piece smallest_piece shortest_piece min_cut"},
    "WallTable": {
        "opening": "door doors window windows doorway gate hole", "name": "title label", "height": "high tall",
        "control_joints": "joints movement_joints expansion_joints", "pier": "pilaster pilasters column buttress",
        "gable": "roof", "courses": "rows", "left": "left_end left_corner", "right": "right_end right_corner"},
    "OpeningTable": {
        "from_left": "x left position pos offset distance start at location", "width": "w wide length span",
        "height": "h high tall",
        "sill": "sill_height cill bottom elevation", "lintel": "header lintel_type beam", "name": "type kind label title",
        "bearing": "lintel_bearing bearing_length"},
    "StepTable": {"at": "from_left x left position distance"}, "TopStepTable": {"at": "from_left x left position distance"},
    "GableTable": {"pitch": "slope angle roof_pitch", "rise": "height peak", "from_left": "at x left"},
    "AbutsTable": {"meets": "wall to with against", "at": "from_left x position distance", "face": "side"},
    "PierTable": {"from_left": "at x left position distance", "projects": "projection project", "face": "side",
                  "depth": "thickness"},
    "OwnUnitTable": {"thickness": "width depth", "kind": "type", "joint": "mortar_joint joint_width joint_thickness"},
    "AdviceTable": {"farthest": "max furthest limit distance"},
    "OrderTable": {"spare": "waste wastage extra allowance", "masons": "crew men workers bricklayers", "kerf": "saw blade"},
    "MixTable": {"cement": "portland portland_cement", "lime": "hydrated_lime"},
    "SteelTable": {"bar": "rebar bar_size size", "cell_spacing": "spacing"},
    "ItemTable": {"name": "item", "price": "cost", "pallet": "per_pallet"},
}
"""Tables by the names of their classes: what else a key is called, by mason, drawing or office."""

_THICK = 'a wall is as thick as its unit: choose the unit under [masonry], "block-8" say; leave this out'
_STEP = "a step is met from the left; write up or down"
_OPENING = "height is from the sill to the underside of the lintel; write that"
_SAID = {
    ("MasonryTable", "thickness"): _THICK, ("MasonryTable", "width"): _THICK, ("WallTable", "thickness"): _THICK,
    ("WallTable", "width"): 'how long a wall is, is its length; how thick, its unit\'s; leave this out, or write length',
    ("WallTable", "corner"): 'write left or right, which are ends of the wall: right = "outside corner"',
    ("MasonryTable", "course_height"): "the unit's own; one that the catalogue does not hold has a gauge, under [own_unit]",
    ("OpeningTable", "from_right"): "distances run from the wall's left end; write from_left, the wall's length less this "
                                    "and the width",
    ("OpeningTable", "head"): _OPENING, ("OpeningTable", "top"): _OPENING, ("OpeningTable", "head_height"): _OPENING,
    ("MixTable", "ratio"): "write each part by its name: cement = 1, lime = 1, sand = 6",
    ("StepTable", "height"): _STEP, ("StepTable", "rise"): _STEP, ("TopStepTable", "height"): _STEP,
    ("TopStepTable", "rise"): _STEP,
}
_STANDS_FOR = {
    "from_right": ("from_left",), "head": ("height",), "top": ("height",), "head_height": ("height",),
    "ratio": ("sand",), "rise": ("up", "down"), "height": ("up", "down"), "width": ("length",),
}
"""What is not told as missing where one of these is given in its place."""

_NOTES = frozenset({"note", "notes", "comment", "comments", "remark", "remarks", "description"})
_ANGLE = ("walls are laid that meet square, at outside and inside corners; a wall at another angle is written as one that "
          "stands free, and its corner set out by hand: leave this out")
_PARTNERS = {"height": "courses", "rise": "pitch", "pitch": "rise"}


class Meant(NamedTuple):
    """An unknown key: what is said of it, the key of its table that it counts as, and those that are then not missing."""

    said: str
    key: str | None = None
    instead_of: tuple[str, ...] = ()


def explain_unknown(key: str, table: type[Table], value: object) -> Meant:
    """What a key was meant to be that its table does not have."""
    plain, known = make_plain(key), list_keys(table)
    if "angle" in plain and table is WallTable:
        return Meant(_ANGLE)
    if said := _SAID.get((table.__name__, plain)):
        return Meant(said, None, _STANDS_FOR.get(plain, ()))
    if name := _find_other_name(plain, table):
        return Meant(f"unknown key; write {name}", name, (name,))
    if _is_table(value):
        known = tuple(name for name in known if name in MODELS) or known
    if near := find_nearest(key, known, least=_SURE) or find_nearest(key.rstrip("s0123456789 _-"), known, least=_SURE):
        return Meant(f"unknown key; the nearest is {near}", near, (near,))
    if place := _find_place(key, value):
        return Meant(f"unknown key here; it belongs {place}")
    if plain in _NOTES:
        return Meant("unknown key; a note of your own stands behind a #, on any line")
    if near := find_nearest(key, known):
        return Meant(f"unknown key; the nearest is {near}", near, (near,))
    return Meant(f"unknown key; known here: {print_choices(list_keys(table))}")


def counts_as(meant: Meant, table: type[Table], given: dict[str, object], value: object) -> bool:
    """Whether an unknown key is read as the one that it was meant to be: where that one is not given, would be missed, and
    may hold such a value.
    """
    key = meant.key
    if key is None or key in given or _PARTNERS.get(key) in given or _is_table(value) != (key in MODELS):
        return False
    if key in MODELS:
        return isinstance(value, list) == _takes_list(table, key)
    return default_of(table, key) == REQUIRED or key in _PARTNERS


def _takes_list(table: type[Table], key: str) -> bool:
    return any(heading.startswith("[[") and heading.strip("[]").split(".")[-1] == key for heading, _ in TABLES)


def _is_table(value: object) -> bool:
    return isinstance(value, dict) or (isinstance(value, list) and any(isinstance(one, dict) for one in value))


def _find_other_name(plain: str, table: type[Table]) -> str | None:
    for name, others in _OTHER_NAMES.get(table.__name__, {}).items():
        if plain in others.split():
            return name
    return None


def _find_place(key: str, value: object) -> str | None:
    """The heading of another table that has the key."""
    for heading, other in TABLES:
        if key in list_keys(other) and (key in MODELS or not _is_table(value)):
            nested = f", below a heading [[wall.{key}]]" if other is WallTable and key in MODELS else ""
            return f"under {heading}{nested}" if heading else "above the first heading"
    return None

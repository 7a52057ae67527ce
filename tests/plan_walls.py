"""Random plans with every key that a plan may have: walls of every form that meet in every way, with all that stands in them."""

from __future__ import annotations

from itertools import pairwise
from typing import NamedTuple

from hypothesis import strategies as st

from tests.plan_heads import INCH, MM, NAMES, exactly, heads, some, tails
from tests.strategies import Table, write_plan, write_value
from wallplan.lengths import Measure
from wallplan.plan.job import Masonry
from wallplan.plan.pier_sizes import find_lattice

OUT, IN = "outside corner", "inside corner"


class Site(NamedTuple):
    """What walls are drawn for. ``near`` is what must be left beside a thing that stands in a wall, ticks."""

    measure: Measure
    masonry: Masonry
    nominal: bool

    @property
    def near(self) -> int:
        return self.masonry.least_piece + 2 * self.masonry.joint

    @property
    def grids(self) -> list[int]:
        fine = INCH if self.measure == "feet" else 10 * MM
        return [self.masonry.module // 2, self.masonry.module // 4, fine, fine // 16]

    def level(self, courses: int) -> int:
        return self.masonry.unit.height_of_courses(courses)


@st.composite
def plans_of_every_key(draw: st.DrawFn) -> str:
    """The text of a plan with any key that a plan may have: nearly all can be laid."""
    head, masonry = draw(heads())
    if masonry is None:
        return write_plan({**head, "wall": [{"name": "Landing", "length": "20 m", "courses": 4}]})
    site = Site(head["measure"], masonry, head["sizes"] == "nominal")
    forms = [_free, _free, _straight, _row, _ring] if masonry.bond != "stack" else [_free, _straight]
    walls = draw(draw(st.sampled_from(forms))(site))
    tail = draw(tails(site.measure, masonry.unit.key, tuple(wall["name"] for wall in walls)))
    name = draw(st.sampled_from(["Landing", "Landing", "Side to the water and the slip, along the old boundary of the ferry yard", "1", "Öst/väst"]))
    text = write_plan({**head, **tail, "wall": walls})
    return text.replace('"Landing"', write_value(name)).replace('"Side 1"', write_value(name))


def _side(draw: st.DrawFn, site: Site, least: int, modules: int = 10) -> int:
    """A wall's length, on one of the grids."""
    grid = draw(st.sampled_from(site.grids))
    more = draw(st.integers(0, modules * site.masonry.module))
    return -(-(least + more) // grid) * grid


def _courses(draw: st.DrawFn) -> int:
    return draw(st.integers(2, 14))


@st.composite
def _free(draw: st.DrawFn, site: Site) -> list[Table]:
    """One or two walls that stand free."""
    names = draw(st.lists(st.sampled_from(NAMES), min_size=1, max_size=2, unique=True))
    return [_furnish(draw, site, {"name": name}, _side(draw, site, 3 * site.masonry.module, 14), ("end", "end")) for name in names]


@st.composite
def _straight(draw: st.DrawFn, site: Site) -> list[Table]:
    """Two or three walls that go straight on from one another."""
    count, walls, height = draw(st.integers(2, 3)), list[Table](), {"courses": _courses(draw)}
    for number in range(count):
        ends = "straight" if number else "end", "straight" if number + 1 < count else "end"
        length = _side(draw, site, 3 * site.masonry.module, 6)
        walls.append(_furnish(draw, site, {"name": NAMES[number], **height}, length, ends, plain=True))
    return walls


@st.composite
def _row(draw: st.DrawFn, site: Site) -> list[Table]:
    """Two or three walls round corners, of one height or several, and perhaps walls that abut the first one."""
    ends = draw(st.sampled_from([("end", OUT, "end"), ("end", IN, "end"), ("end", OUT, OUT, "end"), ("end", OUT, IN, "end")]))
    one = _courses(draw)
    walls = []
    for number, both in enumerate(pairwise(ends)):
        height = {"courses": one if draw(st.integers(0, 2)) or site.masonry.one_brick else _courses(draw)}
        length = _side(draw, site, 2 * site.masonry.thickness + 4 * site.near, 8)
        walls.append(_furnish(draw, site, {"name": f"Side {number + 1}", **height}, length, both, plain=number + 2 < len(ends), upward=True))
    return walls if site.masonry.one_brick else walls + _stems(draw, site, walls, ends[1])


@st.composite
def _ring(draw: st.DrawFn, site: Site) -> list[Table]:
    """A closed rectangle or L, perhaps with a partition from wall to wall."""
    least = 3 * site.masonry.thickness + 4 * site.near
    a, b, c, d = (_side(draw, site, least, 6) for _ in range(4))
    sides, inside = draw(st.sampled_from([([a, b, a, b], None), ([a + c, b, a, d, c, b + d], 3)]))
    one, walls = {"courses": _courses(draw)}, []
    plain = draw(st.booleans()) and inside is None and not site.masonry.one_brick
    for number, length in enumerate(sides):
        ends = IN if number == inside else OUT, IN if number + 1 == inside else OUT
        walls.append(_furnish(draw, site, {"name": f"Side {number + 1}", **one}, length, ends, plain=True, bare=plain))
    if plain:
        walls.append(_partition(draw, site, (a, b), one))
    return walls


def _furnish(draw: st.DrawFn, site: Site, table: Table, length: int, ends: tuple[str, str], *, plain: bool = False,
             bare: bool = False, upward: bool = False) -> Table:
    """A wall of so much length with what stands in it; ``plain`` walls are rectangles, ``bare`` ones have nothing in them.

    With ``upward`` no footing steps lower than where it begins: it is the lowest of all walls that meet.
    """
    table["length"] = exactly(length)
    table |= {side: end for side, end in zip(("left", "right"), ends, strict=True) if end != "end"}
    joint = site.masonry.joint if site.nominal else 0
    sides = [site.near + joint + (site.masonry.thickness + site.masonry.joint if end == OUT else 0) for end in ends]
    span = sides[0], length - sides[1] - joint
    outlined = not plain and not site.masonry.one_brick and draw(st.integers(0, 1)) == 0
    courses = table.setdefault("courses", _courses(draw))
    low, high = (_outline(draw, site, table, span, (courses, upward)) if outlined else (0, courses))
    if "courses" in table and draw(st.integers(0, 3)) == 0:
        table["height"] = exactly(site.level(table.pop("courses")))
    if not outlined and not plain and not site.masonry.one_brick and draw(st.integers(0, 5)) == 0:
        table.pop("courses", None)
        table["height"] = exactly(site.level(courses) + draw(st.integers(0, site.masonry.unit.gauge)))
    beams = "bond beam" in site.masonry.unit.shapes and "straight" not in ends
    if beams and draw(st.integers(0, 2)) == 0:
        numbers = [*range(1, courses), "top"]
        table["bond_beams"] = draw(st.lists(st.sampled_from(numbers), unique=True, min_size=1, max_size=3))
    if not bare:
        _fill(draw, site, table, span, (low, high, outlined))
    return table


def _outline(draw: st.DrawFn, site: Site, table: Table, span: tuple[int, int], asked: tuple[int, bool]) -> tuple[int, int]:
    """Steps of footing and top, or a gable; the courses between which openings may stand."""
    (courses, upward), unit = asked, site.masonry.unit
    low, high = 0, courses
    kinds = draw(st.sampled_from([("step",), ("top_step",), ("step", "top_step"), ("gable",), ("gable", "gable"), ("step", "gable")]))
    table["courses"] = courses = courses + 4
    for kind in ("step", "top_step"):
        at, level, least = span[0], 0, 0
        for _ in range(draw(st.integers(1, 2)) if kind in kinds else 0):
            at = -(-(at + draw(st.integers(0, 3 * site.masonry.module))) // MM) * MM
            if at > span[1]:
                break
            rise = draw(st.sampled_from([1, 1, 2]))
            up = "up" if upward and kind == "step" and level < rise else draw(st.sampled_from(["up", "down"]))
            table.setdefault(kind, []).append({"at": exactly(at), up: exactly(rise * unit.gauge)})
            at += site.near
            level += rise if up == "up" else -rise
            least = min(least, level)
            low, high = (max(low, level - least, -least), high) if kind == "step" else (low, min(high, courses + level))
    if "gable" in kinds:
        left = 0 if len(kinds) > 1 else draw(st.sampled_from([0, 0, span[0]]))
        table["gable"] = [_gable(draw, site, left, span)]
        if kinds == ("gable", "gable"):
            middle = sum(span) // 2
            table["gable"] = [{**_gable(draw, site, 0, span), "width": exactly(middle)}, _gable(draw, site, middle + site.near, span)]
            for one in table["gable"]:
                one.pop("ridge", None)
    return low + 1, min(high, courses) - 1


def _gable(draw: st.DrawFn, site: Site, left: int, span: tuple[int, int]) -> Table:
    """A gable that begins so far from the wall's left end."""
    gable: Table = draw(st.sampled_from([{"pitch": one} for one in ("4/12", "8/12", "12/12", "35 deg", "5 deg", "60 deg")]))
    gable = dict(gable)
    if left:
        gable["from_left"] = exactly(left)
    ridge = draw(st.sampled_from([None, None, 0, (span[1] - left) // 3]))
    if ridge is not None:
        gable["ridge"] = exactly(ridge)
    if ridge or draw(st.integers(0, 2)) == 0:
        gable.pop("pitch")
        gable["rise"] = exactly(draw(st.integers(2 * site.masonry.unit.gauge, 8 * site.masonry.unit.gauge)))
    return gable


def _fill(draw: st.DrawFn, site: Site, table: Table, span: tuple[int, int], levels: tuple[int, int, bool]) -> None:
    """Openings, control joints and piers from left to right, as many as have room."""
    low, high, outlined = levels
    kinds = ["opening", "opening", "opening", "joint"] if high - low > 1 else ["joint"]
    if not site.masonry.one_brick and "straight" not in (table.get("left"), table.get("right")):
        kinds.append("pier")
    if not outlined and high > 1 and find_lattice(site.masonry) is not None:
        kinds.append("built pier")
    reach, bearing = span[0] - site.near, 0
    for kind in draw(st.lists(st.sampled_from(kinds), max_size=4)):
        start = reach + site.near + bearing + draw(st.sampled_from([0, draw(st.integers(0, 4 * site.masonry.module))]))
        if kind == "joint":
            reach = start = start + site.masonry.unit.length
            bearing = site.masonry.unit.length
            if reach > span[1] - (site.masonry.joint if site.nominal else 0):
                break
            table.setdefault("control_joints", []).append(exactly(start))
            continue
        if kind == "opening":
            bearing = draw(st.integers(site.masonry.unit.length // 8, site.masonry.unit.length))
            start += bearing if table.get("control_joints") else 0
            one, reach = _opening(draw, site, start, bearing, (low, high, _courses_of(table, high, outlined)))
            name = "opening"
        else:
            one, reach = _pier(draw, site, start) if kind == "pier" else _built_pier(draw, site, start)
            name, bearing = "pier", 0
        if reach > span[1] - (bearing if kind == "opening" else 0) - (site.masonry.joint if site.nominal else 0):
            break
        if draw(st.booleans()):
            one["name"] = f"{'Gate' if name == 'opening' else 'Post'} {len(table.get(name, ())) + 1} of {table['name']}"
        table.setdefault(name, []).append(one)


def _courses_of(table: Table, high: int, outlined: bool) -> int | None:
    """How many courses a wall has whose top an opening may reach."""
    return table["courses"] if not outlined and table.get("courses") == high else None


def _opening(draw: st.DrawFn, site: Site, left: int, bearing: int, levels: tuple[int, int, int | None]) -> tuple[Table, int]:
    low, high, top = levels
    unit, module = site.masonry.unit, site.masonry.module
    width = _side(draw, site, module // 2, 4)
    sill = draw(st.sampled_from([low, low, draw(st.integers(low, high - 2))]))
    head = draw(st.integers(sill + 1, high - 1))
    head = high if top is not None and draw(st.integers(0, 7)) == 0 else head
    bottom, upper = site.level(sill), site.level(head)
    if not site.masonry.one_brick and head < high and draw(st.integers(0, 2)) == 0:
        bottom += draw(st.integers(0, unit.gauge // 2))
        upper += draw(st.integers(0, unit.gauge - 1))
        upper = max(upper, bottom + unit.gauge // 2)
        upper = min(upper, site.level(high) - unit.gauge // 4)
    lintels = ["none", "precast", "steel", *(["block"] * 2 if "lintel" in unit.shapes else [])]
    table: Table = {"from_left": exactly(left), "width": exactly(width), "height": exactly(upper - bottom), "bearing": exactly(bearing),
                    "lintel": "none" if head == high else draw(st.sampled_from(lintels))}
    if bottom or draw(st.booleans()):
        table["sill"] = exactly(bottom)
    return table, left + width


def _pier(draw: st.DrawFn, site: Site, left: int) -> tuple[Table, int]:
    """A pier as wide as the wall is thick."""
    projects = draw(st.integers(site.masonry.least_piece, 2 * site.masonry.module))
    least = {"projects": exactly(projects)} if site.masonry.unit.length - site.masonry.unit.thickness < site.near else {}
    pier = {"from_left": exactly(left), **least, **some(draw, {"projects": exactly(projects), "face": draw(st.sampled_from(["inside", "outside"]))})}
    return pier, left + site.masonry.thickness


def _built_pier(draw: st.DrawFn, site: Site, left: int) -> tuple[Table, int]:
    """A pier wider or thicker than its wall, of sizes that units fill."""
    lattice = find_lattice(site.masonry)
    assert lattice is not None
    joint, face = site.masonry.joint if site.nominal else 0, draw(st.sampled_from(["inside", "outside", "both"]))
    columns = draw(st.sampled_from([count for count in range(lattice.wide, 10) if count % lattice.wide == 0] or [lattice.wide]))
    columns = max(columns, 2 * lattice.wide if face == "both" and lattice.thick == 1 else 1)
    out = draw(st.integers(1, 4)) * (2 if face == "both" else 1)
    pier: Table = {"from_left": exactly(left), "width": exactly(lattice.size(columns) + joint), "face": face}
    if draw(st.booleans()):
        pier["depth"] = exactly(lattice.size(lattice.thick + out) + joint)
    else:
        pier["projects"] = exactly((lattice.size(lattice.thick + out) - site.masonry.thickness) // (2 if face == "both" else 1))
    return pier, left + lattice.size(columns)


def _stems(draw: st.DrawFn, site: Site, walls: list[Table], corner: str) -> list[Table]:
    """A wall that abuts the first one, on either face, or none where something stands in it."""
    main, stands = walls[0], ("opening", "pier", "control_joints")
    joint = site.masonry.joint if site.nominal else 0
    low, high = site.near + joint, _ticks(main["length"]) - 2 * site.masonry.thickness - 2 * site.near - 2 * joint
    if draw(st.booleans()) or any(main.get(key) for key in stands) or low > high:
        return []
    tie, face = draw(st.sampled_from(["interlocked", "straps", "control joint"])), draw(st.sampled_from(["inside", "outside"]))
    abuts: Table = {"meets": main["name"], "at": exactly(draw(st.sampled_from([low, draw(st.integers(low, high))]))), "tie": tie,
                    "face": face}
    if tie == "straps":
        abuts["strap_spacing"] = exactly(draw(st.integers(2, 6)) * site.masonry.unit.gauge + 40 * MM)
    courses = main.get("courses") or 2
    length = _side(draw, site, 2 * site.near + site.masonry.module, 5)
    if len(walls) > 2 and (face == "inside") is (corner == OUT):  # between the first wall and the third
        length = min(length, _ticks(walls[1]["length"]) - 2 * site.masonry.thickness - 2 * site.masonry.joint)
    lower = tie == "straps" or draw(st.booleans())
    return [{"name": "Stem", "courses": courses if lower else draw(st.integers(2, courses + 4)), "length": exactly(length), "abuts": [abuts]}]


def _ticks(text: str) -> int:
    return round(float(text.removesuffix(" mm")) * MM)


def _partition(draw: st.DrawFn, site: Site, sides: tuple[int, int], height: Table) -> Table:
    """A wall from the first to the third side of a rectangle."""
    thick, joint = site.masonry.thickness, site.masonry.joint if site.nominal else 0
    deep = sides[1] - joint - 2 * thick  # between two walls' faces a joint more than their units take
    at = draw(st.integers(thick + site.near + joint, sides[0] - 2 * thick - site.near - 2 * joint))
    ties = [draw(st.sampled_from(["interlocked", "control joint"])) for _ in range(2)]
    far = sides[0] - joint - at - thick
    return {"name": "Stem", **height, "length": exactly(deep - joint),
            "abuts": [{"end": "left", "meets": "Side 1", "at": exactly(at), "tie": ties[0]},
                      {"end": "right", "meets": "Side 3", "at": exactly(far), "tie": ties[1]}]}

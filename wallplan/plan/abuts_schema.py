"""The keys of ``[[wall.abuts]]`` and ``[[wall.pier]]``, as ``schema`` takes them."""

from typing import Literal

from wallplan.plan.table import REQUIRED, Length, Table
from wallplan.plan.table import write_key as _key

MOST_ABUTS = 2
MOST_PIERS = 100


class AbutsTable(Table):
    """An end of the wall that abuts another in a T: under its wall, one for each such end."""

    end: Literal["left", "right"] | None = _key(
        "Which end abuts. The wall's length is measured from the other wall's face.", '"left"', '"left"')
    meets: str | None = _key("The wall that it abuts, by its name.", '"Water side"', REQUIRED)
    at: Length = _key(
        "From that wall's left end to the nearer side of this one, on the outside face of that wall.", "\"8'\"", REQUIRED)
    face: Literal["inside", "outside"] | None = _key(
        "On which face of that wall it stands.", '"inside"', '"inside"')
    tie: Literal["interlocked", "straps", "control joint"] | None = _key(
        "What ties the two. interlocked: every other course of this wall runs through the other. straps: metal straps in "
        "the beds, the wall stopping against the other. control joint: nothing, and a joint that may move.",
        '"straps"', '"interlocked"')
    strap_spacing: Length = _key(
        "Height from strap to strap, at most; given by whoever answers for the structure.", "\"2' 8\"",
        "required with straps")


class PierTable(Table):
    """A pier bonded into the wall: under its wall, each below a heading of its own. Without width, depth and face = "both"
    it is as wide as the wall is thick, and every other course of it runs through the wall; else it is laid of whole, half
    and cut units, every other course tied in. It stands on the footing and is as high as the wall is where it stands: as the
    lower side of a step of the top, under a slope by whole courses. How far piers stand apart and must project is the
    designer's."""

    name: str | None = _key("What the sheets call it; no two alike.", '"Gate pier"', "the wall's name and a number")
    from_left: Length = _key(
        "From the wall's left end to the pier's nearer side, on the outside face; \"0\" for a pier at the wall's left end.",
        "\"7' 8\"", REQUIRED)
    width: Length = _key(
        "Along the wall.", "'16\"'", "the wall's thickness; the depth where that is given")
    depth: Length = _key(
        "Through the wall and out to the pier's faces, in place of projects.", "'16\"'",
        "from projects; the width where that is given")
    projects: Length = _key(
        "How far it stands out from the wall's face, or from both.", "'8\"'",
        "from depth; else so far that a full unit runs through the wall")
    face: Literal["inside", "outside", "both"] | None = _key(
        "On which face it stands; on both it stands out alike.", '"inside"', '"inside"')

"""Each why line measured again: its figures on the layout, and its words against its figures."""

from __future__ import annotations

from collections.abc import Callable
from itertools import pairwise, product
from typing import NamedTuple

from tests.teaching.measuring import CLOSE, fills, middles_of, run_with
from wallplan.layout.model import Course, Layout, Piece, WallLayout
from wallplan.lengths import print_joint, print_length, print_size
from wallplan.teaching.reason import Reason


class Told(NamedTuple):
    """A reason with the piece, or only the course, that it is told of."""

    layout: Layout
    wall: WallLayout
    course: Course
    piece: Piece | None
    reason: Reason

    @property
    def own(self) -> Piece:
        assert self.piece is not None
        return self.piece

    @property
    def run(self) -> list[Piece]:
        return run_with(self.layout, self.wall, self.course, self.own)

    def size(self, ticks: int) -> str:
        return print_size(ticks, self.layout.job.measure)

    def length(self, ticks: int) -> str:
        return print_length(ticks, self.layout.job.measure)


def judge(told: Told) -> None:
    """Fails where a reason is not so, or its words do not say its figures."""
    assert told.reason.words.endswith(".") and "  " not in told.reason.words
    JUDGES[told.reason.kind](told)


def _return(told: Told) -> None:
    """The wall that it names counts the piece, and runs through in all courses of this kind and in none of the other."""
    piece, kind = told.own, told.course.number % 2
    assert piece.of != told.wall.wall.name and f"in {'odd' if kind else 'even'} courses {piece.of}" in told.reason.words
    with_return = {course.number % 2 for course in told.wall.courses for other in course.pieces
                   if other.shape == "return" and other.left == piece.left}
    assert with_return == {kind}


def _lintel(told: Told) -> None:
    left, right, asked = told.reason.figures
    words = told.reason.words
    opening = next(opening for opening in told.wall.wall.openings if f"head of {opening.name}:" in words)
    row = sorted(piece for piece in told.course.pieces if piece.shape in ("lintel", "precast"))
    start, end = opening.left - left, opening.right + right
    covered = [piece for piece in row if piece.left < end and piece.right > start]
    others = {opening.right for opening in told.wall.wall.openings} | {opening.left for opening in told.wall.wall.openings}
    assert start in {covered[0].left, *others} and end in {covered[-1].right, *others}
    assert asked == opening.bearing
    assert [told.size(ticks) in words for ticks in (left, right, asked)] == [True] * 3


def _sash(told: Told) -> None:
    (place,) = told.reason.figures
    assert place in told.wall.wall.control_joints and told.length(place) in told.reason.words
    near = min(abs(told.own.left - place), abs(told.own.right - place))
    assert near <= told.layout.job.masonry.joint // 2 + 1


def _corner_unit(told: Told) -> None:
    ends = {0, told.wall.wall.length, *(side for o in told.wall.wall.openings for side in (o.left, o.right))}
    assert "has a plain end" in told.reason.words or ends & {told.own.left, told.own.right}


def _called(told: Told) -> None:
    (length,) = told.reason.figures
    assert length == told.own.length and told.size(length) in told.reason.words
    names = {"full": "Full unit", "half": "Half unit", "three-quarter": "Three-quarter unit", "quarter": "Quarter unit",
             "cut": f"Cut {told.own.mark},"}
    assert told.reason.words.startswith(names[told.own.piece])
    if told.own.piece != "full":
        first, last = told.own == told.run[0], told.own == told.run[-1]
        assert ("between" in told.reason.words) is not (first or last)
        _is_at(told, first, last)


def _is_at(told: Told, first: bool, last: bool) -> None:
    """The end that the words name is the one that the piece stands at."""
    words, piece = told.reason.words, told.own
    for opening in told.wall.wall.openings:
        if f" at the left jamb of {opening.name}." in words:
            assert piece.right == opening.left and last
        if f" at the right jamb of {opening.name}." in words:
            assert piece.left == opening.right and first
    if " at the left end." in words:
        assert piece.left <= 0 and first
    if " at the slope." in words:
        assert piece.rake is not None
    if " at the step at " in words:
        outline = told.wall.wall.outline
        assert outline is not None
        steps = {place for path in (outline.footing, outline.top) for (place, _), (other, _) in pairwise(path) if place == other}
        assert {piece.left, piece.right} & steps
    if " at the right end." in words:
        assert piece.right >= told.wall.wall.length and last


def _low(told: Told) -> None:
    height = told.reason.figures[0]
    assert height == told.own.height < told.layout.job.masonry.unit.height and told.size(height) in told.reason.words
    for level in told.reason.figures[1:]:
        assert any(level in (opening.bottom, opening.top) for opening in told.wall.wall.openings)
        assert told.course.bottom < level < told.course.top
        assert told.length(level) in told.reason.words


def _short_lap(told: Told) -> None:
    """A full unit from the same end, its joint at the course beside it: the lap is really too little."""
    lap, beside, least = told.reason.figures
    masonry = told.layout.job.masonry
    reach = masonry.unit.length + masonry.joint // 2
    at = told.own.left + reach if told.own == told.run[0] else told.own.right - reach
    laps = [abs(at - middle) for middle in middles_of(told.layout, told.wall, beside)]
    assert min(laps) == lap < least == masonry.least_lap and abs(beside - told.course.number) == 1
    assert told.run[0].left < at < told.run[-1].right and len(told.run) > 1
    assert ("below" if beside < told.course.number else "above") in told.reason.words
    assert ("in line with a joint" if told.size(lap).startswith("0") else f"{told.size(lap)} from a joint") in told.reason.words
    assert told.size(least) in told.reason.words


def _no_fill(told: Told) -> None:
    length, full, left = told.reason.figures
    masonry, run = told.layout.job.masonry, told.run
    assert length == run[-1].right - run[0].left and not fills(masonry, length)
    taken = full * masonry.unit.length + full * masonry.joint
    assert length - taken == left < masonry.unit.length
    assert told.length(length) in told.reason.words
    if full and left > 0:
        assert told.size(left) in told.reason.words and str(full) in told.reason.words


def _plumb(told: Told) -> None:
    beside, at = told.reason.figures
    joint = told.layout.job.masonry.joint
    assert abs(beside - told.course.number) == 2 and f"course {beside}." in told.reason.words
    assert any(abs(at - middle) <= CLOSE for middle in middles_of(told.layout, told.wall, beside))
    assert at in (told.own.right + joint // 2, told.own.left - joint // 2)


def _lap(told: Told) -> None:
    (lap,) = told.reason.figures
    run, below = told.run, middles_of(told.layout, told.wall, told.course.number - 1)
    own = [(one.right + two.left) // 2 for one, two in pairwise(run) if told.own in (one, two)]
    assert lap == min(abs(middle - other) for middle in own for other in below)
    assert told.size(lap) in told.reason.words


def _course_lap(told: Told) -> None:
    low, high, beside = told.reason.figures
    own, below = (middles_of(told.layout, told.wall, number) for number in (told.course.number, beside))
    laps = [min(abs(middle - other) for other in below) for middle in own]
    assert (low, high) == (min(laps), max(laps)) and beside == told.course.number - 1
    assert told.size(low) in told.reason.words and f"course {beside};" in told.reason.words
    assert ("or more" in told.reason.words) is (high - low > CLOSE)


def _joints(told: Told) -> None:
    off, count = told.reason.figures
    aimed, measure = told.layout.job.masonry.joint, told.layout.job.measure
    runs = [told.run] if told.piece else [run_with(told.layout, told.wall, told.course, piece) for piece in told.course.pieces
                                          if piece.shape != "return"]
    sign = 1 if told.reason.kind == "joint opened" else -1
    assert any(sign * (run[-1].right - run[0].left - sum(piece.length for piece in run) - count * aimed) == off
               and count == len(run) - 1 and ("nothing is cut" in told.reason.words) is all(p.piece != "cut" for p in run)
               for run in runs)
    assert print_joint(off, measure) in told.reason.words and print_joint(aimed, measure) in told.reason.words


def _parts(told: Told) -> None:
    """So many places as the course has pieces of this name and these reasons at the most; each of them has that length."""
    (count,) = told.reason.figures
    alike = [piece for piece in told.course.pieces if piece.piece != "full" and piece.shape not in ("return", "precast")
             and (f"Cut {piece.mark}, " in told.reason.words if piece.mark else piece.mark is None)
             and told.size(piece.length) in told.reason.words]
    assert 1 <= count <= len(alike)


def _sides(told: Told) -> None:
    left, right = told.reason.figures
    opening = next(opening for opening in told.wall.wall.openings if (opening.left, opening.right) == (left, right))
    assert told.length(left) in told.reason.words and told.length(right) in told.reason.words
    if told.reason.kind == "jambs":
        assert opening.bottom < told.course.top and opening.top > told.course.bottom
        inside = [piece for piece in told.course.pieces if piece.left < right and piece.right > left
                  and piece.bottom < opening.top and piece.top > opening.bottom]
        assert inside == []
    else:
        assert told.course.top <= opening.bottom <= told.course.top + told.wall.bed


def _steel(told: Told) -> None:
    assert any(opening.lintel == "steel" and opening.bearing == told.reason.figures[0]
               and abs(opening.top - told.course.bottom) <= told.wall.bed + CLOSE and opening.name in told.reason.words
               for opening in told.wall.wall.openings)


def _control(told: Told) -> None:
    (place,) = told.reason.figures
    assert place in told.wall.wall.control_joints
    assert not any(piece.left < place < piece.right for piece in told.course.pieces)


def _of_piece_or_course(piece: Callable[[Told], None], course: Callable[[Told], None]) -> Callable[[Told], None]:
    return lambda told: piece(told) if told.piece else course(told)


def _corner_l(told: Told) -> None:
    """It stands at an end of its wall where another one meets it."""
    wall, thick = told.wall.wall, told.layout.job.masonry.unit.thickness
    assert ("corner" in wall.left_end and told.own.left <= 0) or (
        "corner" in wall.right_end and told.own.right >= wall.length) or thick == 0


def _raked(told: Told) -> None:
    rake = told.own.rake
    assert rake is not None and told.reason.figures == (rake.left, rake.right)
    assert all(told.size(max(side, 0)) in told.reason.words for side in told.reason.figures)


def _notched(told: Told) -> None:
    assert told.own.notch is not None and told.reason.figures == (told.own.notch.height,)
    assert told.size(told.own.notch.height) in told.reason.words


def _on_footing(told: Told) -> None:
    """The footing under the piece's middle lies inside its course, and a bed under the piece."""
    outline, middle = told.wall.wall.outline, (told.own.left + told.own.right) // 2
    assert outline is not None and told.reason.figures == (told.own.height,)
    level = next(level for (left, level), (right, _) in pairwise(outline.footing) if left <= middle <= right)
    assert told.course.bottom < level < told.course.top and told.own.bottom - level == told.wall.bed
    assert told.size(told.own.height) in told.reason.words


def _beam(told: Told) -> None:
    assert told.course.number in told.wall.wall.bond_beams


def _first(told: Told) -> None:
    assert told.course.number == 1


def _stack(told: Told) -> None:
    assert told.layout.job.masonry.bond == "stack"


def _header(told: Told) -> None:
    """It is as wide on the face as the brick is thick, nothing lies behind it, and at a run's end it is told so."""
    face, long = told.reason.figures
    unit = told.layout.job.masonry.unit
    assert (face, long) == (told.own.length, unit.length) and abs(face - unit.thickness) <= CLOSE
    assert not [one for one in told.course.backing if one.left < told.own.right and one.right > told.own.left]
    quoin = told.own in (told.run[0], told.run[-1])
    assert told.reason.words.startswith("Quoin header" if quoin else "Header") and told.size(face) in told.reason.words


def _over_stretcher(told: Told) -> None:
    number, left = told.reason.figures
    below = next(piece for piece in told.wall.courses[number - 1].pieces if piece.left == left)
    assert number == told.course.number - 1 and below.shape == "stretcher" and below.piece == "full"
    assert abs((told.own.left - below.left) - (below.right - told.own.right)) <= 4 * 960


def _along(told: Told) -> None:
    """A whole stretcher, one quoin stretcher, or a sawn one, with what lies behind it."""
    (length,) = told.reason.figures
    assert length == told.own.length and told.size(length) in told.reason.words
    behind = [one for one in told.course.backing if (one.left, one.length) == (told.own.left, told.own.length)]
    assert bool(behind) is (told.reason.kind != "quoin stretcher")
    assert (told.own.piece == "full") is (told.reason.kind != "sawn pair") or told.reason.kind == "quoin stretcher"


def _closer(told: Told) -> None:
    """A quarter brick less the joint, a header (or the other wall's end) on its outer side."""
    (length,) = told.reason.figures
    masonry = told.layout.job.masonry
    assert length == told.own.length and abs(length + masonry.joint - masonry.module // 4) <= 4
    place = told.course.pieces.index(told.own)
    beside = told.course.pieces[max(0, place - 1):place + 2]
    assert {"header", "return"} & {piece.shape for piece in beside}


def _closer_held(told: Told) -> None:
    """Neither the first nor the last brick of its course's masonry there: a header, or the other wall's end, is outside it."""
    ends = {piece.shape for piece in (told.run[0], told.run[-1]) if piece == told.own}
    widest = 2 * told.layout.job.masonry.widest_joint
    others = [one for one in told.course.pieces if one.shape == "return"
              and (0 <= told.own.left - one.right <= widest or 0 <= one.left - told.own.right <= widest)]
    assert told.own.shape == "closer" and (not ends or others)


def _without(told: Told) -> None:
    """The joints of the run moved up by the closer and its joint: one of them stands too near one of a neighbour course."""
    lap, beside, least = told.reason.figures
    masonry = told.layout.job.masonry
    assert abs(beside - told.course.number) == 1 and least == masonry.least_lap > lap
    assert told.size(least) in told.reason.words and f"course {beside};" in told.reason.words
    near = middles_of(told.layout, told.wall, beside)
    own = middles_of(told.layout, told.wall, told.course.number)
    laps = set()
    for closer in (piece for piece in told.course.pieces if piece.shape == "closer"):
        for sign in (1, -1):
            shift = sign * (closer.length + masonry.joint)
            laps |= {abs(at - shift - other) for at in own for other in near}
    assert any(abs(one - lap) <= CLOSE for one in laps)


def _unfilled(told: Told) -> None:
    """No turn of headers and stretchers, closers beside headers at the ends, is as long; the two lengths told are."""
    length, *near = told.reason.figures
    masonry = told.layout.job.masonry
    known = bond_lengths(masonry.bond, 4 * (length + masonry.joint) // masonry.module + 12)
    assert all(any(abs(one * masonry.module // 4 - masonry.joint - at) <= CLOSE for one in known) for at in near)
    assert all(told.length(at) in told.reason.words for at in (length, *near)) and length not in near


def bond_lengths(bond: str, most: int) -> set[int]:
    """Lengths of whole bond in quarters of a brick, every turn of it laid out piece by piece."""
    if bond in ("english", "english garden wall", "common"):
        return set(range(4, most, 4))
    if bond == "header":
        return set(range(4, most, 2))
    if bond == "flemish garden wall":  # one or two stretchers at an end, two or three between closer and header
        ends = [4, 8, 2 + 1 + 8, 2 + 1 + 12]
        return {one + other + 2 + 14 * more for one in ends for other in ends for more in range(most // 14 + 1)}
    found = {4}  # one stretcher
    for first, last in product("SH", repeat=2):
        kinds = first
        while len(kinds) < most:
            kinds += "H" if kinds[-1] == "S" else "S"
            if kinds[-1] == last:
                found.add(sum(4 if kind == "S" else 2 for kind in kinds) + kinds.startswith("H") + kinds.endswith("H"))
    return found


def _kinds(told: Told) -> None:
    headers, stretchers = told.reason.figures
    shapes = [piece.shape for piece in told.course.pieces]
    assert (headers, stretchers) == (shapes.count("header"), shapes.count("stretcher"))
    assert all(f"{count} {name}" in told.reason.words for count, name in ((headers, "header"), (stretchers, "stretcher")) if count)


def _behind(told: Told) -> None:
    behind, through = told.reason.figures
    assert behind == len(told.course.backing) and str(behind) in told.reason.words
    assert through == sum(piece.shape in ("header", "closer") for piece in told.course.pieces)


def _closers(told: Told) -> None:
    count, length = told.reason.figures
    closers = [piece for piece in told.course.pieces if piece.shape == "closer"]
    assert count == len(closers) and length == closers[0].length and told.size(length) in told.reason.words


JUDGES: dict[str, Callable[[Told], None]] = {
    "return": lambda told: _return(told) if told.piece else None, "lintel": _lintel, "precast": _lintel, "sash": _sash,
    "corner unit": _corner_unit, "bond beam": _beam, "bond beam course": _beam, "full": _called,
    "stock length": _of_piece_or_course(_called, _parts), "cut": _of_piece_or_course(_called, _parts),
    "half-high": _low, "ripped for an opening": _low, "ripped for the height": _low,
    "corner L": _corner_l, "ripped for the footing": _on_footing, "raked": _raked, "notched": _notched,
    "a full unit would fall short of the lap": _short_lap, "stock lengths do not fill the run": _no_fill,
    "plumb with another course": _plumb, "lap": _lap, "lap of the course": _course_lap, "joint opened": _joints,
    "joint closed": _joints, "jambs": _sides, "sill": _sides, "head": _steel, "control joint": _control,
    "header": _header, "over a stretcher": _over_stretcher, "stretcher": _along, "quoin stretcher": _along,
    "sawn pair": lambda told: _along(told) if told.piece else None, "closer": _closer, "without the closer": _without, "closer not at the end": _closer_held,
    "bond does not fill the run": _unfilled, "kinds of the course": _kinds, "behind the face": _behind,
    "closers of the course": _closers,
    "first course": _first, "stack": _stack,
}
"""What each kind of reason is held to."""

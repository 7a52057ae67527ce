"""One run of a one-brick wall by trying every pair of courses: pieces of any whole number of grains, nothing left out.

A stretcher is 16 grains, a header 8, a closer 4; a sawn pair is any whole number of grains from 8 to 15. Shares nothing
with the search: every course is listed, every two of them are weighed by the words of the rules.
"""

from __future__ import annotations

from collections.abc import Iterator
from functools import cache
from itertools import pairwise, product

STRETCHER, HEADER, CLOSER = 16, 8, 4
Piece = tuple[str, int]
Course = tuple[Piece, ...]
Weight = tuple[int, int, int]
"""Broken laps, departures from the bond, bricks sawn."""


@cache
def fill(length: int) -> tuple[Course, ...]:
    """Every course without closers of a length."""
    if length == 0:
        return ((),)
    kinds = [("S", STRETCHER), ("H", HEADER), *(("P", grains) for grains in range(HEADER, STRETCHER))]
    return tuple((piece, *rest) for piece in kinds if piece[1] <= length for rest in fill(length - piece[1]))


def list_courses(length: int, left: str, right: str) -> Iterator[Course]:
    """Every course of a length; closers only beside headers at ends that begin with one."""
    for head in ((), (("H", HEADER), ("C", CLOSER))) if left == "H" else ((),):
        for tail in ((), (("C", CLOSER), ("H", HEADER))) if right == "H" else ((),):
            rest = length - sum(grains for _, grains in (*head, *tail))
            if rest >= 0:
                yield from ((*head, *middle, *tail) for middle in fill(rest))


def weigh(course: Course, rule: str, left: str, right: str, quoins: bool = False) -> tuple[int, int]:
    """Departures of a course from its bond, and bricks sawn for it. ``quoins``: a course of one kind may have the other's at an
    end that wants it."""
    sawn = sum({"P": 2, "C": 1}.get(kind, 0) for kind, _ in course)
    departures = sum(2 for (kind, grains), wanted in ((course[0], left), (course[-1], right))
                     if kind != wanted and not (quoins and rule == "H" and kind == "P" and grains > HEADER))
    kinds = [kind for kind, _ in course]
    departures += kinds.count("P")
    if rule in "SH":
        inside = kinds[1:-1] if quoins else kinds
        at_ends = [(kinds[0], left), (kinds[-1], right)][:len(kinds)] if quoins else []
        departures += sum(kind in "SH" and kind not in (rule, wanted) for kind, wanted in at_ends)
        return departures + sum(kind in "SH" and kind != rule for kind in inside), sawn
    roles = [("S", "H") if kind == "P" else (kind,) for kind in kinds]
    count = _out_of_three if rule == "three in turn" else _out_of_turn
    return departures + min(count(played, kinds) for played in product(*roles)), sawn


def _out_of_turn(played: tuple[str, ...], kinds: list[str]) -> int:
    count = 0
    for place, (one, two) in enumerate(pairwise(played)):
        if kinds[place + 1] == "C":
            # A closer at the right stands between a stretcher and the quoin header; at the left it is the second piece.
            count += place > 0 and one == "H"
        elif kinds[place] == "C" and place == 1 and kinds[0] == "H":
            count += two == "H"
        elif kinds[place] != "C":
            count += one == two
    return count


def _out_of_three(played: tuple[str, ...], kinds: list[str]) -> int:
    """Headers inside that do not follow three stretchers (before the first of them fewer will do), fourth stretchers, a closer
    or a header at the right end that stands beside a header."""
    count, stretchers, first, last = 0, 0, True, len(kinds) - 1
    for place, role in enumerate(played):
        if kinds[place] == "C":
            count += place > 1 and played[place - 1] == "H"
        elif role == "S":
            stretchers += 1
            count += stretchers > 3
        else:
            if 0 < place < last:
                count += stretchers == 0 or (stretchers < 3 and not first)
                first = False
            elif place == last and place > 0 and kinds[place - 1] != "C":
                count += played[place - 1] == "H"
            stretchers = 0
    return count


def best_beside(length: int, rule: str, over: tuple[int, ...], least: int = CLOSER) -> Weight:
    """The least weight of one course that begins and ends with a header, beside joints of the courses over and under it."""
    return min((sum(abs(one - other) < least for one in joints(course) for other in over), *weigh(course, rule, "H", "H", True))
               for course in set(list_courses(length, "H", "H")))


def joints(course: Course) -> list[int]:
    """Where pieces meet."""
    at, found = 0, []
    for _, grains in course[:-1]:
        at += grains
        found.append(at)
    return found


def best(length: int, rules: tuple[str, str], ends: tuple[int, int], courses: tuple[int, int], adjoining: int,
         quoins: bool = False) -> Weight:
    """The least weight of any two courses: ``ends`` are the parities that begin with a stretcher."""
    sides = [("S" if ends[0] == parity else "H", "S" if ends[1] == parity else "H") for parity in (0, 1)]
    listed = []
    for parity in (0, 1):
        rule = rules[0 if ends[0] == parity else 1]
        listed.append([(joints(one), *weigh(one, rule, *sides[parity], quoins)) for one in set(list_courses(length, *sides[parity]))])
    return min(
        (adjoining * sum(abs(one - other) < CLOSER for one in odd[0] for other in even[0]),
         courses[0] * odd[1] + courses[1] * even[1], courses[0] * odd[2] + courses[1] * even[2])
        for odd in listed[0] for even in listed[1])

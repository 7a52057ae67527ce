"""Walls and piers on the ground: ends that come to the wall that they abut, and no place taken twice."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import NamedTuple

from wallplan.plan.found import print_name
from wallplan.plan.ground import Line, Standing, join_corners, place_walls
from wallplan.plan.job import Masonry
from wallplan.plan.notebook import KeyPath, Notebook
from wallplan.plan.wall_table import ReadWall


class _Body(NamedTuple):
    """What a wall, or a pier that is wider or thicker than its wall, takes on the ground: an upright rectangle in ticks."""

    wall: int
    group: int
    left: int
    bottom: int
    right: int
    top: int
    pier: tuple[KeyPath, str] | None = None


def check_places(walls: Sequence[ReadWall], masonry: Masonry, notebook: Notebook) -> None:
    """Note each abutting end that comes elsewhere, then each wall and pier that stands where another does already.

    Only of walls in which nothing is wrong so far.
    """
    lines = [Line(wall.name or "", wall.length or 0, wall.left, wall.right, tuple(one for _, one in wall.abuts))
             for wall in walls]
    ground = place_walls(lines, masonry.thickness)
    for wrong in ground.amiss:
        wall = walls[wrong.wall]
        path = next(path for path, one in wall.abuts if one == wrong.abutment)
        told = []
        if wrong.beyond:
            told.append(f"{notebook.show(abs(wrong.beyond))} {'too far' if wrong.beyond > 0 else 'short'}")
        if wrong.aside:
            told.append(f"{notebook.show(abs(wrong.aside))} aside")
        where = " and ".join(told) or "from another side"
        key = (*path, "from_left" if path[-2] == "pier" else "at")
        notebook.note(key, f"the wall's {wrong.abutment.end} end comes {where} of the place on wall "
                      f'"{print_name(wrong.abutment.meets)}"; mend its length, or where it begins')
    if not ground.amiss:
        _check_bodies(walls, ground.standings, masonry, notebook)


def _check_bodies(walls: Sequence[ReadWall], standings: Sequence[Standing], masonry: Masonry, notebook: Notebook) -> None:
    bodies = [body for index, standing in enumerate(standings)
              for body in _bodies(walls, index, standing, masonry.thickness)]
    met = _find_met(walls)
    told = set[tuple[KeyPath, int]]()
    for one, other in sorted(_find_shared(bodies), key=lambda both: sorted(body.wall for body in both)):
        whole = one.pier is None and other.pier is None
        if one.wall == other.wall or (whole and frozenset((one.wall, other.wall)) in met):
            continue
        one, other = _put_first(walls, one, other)
        if ((key := _key(walls, one)), other.wall) not in told:
            told.add((key, other.wall))
            notebook.note(key, _tell(walls, (one, other), standings[one.wall], masonry, notebook))


def _bodies(walls: Sequence[ReadWall], index: int, standing: Standing, thick: int) -> Iterator[_Body]:
    """A wall's body, which goes on past an inside corner as deep as it is thick, and those of its built piers."""
    wall, length = walls[index], walls[index].length or 0
    past = [thick if end == "inside corner" else 0 for end in (wall.left, wall.right)]
    yield _Body(index, standing.group, *_upright(standing, (-past[0], length + past[1]), (0, thick)))
    for path, pier in wall.piers:
        corners = _upright(standing, (pier.left, pier.right), (-pier.front, thick + pier.back))
        yield _Body(index, standing.group, *corners, (path, pier.name))


def _upright(standing: Standing, along: tuple[int, int], deep: tuple[int, int]) -> tuple[int, int, int, int]:
    (x, y), (u, v) = standing.at(along[0], deep[0]), standing.at(along[1], deep[1])
    return min(x, u), min(y, v), max(x, u), max(y, v)


def _find_met(walls: Sequence[ReadWall]) -> set[frozenset[int]]:
    """Walls that share a corner or a tie, and so a place."""
    joined = join_corners([(wall.left, wall.right) for wall in walls])
    places = {wall.name: index for index, wall in enumerate(walls)}
    return {*(frozenset((index, after)) for index, after in enumerate(joined) if after is not None),
            *(frozenset((index, places[one.meets])) for index, wall in enumerate(walls) for _, one in wall.abuts
              if one.meets in places)}


def _find_shared(bodies: Sequence[_Body]) -> Iterator[tuple[_Body, _Body]]:
    """Pairs of one group that take a place together, from left to right."""
    standing: list[_Body] = []
    for body in sorted(bodies, key=lambda one: (one.group, one.left)):
        standing = [one for one in standing if one.group == body.group and one.right > body.left]
        yield from ((one, body) for one in standing if one.bottom < body.top and one.top > body.bottom)
        standing.append(body)


def _put_first(walls: Sequence[ReadWall], one: _Body, other: _Body) -> tuple[_Body, _Body]:
    """The one to be mended first: a pier, then a wall that abuts, then the later one in the plan."""
    return max((one, other), (other, one), key=lambda both: (
        both[0].pier is not None, bool(walls[both[0].wall].abuts), both[0].wall))


def _key(walls: Sequence[ReadWall], body: _Body) -> KeyPath:
    path = walls[body.wall].path if body.pier is None else body.pier[0]
    return (*path, "from_left" if path[-2] == "pier" else "length")


def _tell(walls: Sequence[ReadWall], both: tuple[_Body, _Body], standing: Standing, masonry: Masonry,
          notebook: Notebook) -> str:
    """How far a wall must be cut back from a free end that runs into another; else that one of both must be moved."""
    (body, other), wall = both, walls[both[0].wall]
    kind, name = ("wall", walls[other.wall].name) if other.pier is None else ("pier", other.pier[1])
    there = f'{kind} "{print_name(name or "")}"'
    ends = [(x - standing.x) * standing.dx + (y - standing.y) * standing.dy
            for x, y in ((other.left, other.bottom), (other.right, other.top))]
    over = (max(ends), (wall.length or 0) - min(ends))
    free = [over[side] + masonry.joint for side, end in enumerate((wall.left, wall.right)) if end == "end"]
    if body.pier is None and free and min(free) < (wall.length or 0) - masonry.least_piece:
        word = "pier" if wall.path[-2] == "pier" else "wall"
        return (f"the {word} runs into {there}; make it {notebook.show_least(min(free))} shorter at least, or move one of "
                "them")
    return f"stands where {there} stands; move one of them"

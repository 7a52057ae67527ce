"""Walls against the walls that they meet: corners that agree, heights, room for the other wall, a building that closes."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from wallplan.plan.found import print_name
from wallplan.plan.ground import join_corners
from wallplan.plan.job import Masonry
from wallplan.plan.notebook import Notebook
from wallplan.plan.wall_table import ReadWall

CORNERS = ("outside corner", "inside corner")
FEWEST_SIDES = 4


def check_corners(walls: Sequence[ReadWall], masonry: Masonry | None, notebook: Notebook) -> None:
    """Note each right end that the next wall's left end denies, and, where both agree, what cannot be laid there."""
    joined = join_corners([(wall.left, wall.right) for wall in walls])
    sound = True
    for number, wall in enumerate(walls):
        after = joined[number]
        other = walls[(number + 1) % len(walls) if after is None else after]
        sound = _check_agreement(wall, other, after is not None, walls.index(other) in joined, notebook) and sound
    if not sound:
        return
    if masonry is not None:
        for wall in walls:
            _check_room(wall, masonry, notebook)
    for ring in _find_rings(joined):
        _check_closing([walls[index] for index in ring], notebook)


def _find_rings(joined: tuple[int | None, ...]) -> Iterator[list[int]]:
    """Rows of walls that go round to their first."""
    for first in range(len(joined)):
        ring, following = [first], joined[first]
        while following is not None and following > first:
            ring.append(following)
            following = joined[following]
        if following == first and len(ring) > 1:
            yield ring


def _check_agreement(wall: ReadWall, other: ReadWall, goes_on: bool, is_met: bool, notebook: Notebook) -> bool:
    """Whether a wall's right end and the left one of the wall after it agree. An end that abuts a wall elsewhere is free
    here, and so is the left of a wall that another's right goes round to."""
    right = "end" if wall.right == "abuts" else wall.right
    left = "end" if other.left == "abuts" or (is_met and not goes_on and other.left != "straight") else other.left
    here, there = (*wall.end_path, "right"), (*other.path, "left")
    place = here if right != "end" else there
    if notebook.knows(here, there):  # no word for an end: it may be meant to agree
        return False
    if wall is other:
        if (right, left) != ("end", "end"):
            notebook.note(place, "a wall that stands alone has no corner; write \"end\"")
    elif right != left:
        notebook.note(place, f'wall {_called(wall)} ends on the right with "{right}", but the left of wall '
                      f'{_called(other)} is "{left}"; write the same in both')
    return (right, left) in {("end", "end"), *((corner, corner) for corner in CORNERS if wall is not other)}


def _check_room(wall: ReadWall, masonry: Masonry, notebook: Notebook) -> None:
    """A wall must reach past the walls that it meets, and leave a piece between a corner and a jamb."""
    if wall.length is None:
        return
    taken = masonry.thickness + masonry.joint
    least = masonry.least_piece - masonry.joint
    sides = [taken if end == "outside corner" else 0 for end in (wall.left, wall.right)]
    if any(sides) and wall.length < sum(sides) + least:
        notebook.note((*wall.path, "length"), f"{notebook.show(max(wall.length, 0))} leaves no piece beside the walls that "
                      f"it meets, which are {notebook.show(masonry.thickness)} thick; write at least "
                      f"{notebook.show_least(sum(sides) + least)}")
        return
    for path, opening in wall.openings:
        for hand, side, clear in (("left", sides[0], opening.left), ("right", sides[1], wall.length - opening.right)):
            if side and 0 < clear < side + least:
                notebook.note((*path, "from_left"), f"a jamb stands {notebook.show(clear)} from the {hand} corner; the "
                              f"other wall takes {notebook.show(side)} of it, so stay "
                              f"{notebook.show_least(side + least)} away at least")


def _check_closing(walls: Sequence[ReadWall], notebook: Notebook) -> None:
    """Walk round the outside, each wall to the right of the one before, and come back to where the walk began."""
    turns = sum(1 if wall.right == "outside corner" else -1 for wall in walls)
    ended = walls[-1].end_path
    if turns == -FEWEST_SIDES:
        notebook.note((*ended, "right"), "the walls go round a yard with their outside turned in, and are drawn from "
                      "outside; write each inside corner as an outside one and each outside corner as an inside one, "
                      "with the lengths of the yard's outer faces")
        return
    if turns != FEWEST_SIDES:
        notebook.note((*ended, "right"), f"the building does not close: its outside corners less its inside corners are "
                      f"{turns}, not {FEWEST_SIDES}; write its corners anew, or \"end\" where a wall stands free")
        return
    ahead = aside = heading = 0
    for wall in walls:
        if wall.length is None:
            return
        ahead += wall.length * (1, 0, -1, 0)[heading]
        aside += wall.length * (0, 1, 0, -1)[heading]
        heading = (heading + (1 if wall.right == "outside corner" else -1)) % 4
    for gap, along in ((ahead, 0), (aside, 1)):
        if gap:
            first = walls[along]
            notebook.note((*first.path, "length"), f"the building does not close: its walls end {notebook.show(abs(gap))} "
                          f"{'beyond' if gap > 0 else 'short of'} where they began, measured along wall {_called(first)}; "
                          f"lengths are out to out on the outside face")


def _called(wall: ReadWall) -> str:
    return f'"{print_name(wall.name)}"' if wall.name else str(int(wall.path[-1]) + 1)

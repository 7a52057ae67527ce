"""A layout measured for the lesson's tests with loops over its pieces only: nothing of the rooms that teach."""

from __future__ import annotations

from itertools import combinations_with_replacement

from wallplan.layout.model import Course, Layout, Piece, WallLayout
from wallplan.plan.job import Masonry

CLOSE = 2


def joints_of(layout: Layout, wall: WallLayout, course: Course) -> list[tuple[Piece, Piece]]:
    """The two pieces at each head joint of a course; gaps at control joints and openings are none."""
    widest = max(layout.job.masonry.joint, *wall.joints) + CLOSE
    found = []
    for one in course.pieces:
        after = [other for other in course.pieces if one.right <= other.left <= one.right + widest
                 and other.bottom < one.top and other.top > one.bottom]
        for other in after:
            if not any(one.right <= place <= other.left for place in wall.wall.control_joints):
                found.append((one, other))
    return found


def middles_of(layout: Layout, wall: WallLayout, number: int) -> list[int]:
    """Middles of a course's head joints; [] for a course that the wall has not."""
    if not 1 <= number <= len(wall.courses):
        return []
    return [(one.right + other.left) // 2 for one, other in joints_of(layout, wall, wall.courses[number - 1])]


def run_with(layout: Layout, wall: WallLayout, course: Course, piece: Piece) -> list[Piece]:
    """All pieces that hang together with one by head joints at its own bottom, left to right, returns left out."""
    near: dict[Piece, list[Piece]] = {}
    for one, other in joints_of(layout, wall, course):
        if one.bottom == other.bottom and "return" not in (one.shape, other.shape):
            near.setdefault(one, []).append(other)
            near.setdefault(other, []).append(one)
    run, todo = {piece}, [piece]
    while todo:
        for other in near.get(todo.pop(), []):
            if other not in run:
                run.add(other)
                todo.append(other)
    return sorted(run, key=lambda piece: piece.left)


def fills(masonry: Masonry, length: int) -> bool:
    """Whether any row of stock lengths is as long as a run, each joint anywhere within the plan's limits: all rows are tried.

    The bats that the mason breaks himself are as long as suits the joint.
    """
    module, joint = masonry.module, masonry.joint
    parts = {"half": module // 2, "three-quarter": module * 3 // 4, "quarter": module // 4}
    stock = {parts[piece.name] - joint if piece.sawn and piece.name in parts else piece.length for piece in masonry.unit.pieces}
    most = length // (min(stock) + masonry.tightest_joint) + 2
    for count in range(1, most + 1):
        low, high = (count - 1) * masonry.tightest_joint, (count - 1) * masonry.widest_joint
        if max(stock) * count + high < length - CLOSE or min(stock) * count + low > length + CLOSE:
            continue
        if any(low <= length - sum(row) <= high for row in combinations_with_replacement(sorted(stock), count)):
            return True
    return False

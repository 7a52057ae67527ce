"""What is moved, how far and which way, in words."""

from __future__ import annotations

from wallplan.advice.moves import Move
from wallplan.advice.names import size_text
from wallplan.lengths import Measure, print_size
from wallplan.plan.job import Wall


def name_move(move: Move, after: Wall, measure: Measure) -> str:
    """A move in words, with the new figure of the plan: ``Door 1 3/8" to the right, left jamb at 4'-1 3/8"``."""
    far, kind, number = print_size(abs(move.by), measure), move.thing.kind, move.thing.index
    right = move.by > 0
    if kind in ("left end", "right end"):
        longer = right == (kind == "right end")
        return f"wall {far} {'longer' if longer else 'shorter'} at its {kind}: {size_text(after.length, measure)}"
    if kind == "top":
        return f"wall {far} {'higher' if right else 'lower'}: {size_text(after.height, measure)}"
    if kind == "control joint":
        at = size_text(after.control_joints[number], measure)
        return f"control joint {number + 1} {far} to the {'right' if right else 'left'}: at {at}"
    opening = after.openings[number]
    if kind == "opening":
        return f"{opening.name} {far} to the {'right' if right else 'left'}: left jamb at {size_text(opening.left, measure)}"
    if kind == "width":
        wide = size_text(opening.right - opening.left, measure)
        return f"{opening.name} {far} {'wider' if right else 'narrower'}: {wide}"
    level = opening.bottom if kind == "sill" else opening.top
    return f"{kind} of {opening.name} {far} {'up' if right else 'down'}: at {size_text(level, measure)}"

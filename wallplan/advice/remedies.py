"""What would mend a size that does not fit: remedies in the order in which a mason tries them.

Move an opening or an end; spread the difference over the joints if that goes unnoticed; let the bond break above and below
an opening; cut in the middle of the longest plain stretch; at a jamb last. A length that is an odd number of half units
needs no remedy: its ends differ, reverse bond. Common practice, no source.
"""

from __future__ import annotations

from wallplan.advice.bays import Bay, find_bays, offer_bays, tell_bricks
from wallplan.advice.fit import Size, shared_joint
from wallplan.advice.names import size_text
from wallplan.lengths import print_joint, print_size
from wallplan.plan.advice_table import usual_movable
from wallplan.plan.job import Job


def find_remedies(size: Size, job: Job) -> tuple[str, ...]:
    """Remedies for one size, the first to be tried first; () where it fits."""
    if size.taken == "fits":
        return ()
    if size.what == "bay":
        return _move_piers(size, job)
    movable = job.movable or usual_movable(job.masonry, job.measure)
    moved = [_move(size, job)] if abs(size.off) <= movable.farthest and _may_move(size, movable.kinds) else []
    spread = [_spread(size, job)] if size.taken == "unnoticed" else []
    shows = [_spread(size, job) + ", and it shows"] if size.taken == "noticed" else []
    return (*moved, *spread, *shows, *_cuts(size, job)) if size.taken == "broken" else (*moved, *spread, *shows)


def _move_piers(size: Size, job: Job) -> tuple[str, ...]:
    """Both ways of moving piers until the bay comes out; joints take what is left where that goes unnoticed."""
    bay = _find_bay(size, job)
    spread = [_spread(size, job)] if size.taken == "unnoticed" else []
    return (*offer_bays(bay, job.masonry, job.measure), *spread)


def _find_bay(size: Size, job: Job) -> Bay:
    wall = next(wall for wall in job.walls if wall.name == size.wall)
    return next(bay for bay in find_bays(wall) if bay.name == size.name)


def _may_move(size: Size, kinds: tuple[str, ...]) -> bool:
    needed = {"length": ("ends",), "pier": ("openings", "ends", "control joints"), "width": ("widths",),
              "sill": ("sills",), "head": ("heads",), "height": ("tops",)}
    return any(kind in kinds for kind in needed[size.what])


def _move(size: Size, job: Job) -> str:
    if not size.others:
        return f"make it {size_text(size.fitting, job.measure)}"
    alike, in_turn = ([size_text(length, job.measure) for length, same in size.others if same is wanted]
                      for wanted in (True, False))
    ends = ", both ends alike" if in_turn else ""
    return f"make it {' or '.join(alike)}{ends}" + (f", or {' or '.join(in_turn)}, ends in turn" if in_turn else "")


def _spread(size: Size, job: Job) -> str:
    upright = size.what in ("sill", "head", "height")
    joint = print_joint(shared_joint(job.masonry, size), job.measure)
    return f"{size.joints} {'bed' if upright else 'head'} {'joints' if size.joints > 1 else 'joint'} of {joint}"


def _cuts(size: Size, job: Job) -> tuple[str, ...]:
    if size.what in ("sill", "head", "height"):
        return ("rip that course",)
    wall = next(wall for wall in job.walls if wall.name == size.wall)
    if job.masonry.one_brick and size.what in ("length", "pier") and size.size < job.masonry.unit.length:
        return (f"nothing else: masonry under one brick, {print_size(job.masonry.unit.length, job.measure)}, has no bond",)
    if job.masonry.one_brick and size.what in ("length", "pier"):
        return ("broken bond in the middle, pieces no shorter than a header",)
    if size.what == "pier":
        return ("cut within it, away from the jamb",)
    return ("cut above and below an opening",) if wall.openings else ("cut in the middle",)


def tell_off(size: Size, job: Job) -> str:
    """By how much a size is off, in words; a bay in units."""
    if not size.off:
        return "fits"
    if size.what == "bay":
        bay = _find_bay(size, job)
        alike = f"{bay.count} bays of " if bay.count > 1 else ""
        return f"{alike}{tell_bricks(bay.size, bay.sides, job.masonry)}"
    return f"{print_size(abs(size.off), job.measure)} {'over' if size.off > 0 else 'under'}"

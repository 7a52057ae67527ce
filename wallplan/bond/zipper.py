"""Two tracks closed like a zip, the lagging one always laying the next piece.

A shortest path over states (last odd joint, last even joint): ``wallplan/bond/pairs.py``. The model is that of boxes, glue
and penalties (Knuth and Plass, Software: Practice and Experience, 1981). Where the bounds of the tracks alone do not lead to
the end soon, what both together cost at least is worked out first (``wallplan/bond/together.py``).
Different cut lengths do not add up piece by piece: a second search, in which a state also knows which lengths
it has sawn, looks for fewer at the same cutting, and gives up after a set number of states (``SETTINGS_TRIES``).
"""

from __future__ import annotations

from wallplan.bond.cost import IMPOSSIBLE, count_cutting, count_settings
from wallplan.bond.figures import Problem
from wallplan.bond.laying import Generous, Settings
from wallplan.bond.pairs import Bounds, Found, Zip
from wallplan.bond.positions import try_positions
from wallplan.bond.track import Track, bound_alone

SETTINGS_TRIES = 2_000

FEW_TRIES = 500
"""States that are looked at before the bound of both tracks together is worked out."""


def close_zip(problem: Problem) -> Found:
    """The first layout in the order of preference; where no layout keeps every rule, the one that breaks fewest."""
    quick = try_positions(problem, thorough=False)
    full = try_positions(problem)
    found = _search(problem, quick, relaxed=False)
    if found is not None:
        return found._replace(everywhere=quick == full)
    found = _search(problem, full, relaxed=False) if quick != full else None
    found = found or _search(problem, quick, relaxed=True)
    if found is None:
        raise ValueError("no pieces fill this run; its ends stand on no common position")
    return found


def least_cutting(problem: Problem) -> int:
    """The least cutting of any layout that keeps the rules, by what each track cuts alone; 0 where none may keep them.

    Found without closing the zip, and never more than what is laid where that keeps the rules: joints give as much as they
    may at most.
    """
    positions, cutting = try_positions(problem), 0
    for which in (0, 1):
        least = bound_alone(Track(problem, which, positions, Settings(), relaxed=False, laying=Generous))[0]
        if least >= IMPOSSIBLE:
            return 0
        cutting += count_cutting(least)
    return cutting


def _search(problem: Problem, positions: tuple[int, ...], relaxed: bool) -> Found | None:
    settings = Settings()
    tracks = Track(problem, 0, positions, settings, relaxed), Track(problem, 1, positions, settings, relaxed)
    bounds = Bounds((bound_alone(tracks[0]), bound_alone(tracks[1])))
    if max(alone[0] for alone in bounds.alone) >= IMPOSSIBLE:
        return None
    zipped = Zip(tracks, bounds, IMPOSSIBLE, minds_settings=False)
    first = zipped.close(None if relaxed else FEW_TRIES)
    if zipped.gave_up:
        from wallplan.bond.together import Together  # numpy: only what is not soon found wants it

        bounds = bounds._replace(together=Together(tracks, bounds.alone))
        first = Zip(tracks, bounds, IMPOSSIBLE, minds_settings=False).close(None)
    if first is None or count_settings(first.cost) < 2:
        return first and first._replace(settings_proven=True)
    again = Zip(tracks, bounds, first.cost, minds_settings=True)
    better = again.close(SETTINGS_TRIES)
    return better or first._replace(settings_proven=not again.gave_up)

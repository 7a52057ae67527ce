"""Two tracks closed like a zip, the lagging one always laying the next piece.

A shortest path over states (last odd joint, last even joint): ``wallplan/bond/pairs.py``. The model is that of boxes, glue
and penalties (Knuth and Plass, Software: Practice and Experience, 1981). Where the bounds of the tracks alone do not lead to
the end soon, what both together cost at least is worked out first (``wallplan/bond/together.py``).
Different cut lengths do not add up piece by piece: a second search, in which a state also knows which lengths
it has sawn, looks for fewer at the same cutting, and gives up after a set number of states (``SETTINGS_TRIES``).
"""

from __future__ import annotations

from wallplan.bond.bounds import fills_with_stock
from wallplan.bond.cost import IMPOSSIBLE, count_cutting, count_settings
from wallplan.bond.figures import Problem
from wallplan.bond.generous import Generous
from wallplan.bond.laying import Settings
from wallplan.bond.pairs import Bounds, Found, Zip
from wallplan.bond.positions import Places, try_places
from wallplan.bond.track import TooMany, Track, bound_alone

SETTINGS_TRIES = 2_000

FEW_TRIES = 500
"""States that are looked at before the bound of both tracks together is worked out."""

MOST_STEPS = 50_000
"""Steps from joint to joint that one track may have before fewer places are tried."""

MOST_TRIES = 20_000
"""States of both tracks together that are looked at before fewer places are tried."""


def close_zip(problem: Problem) -> Found:
    """The first layout in the order of preference; where no layout keeps every rule, the one that breaks fewest.

    Joints are tried at all places that may matter, or at fewer where those are more than can be gone through.
    """
    everywhere = True
    for relaxed in (False, True):
        found, places = _close_where_few(problem, relaxed)
        everywhere = everywhere and places.all
        if found is not None:
            return found._replace(everywhere=everywhere)
    raise ValueError("no pieces fill this run; its ends stand on no common position")


def _close_where_few(problem: Problem, relaxed: bool) -> tuple[Found | None, Places]:
    """The search at the most places that are few enough, and these places; the fewest are gone through in any case."""
    for places in try_places(problem):
        try:
            return _search(problem, places, relaxed), places
        except TooMany:
            continue
    raise AssertionError("the fewest places are never too many")


def least_cutting(problem: Problem) -> int:
    """The least cutting of any layout that keeps the rules, by what each track cuts alone; 0 where none may keep them.

    Found without closing the zip, and never more than what is laid where that keeps the rules: joints give as much as they
    may at most. Where there are too many places to go through, a cut for each run that no stock lengths fill.
    """
    places, cutting = next(try_places(problem)), 0
    if not places.all:
        return _count_unfilled(problem)
    for which in (0, 1):
        try:
            least = bound_alone(Track(problem, which, places, Settings(), False, MOST_STEPS, Generous))[0]
        except TooMany:
            return _count_unfilled(problem)
        if least >= IMPOSSIBLE:
            return 0
        cutting += count_cutting(least)
    return cutting


def _count_unfilled(problem: Problem) -> int:
    terms = problem.terms
    return sum(run.weight for track in problem.tracks for run in track if not fills_with_stock(terms, run.end - run.start))


def _search(problem: Problem, places: Places, relaxed: bool) -> Found | None:
    """The best layout at these places, None where none keeps the rules. TooMany where that takes more than it may."""
    settings = Settings()
    most, tries = (None, None) if places.fewest else (MOST_STEPS, MOST_TRIES)
    tracks = Track(problem, 0, places, settings, relaxed, most), Track(problem, 1, places, settings, relaxed, most)
    bounds = Bounds((bound_alone(tracks[0]), bound_alone(tracks[1])))
    if max(alone[0] for alone in bounds.alone) >= IMPOSSIBLE:
        return None
    zipped = Zip(tracks, bounds, IMPOSSIBLE, minds_settings=False)
    first = zipped.close(tries if relaxed else FEW_TRIES)
    if zipped.gave_up and not relaxed:
        from wallplan.bond.together import Together  # numpy: only what is not soon found wants it

        bounds = bounds._replace(together=Together(tracks, bounds.alone))
        zipped = Zip(tracks, bounds, IMPOSSIBLE, minds_settings=False)
        first = zipped.close(tries)
    if zipped.gave_up:
        raise TooMany
    if first is None or count_settings(first.cost) < 2:
        return first and first._replace(settings_proven=True)
    again = Zip(tracks, bounds, first.cost, minds_settings=True)
    better = again.close(SETTINGS_TRIES)
    return better or first._replace(settings_proven=not again.gave_up)

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
from wallplan.bond.effort import TRY, WEIGHED, Effort, without_collecting
from wallplan.bond.figures import Problem
from wallplan.bond.generous import Generous
from wallplan.bond.laying import Settings
from wallplan.bond.pairs import Bounds, Found, Zip
from wallplan.bond.positions import Places, try_places
from wallplan.bond.track import TooMany, Track, bound_alone

Made = dict[tuple[tuple[int, ...], tuple[int, ...]], tuple[Track, Track]]
"""Both tracks at some places, by these and by what may be left beside an end."""

SETTINGS_TRIES = 2_000

FEW_TRIES = 500
"""States that are looked at before the bound of both tracks together is worked out."""

MOST_STEPS = 50_000
"""Steps from joint to joint that one track may have before fewer places are tried."""

MOST_TRIES = 20_000
"""States of both tracks together that are looked at before fewer places are tried."""


@without_collecting()
def close_zip(problem: Problem, effort: Effort | None = None) -> Found:
    """The first layout in the order of preference; where no layout keeps every rule, the one that breaks fewest.

    Joints are tried at all places that may matter, or at fewer where those are more than can be gone through with the
    ``effort`` that is left, by itself that of a wall alone; what is done is taken from it.
    """
    left = Effort() if effort is None else effort
    everywhere = True
    for relaxed in (False, True):
        found, places = _close_where_few(problem, relaxed, left)
        everywhere = everywhere and places.all
        if found is not None:
            return found._replace(everywhere=everywhere)
    raise ValueError("no pieces fill this run; its ends stand on no common position")


def _close_where_few(problem: Problem, relaxed: bool, effort: Effort) -> tuple[Found | None, Places]:
    """The search at the most places that are few enough, and these places; the fewest are gone through in any case."""
    made: Made = {}
    for places in try_places(problem):
        if effort.used_up and not (places.fewest if relaxed else places.few):
            continue
        try:
            return _search(problem, places, relaxed, effort, made), places
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


def _search(problem: Problem, places: Places, relaxed: bool, effort: Effort, made: Made) -> Found | None:
    """The best layout at these places, None where none keeps the rules. TooMany where that takes more than it may."""
    tracks, bounds = _make_tracks(problem, places, relaxed, effort, made)
    if max(alone[0] for alone in bounds.alone) >= IMPOSSIBLE:
        return None
    first, bounds = _find_first(tracks, bounds, None if places.fewest else effort.allow(MOST_TRIES, TRY), effort)
    if first is None or count_settings(first.cost) < 2:
        return first and first._replace(settings_proven=True)
    again = Zip(tracks, bounds, first.cost, minds_settings=True)
    better = again.close(effort.allow(SETTINGS_TRIES, TRY))
    effort.spend(TRY * again.expanded)
    return better or first._replace(settings_proven=not again.gave_up)


def _make_tracks(problem: Problem, places: Places, relaxed: bool, effort: Effort,
                 made: Made) -> tuple[tuple[Track, Track], Bounds]:
    """Both tracks, and what each costs at least by itself. What was ``made`` at these places is taken up again."""
    most, settings = None if places.fewest else effort.allow(MOST_STEPS), Settings()
    key = places.positions, places.end_pieces
    tracks = made.get(key)
    try:
        if tracks is None:
            tracks = (Track(problem, 0, places, settings, relaxed, most), Track(problem, 1, places, settings, relaxed, most))
        else:
            for track in tracks:
                track.begin_again(places, most)
        made[key] = tracks
        bounds = Bounds((bound_alone(tracks[0]), bound_alone(tracks[1])))
    except TooMany as much:
        effort.spend(much.work)
        raise
    finally:
        effort.spend(sum(track.take_stock() for track in tracks or ()))
    return tracks, bounds


def _find_first(tracks: tuple[Track, Track], bounds: Bounds, tries: int | None,
                effort: Effort) -> tuple[Found | None, Bounds]:
    """The best pair of tracks, saw settings left aside, and the bounds that led there. TooMany after so many tries."""
    zipped = Zip(tracks, bounds, IMPOSSIBLE, minds_settings=False)
    first = zipped.close(FEW_TRIES if tries is None else min(FEW_TRIES, tries))
    effort.spend(TRY * zipped.expanded)
    if not zipped.gave_up:
        return first, bounds
    if effort.used_up and tries is not None:
        raise TooMany
    from wallplan.bond.together import Together  # numpy: only what is not soon found wants it

    together = Together(tracks, bounds.alone)
    better = bounds._replace(together=together)
    zipped = Zip(tracks, better, IMPOSSIBLE, minds_settings=False)
    first = zipped.close(tries)
    effort.spend(together.weighed // WEIGHED + TRY * zipped.expanded)
    if zipped.gave_up:
        raise TooMany
    return first, better

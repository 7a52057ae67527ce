"""Why a brick of a wall one brick thick is a header, a closer or a stretcher, what stands behind, where the bond breaks."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise

from wallplan.advice.one_brick import list_fitting
from wallplan.layout.model import Piece
from wallplan.lengths import print_length, print_size
from wallplan.teaching.reason import Reason
from wallplan.teaching.runs import SAME, Run, WallRuns
from wallplan.teaching.why_sizes import tell_place

CENTRED = 2_000
"""Ticks by which a header may stand off a stretcher's middle and still be told to stand over it: 2 mm."""


def explain_brick(runs: WallRuns, number: int, piece: Piece) -> tuple[Reason, ...]:
    """What a brick is in the bond and why it is there. () for lintels and returns."""
    match piece.shape:
        case "header":
            return tuple(_explain_header(runs, number, piece))
        case "closer":
            return tuple(_explain_closer(runs, number, piece))
        case "stretcher":
            return tuple(_explain_stretcher(runs, number, piece))
        case _:
            return ()


def explain_courses_bricks(runs: WallRuns, number: int) -> tuple[Reason, ...]:
    """What a course is made of, front and back; its closers; what is sawn for it or out of turn."""
    course = runs.course(number)
    if course is None or not course.pieces:
        return ()
    return tuple(dict.fromkeys((*_tell_kinds(runs, number), *_tell_behind(runs, number), *_tell_closers(runs, number),
                                *_tell_sawn(runs, number), *_tell_breaks(runs, number))))


def count_bricks(runs: WallRuns, number: int) -> tuple[int, int, int, int]:
    """Headers, closers, stretchers on the face (sawn ones too) and bricks behind, of a course's own."""
    course = runs.course(number)
    shapes = [piece.shape for piece in course.pieces] if course is not None else []
    behind = 0 if course is None else len(course.backing)
    return shapes.count("header"), shapes.count("closer"), shapes.count("stretcher"), behind


def _explain_header(runs: WallRuns, number: int, piece: Piece) -> Iterator[Reason]:
    unit, run = runs.job.masonry.unit, runs.run_of(number, piece)
    face, long = (print_size(ticks, runs.job.measure) for ticks in (piece.length, unit.length))
    quoin = piece in (run.pieces[0], run.pieces[-1])
    name = f"Quoin header, {face} on the face, {tell_place(run, piece)}" if quoin else f"Header, {face} on the face"
    yield Reason("header", f"{name}: it lies across the wall, {long} from front to back, and ties the two leaves together.",
                 (piece.length, unit.length))
    below = find_stretcher_below(runs, number, piece)
    if below is not None and not quoin:
        yield Reason("over a stretcher", f"It stands over the middle of a stretcher of course {number - 1}.",
                     (number - 1, below.left))
    yield from _explain_break(runs, number, piece)


def find_stretcher_below(runs: WallRuns, number: int, piece: Piece) -> Piece | None:
    """The whole stretcher in the course below on whose middle a header stands; None where there is none."""
    below = runs.course(number - 1)
    middle = piece.left + piece.right
    whole = [other for other in (below.pieces if below is not None else ())
             if (other.shape, other.piece) == ("stretcher", "full")]
    return next((other for other in whole if abs(other.left + other.right - middle) <= 2 * CENTRED), None)


def _explain_stretcher(runs: WallRuns, number: int, piece: Piece) -> Iterator[Reason]:
    size, run = print_size(piece.length, runs.job.measure), runs.run_of(number, piece)
    if not has_like_behind(runs, number, piece):
        words = (f"Quoin stretcher, {size}, {tell_place(run, piece)}: its end is a header in the face of the wall that "
                 "meets this one, which goes on behind it.")
        yield Reason("quoin stretcher", words, (piece.length,))
    elif piece.piece == "full":
        yield Reason("stretcher", f"Stretcher, {size}: it lies along the wall, with its like behind it.", (piece.length,))
    else:
        called = f"Cut {piece.mark}" if piece.mark else f"{piece.piece.capitalize()} brick"
        yield Reason("sawn pair", f"{called}, {size}, {tell_place(run, piece)}: one in front, one behind.", (piece.length,))
    yield from _explain_break(runs, number, piece)


def has_like_behind(runs: WallRuns, number: int, piece: Piece) -> bool:
    """Whether a brick of the same length stands behind a stretcher."""
    course = runs.course(number)
    return course is not None and any((one.left, one.length) == (piece.left, piece.length) for one in course.backing)


def _explain_closer(runs: WallRuns, number: int, piece: Piece) -> Iterator[Reason]:
    run = runs.run_of(number, piece)
    face, mark = print_size(piece.length, runs.job.measure), f" {piece.mark}" if piece.mark else ""
    yield Reason("closer", f"Queen closer{mark}, {face} on the face, {_beside_what(run, piece)}: a brick ripped along its "
                           "length.", (piece.length,))
    lap = measure_without(runs, number, piece)
    if lap is not None:
        yield _tell_without(runs, lap)
    yield Reason("closer not at the end", "It never stands at the end itself: so thin a piece would be knocked off there, "
                                          "and the header beside it holds it in.")


def _beside_what(run: Run, piece: Piece) -> str:
    """Which header a closer stands beside: the run's own at its end, or the other wall's at a corner."""
    place = run.pieces.index(piece)
    left = place <= len(run.pieces) // 2
    return f"beside the header at {(run.start if left else run.end).words}"


def measure_without(runs: WallRuns, number: int, piece: Piece) -> tuple[int, int] | None:
    """The least lap, and the course over or under in which, that this course's joints would have were a closer left out and
    the bricks from it to the run's middle moved up to the header. None where the lap would be enough, or without neighbours.
    """
    run, least = runs.run_of(number, piece), runs.job.masonry.least_lap
    place = run.pieces.index(piece)
    left = place <= len(run.pieces) // 2
    shift = (piece.length + runs.job.masonry.joint) * (-1 if left else 1)
    half = len(run.pieces) // 2
    joints = [(one.right + two.left) // 2 for one, two in pairwise(run.pieces)]
    moved = joints[place + 1:max(half, place + 3)] if left else joints[min(half, max(place - 3, 0)):max(place - 1, 0)]
    found = [(abs(near - at - shift), beside) for at in moved for beside in (number - 1, number + 1)
             if (near := runs.nearest(beside, at + shift)) is not None]
    lap = min(found, default=(least, 0))
    return lap if lap[0] < least - SAME else None


def _tell_without(runs: WallRuns, lap: tuple[int, int], them: str = "it") -> Reason:
    off, beside = lap
    size, least = (print_size(ticks, runs.job.measure) for ticks in (off, runs.job.masonry.least_lap))
    near = "in line with a joint" if size.startswith("0") else f"only {size} from a joint"
    words = (f"Without {them} the bricks after {them} would bring a joint {near} of course {beside}; the lap must be "
             f"{least} at least.")
    return Reason("without the closer", words, (off, beside, runs.job.masonry.least_lap))


def _explain_break(runs: WallRuns, number: int, piece: Piece) -> Iterator[Reason]:
    """Why the bond breaks here: its lengths under and over the run's. Nothing where it does not, or where they fill it."""
    run = runs.run_of(number, piece)
    if piece in find_breaks(runs, run):
        yield from tell_unfilled(runs, run)


def find_breaks(runs: WallRuns, run: Run) -> tuple[Piece, ...]:
    """The bricks of a run at which its bond breaks: sawn pairs; in Flemish bonds headers and stretchers out of turn; in the
    others, where a course is of one kind, the other kind, but for a quoin."""
    plain = [piece for piece in run.pieces if piece.shape in ("header", "stretcher")]
    sawn, bond = [piece for piece in plain if piece.piece != "full"], runs.job.masonry.bond
    if bond == "flemish garden wall":
        return tuple(piece for piece in plain if piece in sawn or piece in find_uneven(run))
    if bond != "flemish":
        usual = "header" if is_of_headers(runs, run) else "stretcher"
        quoins = () if bond == "english" else (run.pieces[0], run.pieces[-1])
        return tuple(piece for piece in plain if piece in sawn or (piece.shape != usual and piece not in quoins))
    alike = [two for one, two in pairwise(plain) if one.shape == two.shape and one.piece == two.piece == "full"]
    return tuple(piece for piece in plain if piece in sawn or piece in alike)


def is_of_headers(runs: WallRuns, run: Run) -> bool:
    """Whether a run is one of headers, by most of its bricks; in header bond always."""
    shapes = [piece.shape for piece in run.pieces]
    return runs.job.masonry.bond == "header" or shapes.count("header") > shapes.count("stretcher")


def find_uneven(run: Run) -> list[Piece]:
    """In Flemish garden wall bond: headers after fewer than three stretchers, but for those of the run's ends, and fourth
    stretchers."""
    plain = [piece for piece in run.pieces if piece.shape != "closer"]
    headers = [place for place, piece in enumerate(plain) if piece.shape == "header" and 0 < place < len(plain) - 1]
    inside = list(pairwise(headers))
    found = [plain[two] for one, two in inside if two - one < 4] + [plain[place] for place in headers
                                                                    if plain[place - 1].shape == "header"]
    ends = [-1, *headers, len(plain)]
    return found + [plain[place] for one, two in pairwise(ends) for place in range(one + 4, two)
                    if plain[place].shape == "stretcher" and all(other.shape == "stretcher" for other in plain[one + 1:place]
                                                                 if other is not plain[0])]


def tell_unfilled(runs: WallRuns, run: Run) -> Iterator[Reason]:
    """That the bond's own lengths do not fill a run, with the nearest; nothing where one does."""
    masonry, measured = runs.job.masonry, runs.job.measure
    nominal = run.right - run.left + masonry.joint
    near = _list_near(runs, run, nominal)
    if run.start.kind == "corner" or run.end.kind == "corner" or any(abs(one - nominal) <= SAME for one in near):
        return
    told = " or ".join(print_length(one - masonry.joint, measured) for one in sorted(near))
    long = print_length(run.right - run.left, measured)
    yield Reason("bond does not fill the run",
                 f"Broken bond: from {run.start.words} to {run.end.words} is {long}, "
                 f"and {masonry.bond_name} with joints of {print_size(masonry.joint, measured)} is {told}.",
                 (run.right - run.left, *(one - masonry.joint for one in sorted(near))))


def _list_near(runs: WallRuns, run: Run, nominal: int) -> tuple[int, ...]:
    """The lengths of the bond under and over a run's, as its ends are; where every half brick fits, whatever they are."""
    masonry = runs.job.masonry
    alike = list_fitting(masonry, nominal)
    in_turn = list_fitting(masonry, nominal, alike=False)
    if masonry.stretcher_courses:
        return tuple(sorted({*alike, *in_turn}, key=lambda length: abs(length - nominal))[:2])
    ends = [piece.shape == "stretcher" for piece in (run.pieces[0], run.pieces[-1])]
    return alike if ends[0] == ends[1] or not in_turn else in_turn


def _tell_kinds(runs: WallRuns, number: int) -> Iterator[Reason]:
    headers, _, stretchers, _ = count_bricks(runs, number)
    if not headers and not stretchers:
        return
    counted = " and ".join(_count(count, name) for count, name in ((headers, "header"), (stretchers, "stretcher")) if count)
    if runs.job.masonry.bond == "flemish":
        words = f"Headers and stretchers in turn: {counted}."
    elif runs.job.masonry.bond == "flemish garden wall":
        words = f"A header after three stretchers, fewer at an end: {counted}."
    elif 2 * headers > headers + stretchers:
        words = f"A course of headers, which ties the leaves together: {counted}."
    else:
        words = f"A course of stretchers: {counted}."
    yield Reason("kinds of the course", words, (headers, stretchers))


def _tell_behind(runs: WallRuns, number: int) -> Iterator[Reason]:
    headers, closers, _, behind = count_bricks(runs, number)
    through = headers + closers
    if behind:
        like = "1 brick lies, the like of the stretcher" if behind == 1 else f"{behind} bricks lie, one for each stretcher"
        goes = "; nothing goes through" if not through else (
            "; 1 header or closer goes through" if through == 1 else f"; {through} headers and closers go through")
        yield Reason("behind the face", f"Behind the face {like}{goes}.", (behind, through))


def _tell_closers(runs: WallRuns, number: int) -> Iterator[Reason]:
    found = [(run, piece) for run in runs.runs[number - 1] for piece in run.pieces if piece.shape == "closer"]
    if not found:
        return
    places = list(dict.fromkeys(_beside_what(run, piece).partition(" at ")[2] for run, piece in found))
    *first, last = places
    told = f"{', '.join(first)} and {last}" if first else last
    face = print_size(found[0][1].length, runs.job.measure)
    count = "A queen closer" if len(found) == 1 else f"{len(found)} queen closers"
    words = f"{count}, {face} on the face, beside the header at {told}, never at the end itself."
    yield Reason("closers of the course", words, (len(found), found[0][1].length))
    laps = [lap for _, piece in found if (lap := measure_without(runs, number, piece)) is not None]
    if laps:
        yield _tell_without(runs, min(laps), "it" if len(found) == 1 else "them")


def _tell_sawn(runs: WallRuns, number: int) -> Iterator[Reason]:
    for run in runs.runs[number - 1]:
        for piece in run.pieces:
            if piece.shape == "stretcher" and piece.piece != "full":
                yield from (one for one in _explain_stretcher(runs, number, piece) if one.kind == "sawn pair")


def _tell_breaks(runs: WallRuns, number: int) -> Iterator[Reason]:
    for run in runs.runs[number - 1]:
        if find_breaks(runs, run):
            yield from tell_unfilled(runs, run)


def _count(count: int, name: str) -> str:
    return f"{count} {name}{'' if count == 1 else 's'}"

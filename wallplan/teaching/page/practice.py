"""The practice: places in a wall where a learner picks the next piece, and what is offered there.

Wrong offers are the mistakes that are really made: a joint right over the one below, too little lap, a sliver now or one
left for the next, a closing piece that forgets its joint. Each is judged by the rules, none is called wrong that keeps them.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from typing import NamedTuple

from wallplan.layout.model import Piece
from wallplan.lengths import TICKS_PER_INCH, TICKS_PER_MM, Measure, print_size
from wallplan.rules.as_laid import ROUNDING
from wallplan.teaching.page.bench import Bench
from wallplan.teaching.page.texts import tell_length
from wallplan.teaching.page.verdict import Verdict, judge
from wallplan.teaching.runs import WallRuns, is_layered

MOST_QUESTIONS = 24
MOST_WRONG = 3


class Offer(NamedTuple):
    """A piece to pick: ``name`` is its stock name or "cut", ``length`` ticks."""

    name: str
    length: int
    verdict: Verdict


class Question(NamedTuple):
    """A place to pick for: course number, the layout's own piece, what is asked, and the offers from short to long."""

    course: int
    piece: Piece
    words: str
    offers: tuple[Offer, ...]


def list_questions(runs: WallRuns) -> tuple[Question, ...]:
    """Questions of one wall in the order of its courses, each kind of place once; () where there is nothing to choose."""
    benches = list(_find_places(runs))
    most = min(MOST_QUESTIONS, len(benches))
    picked = [benches[index * len(benches) // most] for index in range(most)]
    found = (_ask(bench) for bench in picked)
    return tuple(question for question in found if len(question.offers) > 1)


def _find_places(runs: WallRuns) -> Iterator[Bench]:
    seen: set[tuple[object, ...]] = set()
    for course, found in zip(runs.wall.courses, runs.runs, strict=True):
        if is_layered(course) or any(piece.rake or piece.notch for piece in course.pieces):
            continue  # where a piece's length is not all that is to choose
        for run in found:
            for place, piece in enumerate(run.pieces):
                bench = Bench(runs, course.number, run, place)
                if piece.shape in ("precast", "lintel") or (kind := _kind_of_place(bench)) in seen:
                    continue
                seen.add(kind)
                if not bench.is_broken:
                    yield bench


def _kind_of_place(bench: Bench) -> tuple[object, ...]:
    """Equal for two places where the same is asked and for the same reason."""
    piece, run, module = bench.piece, bench.run, bench.job.masonry.module
    below = bench.runs.nearest(bench.course - 1, piece.right)
    lap = None if below is None else abs(round((piece.right - below) / TICKS_PER_MM))
    rest = run.right - piece.left
    end = (rest, run.end.kind) if rest <= 2 * module else None
    start = run.start.kind if bench.place == 0 else None
    return piece.length, bench.ends_run or lap, start, end, bench.course == 1


def _ask(bench: Bench) -> Question:
    offers = {print_size(bench.piece.length, bench.job.measure): _offer(bench, bench.piece.length)}
    faults: set[str] = set()
    spare: list[Offer] = []
    for length in _tempt(bench):
        label = print_size(length, bench.job.measure)
        offer = _offer(bench, length)
        if label in offers or offer is None or _too_near(bench, length):
            continue
        if offer.verdict.fault in faults:
            spare.append(offer)
            continue
        faults.add(offer.verdict.fault)
        offers[label] = offer
        if len(faults) == MOST_WRONG:
            break
    rest = (offer for offer in spare if print_size(offer.length, bench.job.measure) not in offers)
    for _, offer in zip(range(MOST_WRONG - len(faults)), rest, strict=False):
        offers[print_size(offer.length, bench.job.measure)] = offer
    told = sorted((offer for offer in offers.values() if offer is not None), key=lambda offer: offer.length)
    return Question(bench.course, bench.piece, _tell_place(bench), tuple(told))


def _offer(bench: Bench, length: int) -> Offer | None:
    verdict = judge(bench, length)
    return None if verdict is None else Offer(bench.name(length), length, verdict)


def _too_near(bench: Bench, length: int) -> bool:
    """Whether a length can hardly be told from the right one."""
    return abs(length - bench.piece.length) < bench.job.masonry.joint * 9 // 10


def _tempt(bench: Bench) -> Iterator[int]:
    """Lengths that a beginner might pick here: stock first, then mistakes, not in the same order everywhere."""
    masonry = bench.job.masonry
    if masonry.one_brick:
        quarter = masonry.module // 4
        yield from (masonry.unit.length, masonry.unit.thickness, quarter - masonry.joint, 3 * quarter - masonry.joint)
    yield from (one.length for one in masonry.unit.pieces)
    others = list(_usable(bench, (*_mislay(bench), *_mismeasure(bench))))
    turn = bench.course + bench.place
    at = turn % max(1, len(others))
    sliver = tuple(_usable(bench, (bench.job.masonry.least_piece // 2,)))
    yield from (*(sliver if turn % 3 == 0 else ()), *others[at:], *others[:at], *sliver)


def _mislay(bench: Bench) -> Iterator[int]:
    """Lengths that forget the course below: a joint over its joint, or too near to it."""
    masonry = bench.job.masonry
    below = bench.runs.nearest(bench.course - 1, bench.piece.right)
    if below is not None:
        straight = below - masonry.joint // 2 - bench.piece.left
        yield from (straight + masonry.least_lap // 2, straight, straight - masonry.least_lap // 2)

def _mismeasure(bench: Bench) -> Iterator[int]:
    """Lengths that forget a joint or the end of the run, and cuts that belong elsewhere."""
    masonry, piece, run = bench.job.masonry, bench.piece, bench.run
    if bench.ends_run:
        yield from (piece.length + masonry.joint, piece.length - masonry.joint, piece.length - 3 * masonry.joint)
    yield from (run.right - piece.left, (run.right - piece.left) % masonry.module, piece.length - masonry.least_piece)
    yield from sorted({other.length for course in bench.runs.wall.courses[:2] for other in course.pieces if other.mark})[:3]


def _usable(bench: Bench, lengths: Iterable[int]) -> Iterator[int]:
    """Lengths that can be marked with a rule and are at least a finger wide and at most a unit long."""
    unit = bench.job.masonry.unit
    for length in lengths:
        marked = _round(length, bench.job.measure)
        if 20 * TICKS_PER_MM <= marked <= unit.length + bench.job.masonry.joint + ROUNDING:
            yield bench.piece.length if abs(marked - bench.piece.length) <= ROUNDING else marked


def _round(ticks: int, measure: Measure) -> int:
    step = TICKS_PER_INCH // 8 if measure == "feet" else TICKS_PER_MM
    return (ticks + step // 2) // step * step


def _tell_place(bench: Bench) -> str:
    measure, piece, run = bench.job.measure, bench.piece, bench.run
    start = f"at {run.start.words}" if bench.place == 0 else (
        f"{tell_length(run.pieces[bench.place - 1].right, measure)} from the left end")
    room = tell_length(run.right - piece.left, measure)
    return f"Course {bench.course}, {start}. Room to {run.end.words}: {room}. Which piece is next?"

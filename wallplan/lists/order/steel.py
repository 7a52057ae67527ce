"""Bars, only where the plan asks for them: counted from the layout, lapped, and cut from as few as can be."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator
from fractions import Fraction

from wallplan.layout.model import Layout, Piece
from wallplan.lengths import print_length
from wallplan.lists.order.cells import CHANNELS, find_stretches
from wallplan.lists.order.figures import scale_of, show
from wallplan.lists.order.line import Line
from wallplan.lists.order.nesting import Nesting, nest
from wallplan.lists.order.patterns import PLAIN, Sort, Stock
from wallplan.plan.job import Job


def splice(length: int, stock: int, lap: int) -> tuple[int, int, int]:
    """A bar longer than its stock, in ticks: whole stock bars, the last bar's length, and all of it with its laps.

    Every bar but the last gives its length less a lap. (0, length, length) where one bar is long enough.
    """
    whole = max(0, -(-(length - stock) // (stock - lap)))
    last = length - whole * (stock - lap)
    return whole, last, length + whole * lap


def order_bars(layout: Layout) -> Iterator[Line]:
    """The line of bars: upright ones in cells, those of bond beams and lintels; none where the plan asks for none."""
    job, steel = layout.job, layout.job.order.steel
    wanted: Counter[int] = Counter()
    for wall in layout.walls:
        for stretch in find_stretches(wall, job):
            wanted[stretch.top - stretch.bottom + steel.hook] += 1
        parted = () if steel.through_joints else wall.wall.control_joints
        if steel.bond_beam_bars:
            for course in wall.courses:
                channels = [piece for piece in course.pieces if piece.shape in CHANNELS]
                for length in find_runs(channels, job.masonry.widest_joint, parted):
                    wanted[length] += steel.bond_beam_bars
    if not wanted:
        return
    whole, nesting, told = _cut_bars(wanted, job)
    bars = Fraction(whole + nesting.units)
    scale = scale_of(job.measure)
    stock = print_bar(steel.stock, job)
    if steel.bond_beam_bars and any(wall.wall.control_joints for wall in layout.walls):
        told.append(f"those of bond beams {'run through' if steel.through_joints else 'stop at'} control joints")
    told.append(f"so {_tell_patterns(nesting, whole)}")
    told.append(f"{whole} + {nesting.units} = {show(bars)} bars, and no fewer than {whole + nesting.at_least}")
    weight = f"{show(scale.run_of(steel.stock))} {scale.run}"
    name = f"bar {steel.bar}, {stock} long"
    yield Line("steel", name, "each", bars, Fraction(0), f"bars of {weight}; " + "; ".join(told), job.order.of(name).price)


def _cut_bars(wanted: Counter[int], job: Job) -> tuple[int, Nesting, list[str]]:
    """Whole bars, how the rest is cut from others (a shear takes no kerf), and both told."""
    steel = job.order.steel
    sorts: Counter[int] = Counter()
    whole, told = 0, []
    for length, count in sorted(wanted.items(), reverse=True):
        stocks, last, spliced = splice(length, steel.stock, steel.lap)
        whole += stocks * count
        sorts[last] += count
        lap = f"{'lap' if stocks == 1 else 'laps'} of {print_bar(steel.lap, job)}"
        laps = (f" (with {stocks} {lap} {print_bar(spliced, job)}: {stocks} whole and one of {print_bar(last, job)})"
                if stocks else "")
        told.append(f"{count} of {print_bar(length, job)}{laps}")
    nesting = nest(Stock(steel.stock, 0), [Sort(print_bar(length, job), length, 0, PLAIN, count)
                                           for length, count in sorts.items()])
    return whole, nesting, told


def _tell_patterns(nesting: Nesting, whole: int) -> str:
    cut = []
    for pattern, times in nesting.patterns:
        names = [sort.name for sort, n in zip(nesting.sorts, pattern, strict=True) for _ in range(n)]
        cut.append(f"{times} cut to {' + '.join(names)}")
    return ", ".join([f"{whole} whole", *cut] if whole else cut)


def find_runs(pieces: Iterable[Piece], widest_joint: int, parted: tuple[int, ...] = ()) -> Iterator[int]:
    """Lengths in ticks of stretches of pieces, end to end; none for no pieces.

    A gap over ``widest_joint`` parts two, and so does one in which a place of ``parted`` lies: a control joint.
    """
    ordered = sorted(pieces, key=lambda piece: piece.left)
    start = ordered[0].left if ordered else 0
    reached = start
    for piece in ordered:
        if piece.left - reached > widest_joint or any(reached <= at <= piece.left for at in parted):
            yield reached - start
            start = piece.left
        reached = max(reached, piece.right)
    if ordered:
        yield reached - start


def print_bar(ticks: int, job: Job) -> str:
    """The length of a bar as the plan measures it."""
    return print_length(ticks, job.measure) + (" mm" if job.measure == "metric" else "")

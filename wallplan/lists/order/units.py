"""Units to order, by shape and length: those laid whole and those that cuts are sawn from, with spare and pallets."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable
from fractions import Fraction

from wallplan.layout.model import Layout
from wallplan.lengths import print_length, print_size
from wallplan.lists.order.counted import counted_pieces
from wallplan.lists.order.figures import settle, settle_up, show, show_sum
from wallplan.lists.order.line import Line, Ripped, Sawing, Sawn
from wallplan.lists.order.sawing import CLOSER, is_half_high, name_unit
from wallplan.plan.job import Job


def order_units(layout: Layout, sawings: Iterable[Sawing]) -> tuple[Line, ...]:
    """A line for each kind of unit and for each length of precast lintel; () for a job without pieces."""
    job = layout.job
    laid: Counter[str] = Counter(name_unit(job, *kind) for kind in _laid_whole(layout))
    taken: dict[str, list[tuple[str, int]]] = {}
    for sawing in sawings:
        for name, told in _tell_sawing(sawing, job):
            taken.setdefault(name, []).append(told)
    names = sorted({*laid, *taken}, key=lambda name: _rank(name, job))
    lines = [_order_unit(name, laid[name], taken.get(name, []), job) for name in names]
    return (*lines, *_order_precast(layout))


def _laid_whole(layout: Layout) -> Iterable[tuple[str, str, bool]]:
    whole = {stock.name for stock in layout.job.masonry.unit.pieces if not stock.sawn}
    for piece in counted_pieces(layout):
        if piece.shape not in ("precast", CLOSER) and piece.piece in whole:
            yield piece.piece, piece.shape, is_half_high(piece, layout.job)


def _rank(name: str, job: Job) -> tuple[bool, int, str]:
    """Full-high before half-high, long before short, stretchers first."""
    lengths = [piece.name for piece in job.masonry.unit.pieces]
    plain, _, shape = name.removeprefix(f"{job.masonry.unit.key} ").partition(", ")
    return "half-high" in plain, lengths.index(next(one for one in lengths if plain.endswith(one))), shape


def _tell_sawing(sawing: Sawing, job: Job) -> Iterable[tuple[str, tuple[str, int]]]:
    """Item, and what is sawn from how many of it. Strips of a rip are gathered into units, shape by shape."""
    if sawing.rip is None:
        found: Counter[tuple[str, str]] = Counter()
        for sawn in sawing.sawn:
            way = "ripped along its length as" if sawn.shape == CLOSER else "as"
            found[name_unit(job, sawn.piece, sawn.shape, sawing.half_high), f"{way} {' + '.join(sawn.cuts)}"] += sawn.times
        yield from ((name, (f"{times} {cuts}", times)) for (name, cuts), times in found.items())
        return
    for ripped in sawing.rip_units():
        alike = [sawn for sawn in sawing.sawn if sawn.shape == ripped.shape]
        yield name_unit(job, alike[0].piece, ripped.shape, False), (_tell_rip(sawing, alike, ripped, job), ripped.units)


def _tell_rip(sawing: Sawing, alike: list[Sawn], ripped: Ripped, job: Job) -> str:
    height = print_size(sawing.rip or 0, job.measure)
    strips: Counter[str] = Counter()
    for sawn in alike:
        strips[" + ".join(sawn.cuts)] += sawn.times
    cuts = ", ".join(f"{times} as {names}" for names, times in strips.items())
    reused = f" (other units leave {ripped.reused} of these strips)" if ripped.reused else ""
    wanted = ripped.strips - ripped.reused
    if sawing.strips == 1:
        return f"{wanted} ripped to {height}, {cuts}{reused}"
    exact = Fraction(wanted, sawing.strips)
    return (f"strips {height} high, {cuts}{reused}; strips of a unit: {wanted} / {sawing.strips} = "
            f"{show(settle(exact, 2))}, up to {settle_up(exact)}")


def _order_unit(name: str, laid: int, sawn: list[tuple[str, int]], job: Job) -> Line:
    total = sum(count for _, count in sawn)
    why = [f"laid whole {laid}"]
    if sawn:
        why += [f"sawn: {text}" for text, _ in sawn]
        why.append(f"{show_sum([laid, *(count for _, count in sawn)])} = {laid + total}")
    return add_spare("units", name, "each", Fraction(laid + total), "; ".join(why), job)


def add_spare(group: str, name: str, measure: str, net: Fraction, why: str, job: Job) -> Line:
    """A line of whole things with its spare in percent, rounded up, and up to whole pallets where the plan has them."""
    wish = job.order.of(name)
    percent = job.order.spare if wish.spare is None else wish.spare
    exact = settle(net * percent / 100, 2)
    spare, told = settle_up(exact), [why]
    told.append(f"spare {show(percent)} %: {show(net)} x {show(percent)} / 100 = {show(exact)}"
                + (f", up to {show(spare)}" if spare != exact else ""))
    order = net + spare
    told.append(f"{show(net)} + {show(spare)} = {show(order)}")
    if wish.pallet:
        pallets = settle_up(order / wish.pallet)
        full = pallets * wish.pallet
        told += [f"pallets of {wish.pallet}: {show(order)} / {wish.pallet} = {show(settle(order / wish.pallet, 2))}, "
                 f"up to {show(pallets)}", f"{show(pallets)} x {wish.pallet} = {show(full)}",
                 f"spare {show(full)} - {show(net)} = {show(full - net)}"]
        spare = full - net
    return Line("units" if group == "units" else "other", name, measure, net, spare, "; ".join(told), wish.price)


def _order_precast(layout: Layout) -> Iterable[Line]:
    """Precast lintels by their size, no spare: each is made or picked for its opening."""
    job = layout.job
    found: Counter[tuple[int, int]] = Counter()
    for piece in counted_pieces(layout):
        if piece.shape == "precast":
            found[piece.length, piece.height] += 1
    for (length, height), count in sorted(found.items(), reverse=True):
        unit = " mm" if job.measure == "metric" else ""
        name = f"precast lintel {print_length(length, job.measure)}{unit} x {print_size(height, job.measure)} high"
        wish = job.order.of(name)
        yield Line("units", name, "each", Fraction(count), Fraction(0),
                   f"counted in the layout {count}; no spare: each is for its opening", wish.price)

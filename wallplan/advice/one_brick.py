"""Which lengths of masonry bonds with headers fill without a header or stretcher out of turn, and without sawn pairs."""

from __future__ import annotations

from dataclasses import dataclass

from wallplan.plan.job import Masonry


@dataclass(frozen=True)
class Repeat:
    """Quarters of a stretcher after which a bond repeats, and those that are over in masonry whose ends are alike, in
    masonry whose ends differ (None where that is not laid), and in openings that the bond runs past."""

    quarters: int
    alike: int
    in_turn: int | None
    open: int


REPEATS = {"flemish": Repeat(6, 4, 7, 2), "english": Repeat(4, 4, None, 0)}
"""Flemish, ends alike: stretcher, and header and stretcher so often; in turn: stretcher, closer, quoin header besides.
English: stretchers, or headers between two closers and quoin headers."""


def list_fitting(masonry: Masonry, nominal: int, *, alike: bool = True) -> tuple[int, ...]:
    """The nominal lengths of masonry nearest to one, under and over it, that the bond fills; the nearer first.

    ``alike`` False asks for those whose ends differ: () in English bond. Ticks, with one joint.
    """
    repeat = REPEATS[masonry.bond]
    least = repeat.alike if alike else repeat.in_turn
    return () if least is None else _nearest(masonry, nominal, least, repeat.quarters)


def list_open(masonry: Masonry, nominal: int) -> tuple[int, ...]:
    """The widths less a joint, nearest to one, of openings over and under which the bond runs on as beside them."""
    repeat = REPEATS[masonry.bond]
    return _nearest(masonry, nominal, repeat.open or repeat.quarters, repeat.quarters)


def _nearest(masonry: Masonry, nominal: int, least: int, step: int) -> tuple[int, ...]:
    count = max(0, (nominal * 4 // masonry.module - least) // step)
    found = {masonry.module * (least + step * n) // 4 for n in (count, count + 1)}
    return tuple(sorted(found, key=lambda length: (abs(length - nominal), length)))

"""Small walls by number, off the module and the coursing, and the best moves of one by trying every choice there is."""

from __future__ import annotations

import random
from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass, replace
from itertools import product

from tests.jobs import INCH, make_job, make_masonry, make_opening, make_wall
from wallplan.advice.moves import Move, Thing, move_wall
from wallplan.advice.offers import Offers, offer_moves
from wallplan.advice.trial import may_stand
from wallplan.layout.build import lay
from wallplan.plan.advice_table import KINDS
from wallplan.plan.job import Job, Movable, Wall
from wallplan.rules.check import check_wall

ANY = Movable(KINDS, farthest=8 * INCH, step=None, least_pier=0)

Rank = tuple[int, int, int, int]


@dataclass(frozen=True)
class SmallWall:
    """A job of one wall, and of its offers so few that all choices can be tried."""

    job: Job
    offers: Offers

    @property
    def wall(self) -> Wall:
        """The one wall."""
        return self.job.walls[0]


def make_small_wall(number: int) -> SmallWall:
    """The wall of this number; the same one every time."""
    dice = random.Random(f"advice {number}")
    masonry = make_masonry(dice.choice(("block-8", "block-12")), joints_move=dice.random() < 0.4)
    length, height = dice.randint(64, 90), 8 * dice.randint(2, 3) + dice.choice((0, 0, 0, 2, -1))
    left = dice.randint(18, 30)
    sill = dice.choice((0, 0, 8, 6))
    opening = make_opening(left * INCH, (left + dice.choice((16, 24, 26))) * INCH + 3 * INCH // 8, sill * INCH,
                           min(height, sill + dice.choice((8, 10, 40))) * INCH, "none", 0)
    joints = [(length - 10) * INCH] if dice.random() < 0.3 else []
    job = make_job(masonry, make_wall(length * INCH, height * INCH, [opening], control_joints=joints))
    assert may_stand(job.walls[0], job)
    every = offer_moves(job.walls[0], masonry, ANY)
    things = dice.sample(sorted(every), min(len(every), 3 if number % 10 == 0 else 2))  # three take three times as long
    return SmallWall(job, {thing: every[thing][:1 if place else 2] for place, thing in enumerate(things)})


def try_everything(small: SmallWall) -> Iterator[tuple[Rank, tuple[Move, ...]]]:
    """Rank and moves of every choice that may stand and breaks no rule more often than the wall did, the wall's own first."""
    unmoved, _ = _lay(small.wall, small.job)
    for chosen in product(*((0, *distances) for distances in small.offers.values())):
        moves = tuple(Move(thing, by) for thing, by in zip(small.offers, chosen, strict=True) if by)
        moved = move_wall(small.wall, moves)
        if may_stand(moved, small.job):
            broken, cutting = _lay(moved, small.job)
            if all(count <= unmoved[rule] for rule, count in broken.items()):
                yield (broken.total(), cutting, len(moves), sum(abs(move.by) for move in moves)), moves


def _lay(wall: Wall, job: Job) -> tuple[Counter[str], int]:
    """Broken places by rule, and the cutting."""
    (laid,) = lay(replace(job, walls=(wall,))).walls
    findings = check_wall(laid, job) if laid.doubtful else ()
    return Counter(finding.rule for finding in findings if not finding.held), laid.cutting


def things_of(moves: tuple[Move, ...]) -> frozenset[Thing]:
    """What a choice moves."""
    return frozenset(move.thing for move in moves)

"""Many random plans and spoilt files in one process, by seed; what came of them added up."""

from __future__ import annotations

import re
import tempfile
import time
from collections import Counter
from dataclasses import dataclass, replace
from pathlib import Path

from hypothesis import HealthCheck, Phase, given, settings
from hypothesis import seed as seeded
from hypothesis import strategies as st

from tests.fuzz.spoil import spoil
from tests.fuzz.walk import Walked, refuse_file, walk_plan
from tests.plan_walls import plans_of_every_key
from tests.strategies import header_plans, joined_plans, nearly_valid_plans, outlined_plans, pier_plans, whole_plans

DRAWN_EVERY, ADVISED_EVERY = 25, 25

PLANS = st.one_of(*[plans_of_every_key()] * 6, *[whole_plans()] * 2, *[outlined_plans()] * 2, pier_plans(), header_plans(), joined_plans())
"""Plans of every form, those with every key most often."""


@dataclass(frozen=True)
class Tally:
    """What came of many plans. ``faults`` are files with what is wrong with how they were dealt with.

    ``unfinished`` plans are valid ones that could not be laid to the end; ``longest`` is the longest step in seconds.
    ``refusals`` are the first mistake of each plan refused.
    """

    laid: int = 0
    pieces: int = 0
    drawn: int = 0
    advised: int = 0
    unfinished: int = 0
    breaking: int = 0
    refused: int = 0
    mistakes: int = 0
    bad: int = 0
    good_after_all: int = 0
    faults: tuple[tuple[bytes, str], ...] = ()
    refusals: tuple[str, ...] = ()
    longest: float = 0.0

    def with_others(self, other: Tally) -> Tally:
        """Both added up."""
        both = (getattr(self, name) + getattr(other, name) for name in self.__dataclass_fields__)
        return replace(Tally(*both), longest=max(self.longest, other.longest))

    def tell(self) -> str:
        """In three lines."""
        return (f"plans: {self.laid:,} laid, checked and listed, {self.pieces:,} pieces; {self.drawn:,} drawn, {self.advised:,} advised on; "
                f"{self.breaking:,} break a rule and say so; {self.refused:,} refused; {self.unfinished:,} broken off; "
                f"longest step {self.longest:.1f} s\n"
                f"bad files: {self.bad:,} refused, {self.mistakes:,} mistakes told; {self.good_after_all:,} were good after all\n"
                f"faults: {len(self.faults)}")

    def kinds(self) -> Counter[str]:
        """How often each kind of fault was met, without its figures and names."""
        return Counter(_kind_of(fault) for _, fault in self.faults)

    def tell_kinds(self) -> str:
        """A line for each kind of fault and of what plans were refused for, with how often it was met; "" for none."""
        refused = Counter(f"refused: {_without_figures(one)}" for one in self.refusals)
        return "".join(f"{times:6,}  {kind}\n" for kinds in (self.kinds(), refused) for kind, times in kinds.most_common())


def walk_many(seed: int, count: int, until: float) -> Tally:
    """So many plans that can be laid, each another, or fewer where the time is over."""
    tally, met = Tally(), set[str]()

    @seeded(seed)
    @settings(max_examples=6 * count, database=None, deadline=None, phases=[Phase.generate],
              suppress_health_check=list(HealthCheck))
    @given(PLANS)
    def one(text: str) -> None:
        nonlocal tally
        if text not in met and tally.laid < count and time.monotonic() < until:
            met.add(text)
            draw, advise = tally.laid % DRAWN_EVERY == 0, tally.laid % ADVISED_EVERY == 1
            walked = walk_plan(text, draw=draw, advise=advise)
            tally = tally.with_others(_count_plan(walked, text.encode(), draw=draw, advise=advise))

    if time.monotonic() < until:
        one()
    return tally


def spoil_many(seed: int, count: int, until: float) -> Tally:
    """So many bad files, or fewer where the time is over: spoilt texts, and plans with mistakes in them."""
    tally = Tally()
    with tempfile.TemporaryDirectory() as place:
        path = Path(place) / "plan.toml"

        @seeded(seed)
        @settings(max_examples=3 * count, database=None, deadline=None, phases=[Phase.generate],
                  suppress_health_check=list(HealthCheck))
        @given(plans_of_every_key() | whole_plans() | nearly_valid_plans())
        def one(text: str) -> None:
            nonlocal tally
            if tally.bad < count and time.monotonic() < until:
                data = spoil(text, seed * 100_000 + tally.bad + tally.good_after_all)
                path.write_bytes(data)
                tally = tally.with_others(_count_bad(refuse_file(path), data))

        if time.monotonic() < until:
            one()
    return tally


def _count_plan(walked: Walked, text: bytes, *, draw: bool, advise: bool) -> Tally:
    laid, refused = bool(walked.pieces), walked.mistakes > 0
    return Tally(laid=laid, pieces=walked.pieces, drawn=laid and draw, advised=laid and advise, breaking=bool(walked.broken),
                 refused=refused, unfinished=not laid and not refused, longest=walked.longest, refusals=walked.refused_for[:1],
                 faults=tuple((text, fault) for fault in walked.faults))


def _count_bad(walked: Walked, data: bytes) -> Tally:
    refused = walked.mistakes > 0
    return Tally(bad=refused, mistakes=walked.mistakes, good_after_all=not refused,
                 faults=tuple((data, fault) for fault in walked.faults))


def _kind_of(fault: str) -> str:
    """``lay: took``, or the step with the last line of what was raised: what many faults have in common."""
    first, last = fault.splitlines()[0], fault.splitlines()[-1]
    kind = first if first == last else f"{first.partition(':')[0]}: {last}"
    return re.sub(r"[\"'{(\[].*|\d.*", "", kind)[:80].strip()


def _without_figures(told: str) -> str:
    """A mistake without its names and figures."""
    return re.sub(r"\d[\d'\".,/ \-]*( mm)?", "# ", re.sub(r'"[^"]*[a-z][^"]*"', "...", told.partition(": ")[2]))[:110].strip()

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
from tests.strategies import header_plans, joined_plans, nearly_valid_plans, outlined_plans, pier_plans, whole_plans

DRAWN_EVERY, ADVISED_EVERY = 25, 25


@dataclass(frozen=True)
class Tally:
    """What came of many plans. ``faults`` are files with what is wrong with how they were dealt with.

    ``unfinished`` plans are valid ones that could not be laid to the end; ``longest`` is the longest step in seconds.
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


def walk_many(seed: int, count: int, until: float) -> Tally:
    """So many plans that can be laid, or fewer where the time is over."""
    tally = Tally()

    @seeded(seed)
    @settings(max_examples=4 * count, database=None, deadline=None, phases=[Phase.generate],
              suppress_health_check=list(HealthCheck))
    @given(st.one_of(*[whole_plans()] * 4, *[outlined_plans()] * 4, pier_plans(), header_plans(), joined_plans()))
    def one(text: str) -> None:
        nonlocal tally
        if tally.laid < count and time.monotonic() < until:
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
        @given(whole_plans() | nearly_valid_plans())
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
                 refused=refused, unfinished=not laid and not refused, longest=walked.longest,
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

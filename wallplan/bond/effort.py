"""How much work a search may still do: counted, not timed, so that a plan is laid alike on every machine.

Numbers only. The unit is a step from joint to joint of one track; looking at a state of both tracks takes as long as TRY
of them.
"""

from __future__ import annotations

import gc
from collections.abc import Iterator
from contextlib import contextmanager

ALONE = 550_000
"""Work for one search that stands alone, about a second."""

EACH = 8_000
"""Work that every further search adds to what may be done in all."""

TRY = 20
"""Steps that looking at one state of both tracks is worth."""

WEIGHED = 60
"""So many steps weighed beside a node of the other track, by arrays, take as long as one that is found."""

MADE = 4
"""Steps that making a node is worth."""

LEAST = 3_000
"""Steps that may always be taken, whatever is left."""


@contextmanager
def without_collecting() -> Iterator[None]:
    """What is searched and laid has no cycles: going through it for them takes a third of the time, and finds nothing."""
    collects = gc.isenabled()
    gc.disable()
    try:
        yield
    finally:
        if collects:
            gc.enable()


class Effort:
    """What is left of the work that may be done; it may fall under nothing, since a little is always allowed."""

    def __init__(self, left: int = ALONE) -> None:
        self.left = left

    @property
    def used_up(self) -> bool:
        """Whether no more than a little is allowed."""
        return self.left <= 0

    def allow(self, most: int, worth: int = 1) -> int:
        """So many of something that is ``worth`` some steps each: ``most``, or a quarter of what is left."""
        return min(most, max(LEAST, self.left // 4) // worth)

    def spend(self, steps: int) -> None:
        """Work that was done, in steps."""
        self.left -= steps

    def share(self, among: int) -> Effort:
        """What one of so many searches still to be made may do: up to three times its part."""
        return Effort(max(0, min(self.left, 3 * self.left // max(among, 1))))

"""Whether this is a long run: WALLPLAN_LONG=1 asks for it."""

from __future__ import annotations

import os

LONG = os.environ.get("WALLPLAN_LONG", "") not in ("", "0")
"""True where many new random examples are sought, and not the same few each time."""


def examples(few: int) -> int:
    """How many examples to try: ``few``, or twenty times as many in a long run."""
    return 20 * few if LONG else few

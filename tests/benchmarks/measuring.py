"""How times are measured so that other work on the machine does not decide: turns, the least of each, and another try."""

from __future__ import annotations

import os
import subprocess
import sys
import time
from collections.abc import Callable, Mapping, Sequence
from pathlib import Path

ROOT = Path(__file__).parents[2]


def time_in_turn(cases: Mapping[str, Callable[[], object]], rounds: int) -> dict[str, float]:
    """The least seconds of each case, all of them run in turn. What else the machine does can only add to a time."""
    taken: dict[str, list[float]] = {name: [] for name in cases}
    for turn in range(rounds + 1):
        for name, act in cases.items():
            begun = time.perf_counter()
            act()
            if turn:  # the first turn only fills caches
                taken[name].append(time.perf_counter() - begun)
    return {name: min(seconds) for name, seconds in taken.items()}


def start(words: Sequence[str]) -> Callable[[], object]:
    """Python started with these words, to its end."""
    environment = {name: value for name, value in os.environ.items() if name != "PYTHONDONTWRITEBYTECODE"}
    return lambda: subprocess.run([sys.executable, *words], check=True, capture_output=True, cwd=ROOT, env=environment)


def least_ratio(measure: Callable[[], float], most: float, tries: int = 3) -> float:
    """A ratio measured again while it is over what it may be: the least of up to so many tries."""
    found = measure()
    for _ in range(tries - 1):
        if found <= most:
            break
        found = min(found, measure())
    return found

"""Random plans and spoilt files by the thousand, over all processors.

    python3 -m tests.fuzz --plans 10000 --bad 5000 --seed 1

Every plan goes the whole way: load, lay, check, lists and order; every 25th is drawn as well, every 25th advised on. A plan
that is refused does not count. Every spoilt file must be refused, or be a plan after all. What breaks off, hangs, is told
without file, line and reason, or breaks a rule that is not told, is a fault: its file is kept, and the run ends with 1.
Every 500 plans and every minute what was found so far is printed, by kinds, and kept beside the files: a run may be stopped.
"""

from __future__ import annotations

import argparse
import os
import sys
import time
from concurrent.futures import ProcessPoolExecutor
from pathlib import Path

from tests.fuzz.batch import Tally, spoil_many, walk_many

BATCH, TOLD_EVERY = 25, 500


def main() -> None:
    """Fuzz as long as asked, or until the minutes are over, and print what was found."""
    asked = argparse.ArgumentParser(description=(__doc__ or "").partition("\n")[0])
    asked.add_argument("--plans", type=int, default=10_000)
    asked.add_argument("--bad", type=int, default=5_000)
    asked.add_argument("--seed", type=int, default=1)
    asked.add_argument("--minutes", type=float, default=600.0)
    asked.add_argument("--processes", type=int, default=os.cpu_count() or 1)
    asked.add_argument("--keep", type=Path, default=Path("fuzz-faults"), help="folder for the files of faults")
    words = asked.parse_args()
    until = time.monotonic() + 60 * words.minutes
    tally = Tally()
    told = (0, time.monotonic())
    with ProcessPoolExecutor(words.processes) as pool:
        for many, count in ((walk_many, words.plans), (spoil_many, words.bad)):
            seeds = [words.seed * 1_000_003 + index for index in range(-(-count // BATCH))]
            for found in pool.map(many, seeds, [min(BATCH, count)] * len(seeds), [until] * len(seeds)):
                _keep(found, len(tally.faults), words.keep)
                tally = tally.with_others(found)
                if (tally.laid + tally.bad) // TOLD_EVERY > told[0] or time.monotonic() > told[1] + 60:
                    told = (tally.laid + tally.bad) // TOLD_EVERY, time.monotonic()
                    _tell(tally, words.keep)
    _tell(tally, words.keep)
    sys.exit(bool(tally.faults))


def _tell(tally: Tally, folder: Path) -> None:
    """Print what was found so far, and keep it."""
    told = f"{tally.tell()}\n{tally.tell_kinds()}"
    print(told, flush=True)
    folder.mkdir(exist_ok=True)
    (folder / "tally.txt").write_text(told, encoding="utf-8")


def _keep(found: Tally, before: int, folder: Path) -> None:
    """Write down the files of faults at once: a long run may be stopped."""
    for index, (text, fault) in enumerate(found.faults, start=before):
        folder.mkdir(exist_ok=True)
        (folder / f"{index}.toml").write_bytes(text)
        print(f"\n{folder / f'{index}.toml'}: {fault}")


if __name__ == "__main__":
    main()

"""Kill ``wallplan sheets`` at random moments and look at what is left: each file as it was or as it should be, never half.

    python3 -m tests.kills --kills 200 --seed 1

Two plans whose sheets have the same names, or most of them, are written over one another by turns. Half of the kills come at any moment of a
run, half while it writes. After each, every file must be, to the byte, one plan's or the other's. In the end one run is left
alone: its sheets must be whole, and no litter of the killed ones left.
"""

from __future__ import annotations

import argparse
import random
import re
import subprocess
import sys
import tempfile
import time
from dataclasses import dataclass
from pathlib import Path

ROOT = Path(__file__).parents[1]
RECORD = re.compile(r"\..+\.sha256")
PLAN = """
title = "Boat store"
measure = "feet"
[masonry]
unit = "block-8"
[[wall]]
name = "Water side"
length = "{length}"
height = "{height}"
"""


@dataclass(frozen=True)
class Ground:
    """The two plans, the folder that their sheets go into, what each of them writes, and which kinds of sheet."""

    plans: tuple[Path, Path]
    into: Path
    expected: tuple[dict[str, bytes], dict[str, bytes]]
    only: tuple[str, ...] = ()


def prepare(place: Path, only: tuple[str, ...]) -> Ground:
    """Two plans, and what each of them writes when it is left alone; ``only`` names some kinds of sheet, () for all."""
    plans = (place / "long.toml", place / "short.toml")
    expected = []
    for plan, length, height in zip(plans, ("20' 1", "18' 5"), ("8' 8", "8'"), strict=True):
        plan.write_text(PLAN.format(length=length, height=height), encoding="utf-8")
        start(plan, place / plan.stem, only).wait()
        expected.append(read_folder(place / plan.stem))
    assert len(set(expected[0]) & set(expected[1])) > 2
    return Ground(plans, place / "into", (expected[0], expected[1]), only)


def start(plan: Path, into: Path, only: tuple[str, ...]) -> subprocess.Popen[bytes]:
    """``wallplan sheets``, running."""
    kinds = [word for kind in only for word in ("--only", kind)]
    return subprocess.Popen([sys.executable, "-m", "wallplan_cli", "sheets", str(plan), "--into", str(into), *kinds],
                            cwd=ROOT, stdout=subprocess.DEVNULL)


def read_folder(folder: Path) -> dict[str, bytes]:
    """What stands in a folder under final names, but for the record of what was written there."""
    return {path.name: path.read_bytes() for path in folder.iterdir()
            if path.is_file() and not RECORD.fullmatch(path.name)} if folder.exists() else {}


def kill_one(ground: Ground, number: int, chance: random.Random) -> bool:
    """Start a run and kill it; whether it was killed before it ended."""
    run = start(ground.plans[number % 2], ground.into, ground.only)
    if number % 4 < 2:
        time.sleep(chance.uniform(0.0, 1.5))
    else:
        known = {path.name for path in ground.into.glob(".wallplan-*")}
        while run.poll() is None and not {path.name for path in ground.into.glob(".wallplan-*")} - known:
            time.sleep(0.0005)
        time.sleep(chance.uniform(0.0, 0.02))
    killed = run.poll() is None
    run.kill()
    run.wait()
    return killed


def find_half_written(ground: Ground) -> list[str]:
    """Files under final names that are neither plan's."""
    return [name for name, content in read_folder(ground.into).items()
            if content not in (ground.expected[0].get(name), ground.expected[1].get(name))]


def find_litter(ground: Ground) -> list[str]:
    """What is in the folder besides both plans' sheets and their record."""
    names = {path.name for path in ground.into.iterdir() if not RECORD.fullmatch(path.name)}
    return sorted(names - set(ground.expected[0]) - set(ground.expected[1]))


def kill_many(place: Path, kills: int, seed: int, only: tuple[str, ...] = ()) -> tuple[int, int, list[str]]:
    """Runs killed, scratch folders that they left at most, and what is wrong: files half written, and litter in the end."""
    ground, chance = prepare(place, only), random.Random(seed)
    killed, most, wrong = 0, 0, list[str]()
    for number in range(kills):
        killed += kill_one(ground, number, chance)
        wrong += find_half_written(ground)
        most = max(most, len(list(ground.into.glob(".wallplan-*"))))
    assert start(ground.plans[0], ground.into, only).wait() == 0
    if not ground.expected[0].items() <= read_folder(ground.into).items():
        wrong.append("the last run's sheets")
    return killed, most, wrong + find_litter(ground)


def main() -> None:
    """Kill as often as asked, and end with 1 if anything was found."""
    asked = argparse.ArgumentParser(description=(__doc__ or "").partition("\n")[0])
    asked.add_argument("--kills", type=int, default=200)
    asked.add_argument("--seed", type=int, default=1)
    words = asked.parse_args()
    with tempfile.TemporaryDirectory() as place:
        killed, most, wrong = kill_many(Path(place), words.kills, words.seed)
    print(f"{words.kills} runs, {killed} killed before they ended; scratch folders left at most: {most}; wrong: {wrong or 'none'}")
    sys.exit(bool(wrong))


if __name__ == "__main__":
    main()

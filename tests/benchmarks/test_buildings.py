"""How laying and checking grow with the walls of a building; whole processes, processor seconds, in one run.

Run alone, and looked at: ``python3 -m pytest tests/benchmarks/test_buildings.py -s``. Sixty walls, no two alike, are to take
less than three seconds on two cores.
"""

from __future__ import annotations

import json
import random
import subprocess
import sys
from pathlib import Path

ROOT = Path(__file__).parents[2]

MEASURE = """
import json, resource, sys
from pathlib import Path
from wallplan.planner import lay_plan, prove
layout = lay_plan(Path(sys.argv[1]))
findings = prove(layout)
used = resource.getrusage(resource.RUSAGE_SELF)
print(json.dumps({"walls": len(layout.walls), "seconds": used.ru_utime + used.ru_stime,
                  "held": all(finding.held for finding in findings)}))
"""


def write_building(teeth: int) -> str:
    """A closed building whose back goes in and out by so many teeth of four walls: sizes in whole inches, all different."""
    dice = random.Random(3)
    back, total = list[tuple[int, str]](), 0
    for _ in range(teeth):
        out, between, deep = dice.randint(40, 120), dice.randint(60, 120), dice.randint(24, 60)
        back += [(out, "outside"), (deep, "inside"), (between, "inside"), (deep, "outside")]
        total += out + between
    last = dice.randint(40, 90)
    walls = [(total + last, "outside"), (96, "outside"), *back, (last, "outside"), (96, "outside")]
    text = 'title = "Long store"\nmeasure = "feet"\nsizes = "nominal"\n[masonry]\nunit = "block-8"\n'
    before = "outside"
    for number, (length, right) in enumerate(walls):
        text += (f'[[wall]]\nname = "Wall {number}"\nlength = "{length}"\ncourses = 13\nleft = "{before} corner"\n'
                 f'right = "{right} corner"\n')
        if 70 < length < 200 and number % 3 == 0:
            text += '[[wall.opening]]\nname = "Window"\nfrom_left = "24"\nwidth = "16"\nsill = "32"\nheight = "40"\n'
        before = right
    return text


def measure(teeth: int, folder: Path) -> dict[str, float]:
    plan = folder / f"{teeth}.toml"
    plan.write_text(write_building(teeth), encoding="utf-8")
    shown = subprocess.run([sys.executable, "-c", MEASURE, str(plan)], check=True, capture_output=True, text=True, cwd=ROOT)
    found: dict[str, float] = json.loads(shown.stdout)
    return found


def test_sixty_walls_take_no_longer_a_wall_than_a_few(tmp_path: Path) -> None:
    few, many = measure(2, tmp_path), measure(14, tmp_path)
    growth = many["seconds"] / few["seconds"] / (many["walls"] / few["walls"])
    print(f"\n{few['walls']} walls: {few['seconds']:.2f} s; {many['walls']} walls: {many['seconds']:.2f} s; growth {growth:.2f}")
    assert (few["walls"], many["walls"]) == (12, 60)
    assert growth <= 1.5
    assert few["held"] and many["held"]

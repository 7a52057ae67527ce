"""A few random plans and spoilt files; ``python3 -m tests.fuzz`` is the long run. Times are held there and in benchmarks."""

import re
import time
from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path

import pytest
from hypothesis import HealthCheck, Phase, given, settings
from hypothesis import seed as seeded

from tests.cli.running import SAMPLES, run
from tests.fuzz import batch, walk
from tests.fuzz.spoil import WAYS, Dice, spoil
from wallplan.findings import PlanError, PlanMistake
from wallplan.layout.model import Layout
from wallplan.plan.load import read_plan

KIOSK = (SAMPLES / "ticket-kiosk.toml").read_text(encoding="utf-8")


def in_an_hour() -> float:
    return time.monotonic() + 3600


def wrong(tally: batch.Tally) -> list[str]:
    return [fault for _, fault in tally.faults if ": took " not in fault and "refused after" not in fault]


def test_random_plans_go_the_whole_way() -> None:
    tally = batch.walk_many(20, 6, in_an_hour())
    assert wrong(tally) == [] and tally.laid == 6 and tally.pieces > 150


def test_few_random_plans_are_refused() -> None:
    met, refused = set[str](), list[str]()

    @seeded(20)
    @settings(max_examples=150, database=None, deadline=None, phases=[Phase.generate], suppress_health_check=list(HealthCheck))
    @given(batch.PLANS)
    def read(text: str) -> None:
        if text in met:
            return
        met.add(text)
        try:
            read_plan(text, "plan.toml")
        except PlanError as error:
            refused.append(str(error.mistakes[0]))

    read()
    assert len(met) > 60 and len(refused) < len(met) / 10, refused


def test_every_key_of_a_plan_is_written_by_a_strategy() -> None:
    sources = ("plan_heads.py", "plan_walls.py", "strategies.py")
    written = "".join((Path(__file__).parents[1] / name).read_text(encoding="utf-8") for name in sources)
    assert [key for key in _keys_in_docs() if f'"{key.rpartition(".")[2]}"' not in written] == []


def _keys_in_docs() -> Iterator[str]:
    """Every key of a plan file by the tables above it, as its page lists them."""
    above = ""
    for line in (SAMPLES.parent / "docs" / "plan-file.md").read_text(encoding="utf-8").splitlines():
        if heading := re.fullmatch(r"## `\[+([\w.]+)\]+`", line):
            above = f"{heading[1]}."
        elif key := re.match(r"\| `(\w+)` \|", line):
            yield above + key[1]


def test_spoilt_files_are_refused_in_plain_lines() -> None:
    tally = batch.spoil_many(20, 25, in_an_hour())
    assert wrong(tally) == [] and tally.bad == 25 and tally.mistakes >= 25


@pytest.mark.parametrize("way", sorted(set(WAYS), key=lambda way: way.__name__), ids=lambda way: way.__name__.strip("_"))
def test_every_way_to_spoil_a_file(way: object, tmp_path: object) -> None:
    assert callable(way)
    spoilt = [way(KIOSK.encode(), Dice(number)) for number in range(3)]
    assert any(data != KIOSK.encode() for data in spoilt)
    for data in spoilt:
        (path := tmp_path / "plan.toml").write_bytes(data)  # type: ignore[operator]
        assert [fault for fault in walk.refuse_file(path).faults if "took" not in fault] == []


def test_the_same_number_spoils_alike_and_the_command_ends_with_two(tmp_path: object) -> None:
    assert spoil(KIOSK, 7) == spoil(KIOSK, 7) != spoil(KIOSK, 8)
    (plan := tmp_path / "plan.toml").write_bytes(KIOSK.encode()[:300])  # type: ignore[operator]
    shown = run("lay", plan)
    assert shown.returncode == 2 and all(line.startswith(f"{plan}:") for line in shown.stderr.splitlines())


@pytest.mark.parametrize("mistake", [
    PlanMistake("plan.toml", 3, "", "no"), PlanMistake("plan.toml", None, "", "this stands on no line"),
    PlanMistake("plan.toml", 3, "", "two\nlines of text"),
])
def test_a_mistake_told_badly_is_a_fault(mistake: PlanMistake) -> None:
    assert len(list(walk.judge_mistakes(PlanError((mistake,)), "plan.toml"))) == 1
    good = PlanMistake("plan.toml", 3, 'wall "North"', "length: missing; write how long it is")
    assert list(walk.judge_mistakes(PlanError((good,)), "plan.toml")) == []
    assert len(list(walk.judge_mistakes(PlanError((good, good)), "plan.toml"))) == 1


def test_what_lay_does_not_tell_and_what_breaks_off_are_faults(monkeypatch: pytest.MonkeyPatch) -> None:
    from wallplan.layout import build

    lay = build.lay

    def keep_quiet(job: object) -> Layout:
        layout = lay(job)  # type: ignore[arg-type]
        first = layout.walls[0]
        shorter = replace(first.courses[0], pieces=first.courses[0].pieces[1:])
        return Layout(layout.job, (replace(first, courses=(shorter, *first.courses[1:]), doubtful=False),))

    monkeypatch.setattr(build, "lay", keep_quiet)
    assert any("not told by lay" in fault for fault in walk.walk_plan(KIOSK, draw=False, advise=False).faults)

    def break_off(job: object) -> Layout:
        raise KeyError("a wall")

    monkeypatch.setattr(build, "lay", break_off)
    assert "KeyError" in walk.walk_plan(KIOSK, draw=False, advise=False).faults[0]


def test_a_step_without_end_is_broken_off(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(walk, "PATIENCE", 0.05)
    monkeypatch.setattr(walk, "SLOW", 0.01)
    steps = walk.Steps()
    assert steps.take("lay", lambda: [None for _ in iter(int, 1)]) is None
    assert len(steps.faults) == 1 and steps.faults[0].endswith("s and was broken off")
    assert steps.take("check", lambda: 3) == 3


def test_faults_are_counted_by_what_they_have_in_common() -> None:
    faults = ("lay: took 3.1 s", "lay: took 12.0 s", "lay: Traceback (most recent call last):\n  File ...\nKeyError: 'a wall'",
              "broken rules not told by lay: {Finding(rule='lap')}")
    tally = batch.Tally(faults=tuple((b"", fault) for fault in faults))
    assert tally.kinds() == {"lay: took": 2, "lay: KeyError:": 1, "broken rules not told by lay:": 1}

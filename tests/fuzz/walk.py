"""One plan all the way: load, lay, check, lists, order, sheets, advice. What it must never do is told as a fault."""

from __future__ import annotations

import signal
import time
import traceback
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from pathlib import Path
from types import FrameType
from typing import TypeVar

from wallplan.findings import Finding, PlanError
from wallplan.layout.model import Layout
from wallplan.plan.load import read_plan

SLOW = 2.0
"""Seconds of work, not of waiting, after which a step counts as hung."""

PATIENCE = 20
"""Seconds of work after which a step is broken off, before it takes all memory."""

T = TypeVar("T")


@dataclass(frozen=True)
class Walked:
    """What came of a plan: how many pieces were laid (0 where it was refused), rules broken, mistakes told, faults."""

    pieces: int
    broken: int
    mistakes: int
    faults: tuple[str, ...]
    longest: float = 0.0
    """Seconds of work of the step that took longest."""
    refused_for: tuple[str, ...] = ()
    """Each mistake as it was told."""


class Steps:
    """Steps of a walk, each timed; what breaks off or takes too long is noted."""

    def __init__(self) -> None:
        self.faults: list[str] = []
        self.longest = 0.0

    def take(self, name: str, act: Callable[[], T]) -> T | None:
        """The outcome of a step; None where it broke off."""
        begun, ended = time.process_time(), ""
        signal.signal(signal.SIGVTALRM, _give_up)
        signal.setitimer(signal.ITIMER_VIRTUAL, PATIENCE, 1.0)
        try:
            return act()
        except PlanError:
            raise
        except TimeoutError:
            ended = " and was broken off"
            return None
        except Exception:
            self.faults.append(f"{name}: {traceback.format_exc(limit=-4)}")
            return None
        finally:
            signal.setitimer(signal.ITIMER_VIRTUAL, 0)
            took = time.process_time() - begun
            self.longest = max(self.longest, took)
            if took > SLOW:
                self.faults.append(f"{name}: took {took:.1f} s{ended}")


def _give_up(_: int, frame: FrameType | None) -> None:
    """Raise, unless what was interrupted is the collector's, where nothing that is raised comes out."""
    if frame is not None and frame.f_code.co_name == "gc_callback":
        signal.setitimer(signal.ITIMER_VIRTUAL, 0.01, 1.0)
    else:
        raise TimeoutError


def walk_plan(text: str, *, draw: bool, advise: bool) -> Walked:
    """Walk a plan's text as far as it goes. Sheets and advice, which take longest, only where asked."""
    steps = Steps()
    try:
        job = steps.take("load", lambda: read_plan(text, "plan.toml"))
    except PlanError as error:
        return Walked(0, 0, len(error.mistakes), (*steps.faults, *judge_mistakes(error, "plan.toml")),
                      refused_for=tuple(map(str, error.mistakes)))
    if job is None:
        return Walked(0, 0, 0, tuple(steps.faults))
    from wallplan.layout.build import lay

    layout = steps.take("lay", lambda: lay(job))
    if layout is None:
        return Walked(0, 0, 0, tuple(steps.faults), steps.longest)
    broken = _measure(steps, layout)
    _list(steps, layout)
    if draw:
        _draw(steps, layout, broken)
    if advise:
        from wallplan.advice.advise import advise as find_advice
        from wallplan.advice.tell import report_advice

        advice = steps.take("advise", lambda: find_advice(job))
        if advice is not None:
            steps.take("tell advice", lambda: _fits(report_advice(advice, (), 80), 80))
    pieces = sum(len(course.pieces) for wall in layout.walls for course in wall.courses)
    return Walked(pieces, len(broken), 0, tuple(steps.faults), steps.longest)


def _measure(steps: Steps, layout: Layout) -> tuple[Finding, ...]:
    """The broken rules. Whatever the check finds, ``lay`` must have told as well; what neither sees is sought by area."""
    from wallplan.planner import name_broken_rules, prove

    findings = steps.take("check", lambda: prove(layout)) or ()
    broken = tuple(finding for finding in findings if not finding.held)
    told = steps.take("name broken rules", lambda: name_broken_rules(layout))
    if told is not None and set(told) != set(broken):
        steps.faults.append(f"broken rules not told by lay: {set(broken) ^ set(told)}")
    for finding in findings:
        if not finding.source or not finding.figure or (not finding.held and not finding.remedy):
            steps.faults.append(f"a finding without figure, source or remedy: {finding}")
    return broken


def _list(steps: Steps, layout: Layout) -> None:
    from wallplan.layout.as_json import layout_as_json
    from wallplan.lists.csv_files import write_saw_csv
    from wallplan.lists.cuts import list_cuts
    from wallplan.lists.marks import list_marks, write_marks_csv
    from wallplan.lists.order.report import report_order, write_order_csv
    from wallplan.lists.order.sawing import nest_cuts
    from wallplan.lists.report import report_findings, report_layout
    from wallplan.lists.saw_report import report_cuts
    from wallplan.planner import prove, take_off

    job, measure = layout.job, layout.job.measure
    steps.take("json", lambda: layout_as_json(layout, ()))
    steps.take("report", lambda: _fits(report_layout(layout, (), 80, ""), 80))
    steps.take("report findings", lambda: _fits(report_findings(layout, prove(layout), 80), 80))
    sawings = steps.take("nest cuts", lambda: nest_cuts(layout)) or ()
    cuts = steps.take("cuts", lambda: list_cuts(layout, sawings)) or ()
    steps.take("report cuts", lambda: (write_saw_csv(cuts, measure), _fits(report_cuts(cuts, sawings, job, 80), 80)))
    steps.take("marks", lambda: write_marks_csv(list_marks(layout), measure))
    steps.take("order", lambda: (write_order_csv(take_off(layout)), _fits(report_order(take_off(layout), measure, 80), 80)))


def _fits(text: str, width: int) -> None:
    widest = max(map(len, text.splitlines()), default=0)
    if widest > width:
        raise AssertionError(f"a line of {widest} columns")


def _draw(steps: Steps, layout: Layout, findings: tuple[Finding, ...]) -> None:
    from wallplan.drawing.sheet_set import DRAWN, draw_sheets
    from wallplan.drawing.svg import draw_svg

    for kind in DRAWN:
        drawing = steps.take(f"draw {kind}", lambda kind=kind: draw_sheets(layout, findings, None, (kind,)))  # type: ignore[misc]
        for page in drawing.pages if drawing is not None else ():
            steps.take(f"svg of {kind}", lambda page=page: draw_svg(page))  # type: ignore[misc]


def refuse_file(path: Path) -> Walked:
    """Read a file that is likely bad; where it is good after all, walk it."""
    from wallplan.plan.load import load_plan

    steps = Steps()
    begun = time.process_time()
    try:
        job = steps.take("load", lambda: load_plan(path))
    except PlanError as error:
        if time.process_time() - begun > 1:
            steps.faults.append(f"refused after {time.process_time() - begun:.1f} s only")
        return Walked(0, 0, len(error.mistakes), (*steps.faults, *judge_mistakes(error, str(path))))
    if job is None:
        return Walked(0, 0, 0, tuple(steps.faults))
    return walk_plan(path.read_bytes().decode("utf-8-sig"), draw=False, advise=False)


WHOLE_FILE = (
    "lists or tables inside each other too deep", "more mistakes; mend these first", "lists of more than", "more than 20,000 lines",
    "over 1,000,000 bytes", "a value that cannot be read",
)
"""Beginnings of what is said of a file as a whole, which stands on no line."""


def judge_mistakes(error: PlanError, file: str) -> Iterator[str]:
    """What is wrong with how mistakes are told: each must be one line with file, line and reason."""
    for mistake in error.mistakes:
        said = str(mistake)
        if not said.isprintable() or not said.startswith(f"{file}:") or len(mistake.message.split()) < 3 or len(said) > 1500:
            yield f"not one plain line: {said[:2000]!r}"
        elif mistake.line is None and not any(words in said for words in WHOLE_FILE):
            yield f"on no line: {said}"
    if len(set(map(str, error.mistakes))) != len(error.mistakes):
        yield f"a mistake told twice: {sorted(map(str, error.mistakes))}"

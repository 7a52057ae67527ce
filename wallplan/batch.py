"""Many plans at once: each is laid, proven and drawn in a process of its own; one that cannot be used stops no other."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass
from pathlib import Path

from wallplan.files import slug
from wallplan.findings import Finding, NotDrawn, PlanError
from wallplan.layout.model import Layout
from wallplan.planner import lay_plan, prove

Draw = Callable[[Layout, tuple[Finding, ...]], dict[str, bytes]]
"""What draws a proven layout: file name -> contents. It must go from process to process."""


@dataclass(frozen=True)
class Drawn:
    """What came of a plan: its files, and how many rules are broken; or no files and its mistakes, a line each. ``job`` is
    what its files' names begin with."""

    plan: Path
    files: dict[str, bytes]
    broken: int
    mistakes: tuple[str, ...]
    job: str = ""


def draw_plans(plans: Iterable[Path], draw: Draw, processes: int) -> Iterator[Drawn]:
    """Each plan drawn, in the order given, over so many processes; none for no plans. Nothing is written.

    A plan that cannot be used gives its mistakes. One whose process is ended from outside is told as such a mistake.
    """
    listed = tuple(plans)
    if min(processes, len(listed)) < 2:
        yield from (draw_plan(plan, draw) for plan in listed)
        return
    from concurrent.futures import ProcessPoolExecutor
    from concurrent.futures.process import BrokenProcessPool

    from wallplan.processes import end_with_the_first

    pool = ProcessPoolExecutor(min(processes, len(listed)), initializer=end_with_the_first)
    try:
        futures = [pool.submit(draw_plan, plan, draw) for plan in listed]
        for plan, future in zip(listed, futures, strict=True):
            try:
                yield future.result()
            except BrokenProcessPool:
                yield Drawn(plan, {}, 0, (f"{plan}: the process that drew it was ended from outside; draw it alone",))
    finally:
        pool.shutdown(cancel_futures=True)


def draw_plan(plan: Path, draw: Draw) -> Drawn:
    """One plan laid, proven and drawn."""
    try:
        layout = lay_plan(plan)
    except PlanError as error:
        return Drawn(plan, {}, 0, tuple(map(str, error.mistakes)))
    findings = prove(layout)
    try:
        files = draw(layout, findings)
    except NotDrawn as error:
        return Drawn(plan, {}, 0, (f"{plan}: {error}",))
    return Drawn(plan, files, sum(not finding.held for finding in findings), (),
                 slug(layout.job.title))


class Written:
    """Which plan wrote which file, so that no plan writes over what another has just written."""

    def __init__(self) -> None:
        self._by: dict[Path, Path] = {}

    def find_clash(self, folder: Path, drawn: Drawn) -> str | None:
        """A line about the first file that another plan has written already; None where there is none."""
        for name in drawn.files:
            before = self._by.get(_place(folder, name))
            if before is not None:
                return (f"{drawn.plan}: nothing written: {folder / name} is written by {before} already; "
                        "give one of them another title, or a folder of its own")
        return None

    def note(self, folder: Path, drawn: Drawn) -> None:
        """Keep what a plan has written."""
        self._by.update({_place(folder, name): drawn.plan for name in drawn.files})


def _place(folder: Path, name: str) -> Path:
    """A file's place; where big and small letters are one to a disc, they are one here."""
    return folder.resolve() / name.casefold()

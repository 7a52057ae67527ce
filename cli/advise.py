"""``wallplan advise``: what to move before anything is bought or poured, and what it saves."""

from __future__ import annotations

import os
import sys
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path
from threading import Event, Thread
from typing import TYPE_CHECKING, Annotated

import typer
from wallplan_cli.faults import RULE_BROKEN, ends_plainly, refuse
from wallplan_cli.shared import Json, Plan, put_json, read_folder, spare_plans, terminal_width

if TYPE_CHECKING:
    from wallplan.advice.advise import Advice
    from wallplan.advice.compare import Alternative

Into = Annotated[
    Path | None,
    typer.Option("--into", metavar="FOLDER", help="Folder for the sheet; else one named as the plan, beside it.",
                 show_default=False, parser=read_folder),
]

PATIENCE = 1.0
"""Seconds before the terminal shows how far the search is."""


def add_to(app: typer.Typer) -> None:
    """Add the command to the program."""
    app.command(epilog="Example: wallplan advise samples/pier.toml")(advise)


def advise(
    plan: Plan,
    new: Annotated[
        Path | None, typer.Argument(metavar="[NEW]", help="The plan as changed: its figures beside those of PLAN.",
                                    show_default=False, readable=False)
    ] = None,
    write: Annotated[
        bool, typer.Option("--write", help="Write the plan with the best moves of each wall beside it; never overwrites.")
    ] = False,
    thorough: Annotated[
        bool, typer.Option("--thorough", help="Lay every choice that might be better still, however long it takes.")
    ] = False,
    alternatives: Annotated[
        bool, typer.Option("--alternatives", help="Also lay the walls in other bonds, units and joints, and compare.")
    ] = False,
    sheet: Annotated[
        bool, typer.Option("--sheet", help="Draw the alternatives on one sheet (SVG and PDF), a small elevation each.")
    ] = False,
    into: Into = None,
    json: Json = None,
) -> None:
    """Say what to move in PLAN, by how much, and what it saves.

    Openings, ends, sills, heads and control joints, alone and together, within the plan's [advice]; or two plans compared.
    """
    if new is not None and (write or alternatives or thorough or sheet):
        raise refuse("two plans are only compared: leave out --write, --alternatives, --thorough and --sheet")
    if into is not None and not sheet:
        raise refuse("--into is the sheet's folder: add --sheet")
    spare_plans("--json", json, plan, new)
    with ends_plainly():
        target = _find_target(plan) if write else None
        folder = (into or plan.with_suffix("")) if sheet else None
        broken = _compare_plans(plan, new, json) if new is not None else _advise_plan(
            plan, target, json, thorough=thorough, alternatives=alternatives or sheet, sheet=folder)
        if broken:
            raise typer.Exit(RULE_BROKEN)


def _compare_plans(plan: Path, new: Path, json: str | None) -> bool:
    from wallplan.advice.as_json import plans_as_json
    from wallplan.advice.compare import take_job_figures
    from wallplan.advice.tell import tell_two_plans
    from wallplan.plan.load import load_plan

    jobs = [load_plan(path) for path in (plan, new)]
    old_figures, new_figures = ((str(path), take_job_figures(job)) for path, job in zip((plan, new), jobs, strict=True))
    if json is not None:
        put_json(plans_as_json(old_figures, new_figures), json)
    if json != "-":
        typer.echo(tell_two_plans(old_figures, new_figures, terminal_width()))
    return bool(new_figures[1].broken_places)


def _advise_plan(plan: Path, target: Path | None, json: str | None, *, thorough: bool, alternatives: bool,
                 sheet: Path | None) -> bool:
    from wallplan.advice.advise import advise as find_advice
    from wallplan.advice.as_json import advice_as_json
    from wallplan.advice.compare import compare
    from wallplan.advice.tell import report_advice
    from wallplan.advice.trial import MOST_TRIALS
    from wallplan.plan.load import load_plan

    job = load_plan(plan)
    with _show_progress() as told:
        advice = find_advice(job, told, most=None if thorough else MOST_TRIALS, processes=os.cpu_count() or 1)
        others = compare(job, told) if alternatives else ()
    if sheet is not None:
        _draw(others, sheet)
    if target is not None and advice.together:
        _write(plan, target, advice)
    if json is not None:
        put_json(advice_as_json(advice, others), json)
    if json != "-":
        typer.echo(report_advice(advice, others, terminal_width()))
    return bool(advice.figures.broken_places)


def _draw(alternatives: tuple[Alternative, ...], folder: Path) -> None:
    from wallplan.files import write_files
    from wallplan.planner import draw_alternatives_sheet

    for path in write_files(folder, draw_alternatives_sheet(alternatives)):
        typer.echo(f"{path} is written", err=True)


def _find_target(plan: Path) -> Path:
    from wallplan.files import FileFault

    target = plan.with_name(f"{plan.stem}-advised.toml")
    if target.exists() or target.is_symlink():
        raise FileFault(f"{target}: is there already and stays as it is; move it away first")
    return target


def _write(plan: Path, target: Path, advice: Advice) -> None:
    from wallplan.advice.write import NotWritten, write_changes
    from wallplan.files import write_new_file

    try:
        changed = write_changes(plan.read_bytes().decode("utf-8-sig"), advice.job, advice.advised)
    except NotWritten as fault:
        raise refuse(f"{plan}: {fault}") from None
    write_new_file(target, changed.encode())
    typer.echo(f"{target} is written", err=True)


@contextmanager
def _show_progress() -> Iterator[Callable[[int], None]]:
    """What is told how many walls were laid; on a terminal a bar shows it after a second, and is wiped at the end."""
    if not sys.stderr.isatty():
        yield lambda laid: None
        return
    laid, done = [0], Event()

    def show() -> None:
        turns = 0
        while not done.wait(0.2 if turns else PATIENCE):
            turns += 1
            typer.echo(f"\r[{'#' * (turns % 31):30}] {laid[0]} walls laid on trial", nl=False, err=True)
        if turns:
            typer.echo(f"\r{'':60}\r", nl=False, err=True)

    showing = Thread(target=show, daemon=True)
    showing.start()
    try:
        yield lambda count: laid.__setitem__(0, count)
    finally:
        done.set()
        showing.join()

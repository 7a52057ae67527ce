"""``wallplan sheets``: the sheets and lists of a job into a folder."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated

import typer
from wallplan_cli.faults import RULE_BROKEN, ends_plainly, refuse
from wallplan_cli.shared import Plan

PAPERS = ("letter", "tabloid", "A4", "A3")


def add_to(app: typer.Typer) -> None:
    """Add the command to the program."""
    app.command(epilog="Example: wallplan sheets samples/ticket-kiosk.toml --paper letter --into kiosk-sheets")(sheets)


def sheets(
    plan: Plan,
    into: Annotated[
        Path | None,
        typer.Option("--into", metavar="FOLDER", help="Folder for the files; else one named as the plan, beside it.",
                     show_default=False),
    ] = None,
    paper: Annotated[
        str | None,
        typer.Option("--paper", metavar="PAPER", show_default=False,
                     help="letter, tabloid, A4 or A3; else letter for a plan in feet, A4 for metric."),
    ] = None,
    only: Annotated[
        list[str] | None,
        typer.Option("--only", metavar="SHEET", show_default=False,
                     help="Only this: wall, course, marks, pole, leads, saw-list or order; may be repeated."),
    ] = None,
) -> None:
    """Draw the sheets and write the lists of PLAN.

    The main job, ready to print and tape up: wall, course, marks, pole, leads, saw and order sheets as one SVG each and as
    pages of one PDF; marks, saw list and order as CSV.
    """
    from wallplan.planner import SHEETS, draw_set, lay_plan, prove

    known = {name.casefold(): name for name in PAPERS}
    if paper is not None and paper.casefold() not in known:
        raise refuse(f'--paper: "{paper}" is not a paper; write one of {", ".join(PAPERS)}')
    for name in only or ():
        if name not in SHEETS:
            raise refuse(f'--only: "{name}" is not a sheet; write one of {", ".join(SHEETS)}')
    with ends_plainly():
        from wallplan.files import write_files

        layout = lay_plan(plan)
        findings = prove(layout)
        contents = draw_set(layout, findings, paper and known[paper.casefold()], tuple(only or ()))
        for path in write_files(into or plan.with_suffix(""), contents):
            typer.echo(str(path))
        _tell_broken(sum(not finding.held for finding in findings), plan)


def _tell_broken(broken: int, plan: Path) -> None:
    if broken:
        typer.echo(f"{broken} broken {'rule' if broken == 1 else 'rules'}, named on the sheets; see: wallplan check {plan}",
                   err=True)
        raise typer.Exit(RULE_BROKEN)

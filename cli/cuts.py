"""``wallplan cuts``: the saw list."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated

import typer
from wallplan_cli.shared import Plans, for_each, for_one_only, put_text, spare_plans, terminal_width


def add_to(app: typer.Typer) -> None:
    """Add the command to the program."""
    app.command(epilog="Example: wallplan cuts samples/pier.toml")(cuts)


def cuts(
    plans: Plans,
    csv: Annotated[
        str | None, typer.Option("--csv", metavar="FILE", help="Write the list as CSV; - for standard output.")
    ] = None,
) -> None:
    """Write the saw list of each PLAN.

    Each cut's letter, length and count, what it is sawn from, which cuts its offcut serves, and what each unit is sawn into:
    as few units as can be.
    """
    for_one_only(plans, "--csv", csv)
    for_each(plans, lambda plan: _list_plan(plan, csv))


def _list_plan(plan: Path, csv: str | None) -> None:
    from wallplan.lists.csv_files import write_saw_csv
    from wallplan.lists.cuts import list_cuts
    from wallplan.lists.order.sawing import nest_cuts
    from wallplan.lists.saw_report import report_cuts
    from wallplan.planner import lay_plan

    spare_plans("--csv", csv, plan)
    layout = lay_plan(plan)
    sawings = nest_cuts(layout)
    listed = list_cuts(layout, sawings)
    if csv is not None:
        put_text(write_saw_csv(listed, layout.job.measure), csv)
    if csv != "-":
        typer.echo(report_cuts(listed, sawings, layout.job, terminal_width()))

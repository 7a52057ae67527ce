"""``wallplan order``: what to order, what to mix, how the days fall."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated

import typer
from wallplan_cli.faults import ends_plainly, refuse
from wallplan_cli.shared import Json, Plan, put_json, put_text, spare_plans, terminal_width


def add_to(app: typer.Typer) -> None:
    """Add the command to the program."""
    app.command(epilog="Example: wallplan order samples/ticket-kiosk.toml")(order)


def order(
    plan: Plan,
    other: Annotated[
        Path | None,
        typer.Argument(metavar="[OTHER]", help="A second plan: the two orders side by side.", show_default=False,
                       readable=False),
    ] = None,
    json: Json = None,
    csv: Annotated[
        str | None, typer.Option("--csv", metavar="FILE", help="Write the list as CSV; - for standard output.")
    ] = None,
) -> None:
    """List what to order for PLAN, what to mix, and how the days fall.

    Counted from the layout piece by piece: units with those that cuts are sawn from, mortar, grout, steel; each with how
    it was counted.
    """
    from wallplan.lists.order.report import report_difference, report_order, write_order_csv
    from wallplan.planner import lay_plan, take_off

    if other is not None and (json is not None or csv is not None):
        raise refuse("--json and --csv are for the order of one plan; leave the second plan out")
    if json == csv == "-":
        raise refuse("--json and --csv cannot both go to standard output; name a file for one")
    spare_plans("--json", json, plan)
    spare_plans("--csv", csv, plan)
    if json is not None and csv is not None and Path(json).absolute() == Path(csv).absolute():
        raise refuse(f"--json and --csv: {json} cannot be both; name two files")
    with ends_plainly():
        layout = lay_plan(plan)
        listed = take_off(layout)
        if other is not None:
            typer.echo(report_difference(listed, take_off(lay_plan(other)), terminal_width()))
            return
        if json is not None:
            put_json(listed.as_json(), json)
        if csv is not None:
            put_text(write_order_csv(listed), csv)
        if "-" not in (json, csv):
            typer.echo(report_order(listed, layout.job.measure, terminal_width()))

"""``wallplan lay``: the bond in the terminal, pieces, cuts, joints, and what is proven."""

from __future__ import annotations

from pathlib import Path

import typer
from wallplan_cli.faults import RULE_BROKEN
from wallplan_cli.shared import Json, Plans, for_each, for_one_only, put_json, spare_plans, terminal_width


def add_to(app: typer.Typer) -> None:
    """Add the command to the program."""
    app.command(epilog="Example: wallplan lay samples/ticket-kiosk.toml")(lay)


def lay(plans: Plans, json: Json = None) -> None:
    """Lay out the walls of each PLAN and draw the bond.

    The bond course by course as text, the pieces, cuts and joints, what is proven, and which sizes are off the module; as
    JSON for other programs.
    """
    for_one_only(plans, "--json", json)
    for_each(plans, lambda plan: _lay_plan(plan, json))


def _lay_plan(plan: Path, json: str | None) -> None:
    from wallplan.planner import lay_plan, name_broken_rules

    spare_plans("--json", json, plan)
    layout = lay_plan(plan)
    broken = name_broken_rules(layout)
    if json is not None:
        from wallplan.layout.as_json import layout_as_json

        put_json(layout_as_json(layout, broken), json)
    if json != "-":
        from wallplan.advice.fit_table import report_fit
        from wallplan.lists.report import report_layout

        typer.echo(report_layout(layout, broken, terminal_width(), report_fit(layout.job, terminal_width())))
    if broken:
        raise typer.Exit(RULE_BROKEN)

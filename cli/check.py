"""``wallplan check``: every rule, held or broken."""

from __future__ import annotations

from pathlib import Path

import typer
from wallplan_cli.faults import RULE_BROKEN
from wallplan_cli.shared import Plans, for_each, terminal_width


def add_to(app: typer.Typer) -> None:
    """Add the command to the program."""
    app.command(epilog="Example: wallplan check samples/ticket-kiosk.toml")(check)


def check(plans: Plans) -> None:
    """Measure the layout of each PLAN against every rule.

    Each rule is held or broken: the figure against its limit, the source, and what would mend it; then the sizes that are
    off the module or the coursing.
    """
    for_each(plans, _check_plan)


def _check_plan(plan: Path) -> None:
    from wallplan.advice.fit_table import report_fit_shortly
    from wallplan.lists.report import report_findings
    from wallplan.planner import lay_plan, prove

    layout = lay_plan(plan)
    findings = prove(layout)
    typer.echo(report_findings(layout, findings, terminal_width(), report_fit_shortly(layout.job, terminal_width())))
    if any(not finding.held for finding in findings):
        raise typer.Exit(RULE_BROKEN)

"""``wallplan check``: every rule, held or broken."""

from __future__ import annotations

import typer
from wallplan_cli.faults import RULE_BROKEN, ends_plainly
from wallplan_cli.shared import Plan, terminal_width


def add_to(app: typer.Typer) -> None:
    """Add the command to the program."""
    app.command(epilog="Example: wallplan check samples/ticket-kiosk.toml")(check)


def check(plan: Plan) -> None:
    """Measure the layout of PLAN against every rule.

    Each rule is held or broken: the figure against its limit, the source, and what would mend it.
    """
    from wallplan.lists.report import report_findings
    from wallplan.planner import lay_plan, prove

    with ends_plainly():
        layout = lay_plan(plan)
        findings = prove(layout)
        typer.echo(report_findings(layout, findings, terminal_width()))
        if any(not finding.held for finding in findings):
            raise typer.Exit(RULE_BROKEN)

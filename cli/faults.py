"""How a command ends: 0 done; 1 done, but a rule is broken; 2 plan or call cannot be used; 3 a file cannot be written."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager

import typer

from wallplan.files import FileFault
from wallplan.findings import PlanError

RULE_BROKEN, UNUSABLE, UNWRITTEN = 1, 2, 3


@contextmanager
def ends_plainly() -> Iterator[None]:
    """Turn what a user can mend into one line each on standard error, and the exit status into the right one."""
    try:
        yield
    except PlanError as error:
        for mistake in error.mistakes:
            typer.echo(str(mistake), err=True)
        raise typer.Exit(UNUSABLE) from None
    except FileFault as fault:
        typer.echo(str(fault), err=True)
        raise typer.Exit(UNWRITTEN) from None


def refuse(message: str) -> typer.Exit:
    """A call that cannot be used, told in one line."""
    typer.echo(message, err=True)
    return typer.Exit(UNUSABLE)

"""The page about the commands, written from the commands' own functions."""

from __future__ import annotations

import inspect
from collections.abc import Callable, Iterator
from typing import Annotated, Any, get_args, get_origin, get_type_hints

from typer.models import ArgumentInfo, OptionInfo
from wallplan_cli.main import app

HEAD = """<!-- Written by wallplan from its commands; change the commands, not this page. -->

# The commands

One command, `wallplan`, and plain verbs. Results go to standard output, messages to standard error; `--json -` gives clean
JSON. `--help` after any of them says what stands here.

Exit status: 0 done; 1 done, but a rule is broken; 2 the plan or the call cannot be used, nothing written; 3 a file cannot be
written, what was there is still there; 130 stopped by Ctrl-C. Of several plans the worst counts; a bad one stops none of the
others. Each fault is told in one line on standard error. A file is written beside its place and renamed over it: a run that
fails, or is stopped or killed, leaves the old file whole or the new one, never half of it. A file that may only be read, and
the plan itself, are never replaced.
"""


def describe_commands() -> str:
    """The page, in the order of the program's help."""
    return HEAD + "".join(
        _describe(command.callback, command.epilog or "") for command in app.registered_commands if command.callback
    )


def _describe(command: Callable[..., Any], epilog: str) -> str:
    parameters = list(_find_parameters(command))
    called = " ".join(shown for info, shown in parameters if isinstance(info, ArgumentInfo))
    lines = [f"\n## `wallplan {command.__name__} {called}`\n", inspect.getdoc(command) or "", ""]
    lines += [f"* `{shown}`: {info.help}" for info, shown in parameters]
    return "\n".join([*lines, "", epilog.replace("Example: ", "Example: `") + "`", ""])


def _find_parameters(command: Callable[..., Any]) -> Iterator[tuple[ArgumentInfo | OptionInfo, str]]:
    for hint in get_type_hints(command, include_extras=True).values():
        if get_origin(hint) is Annotated:
            info = get_args(hint)[1]
            # Typer keeps an option's first name where a default would stand.
            names = " ".join(name for name in (info.default, *(info.param_decls or ())) if isinstance(name, str))
            yield info, f"{names} {info.metavar or ''}".strip()

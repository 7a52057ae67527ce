"""Calls that cannot be used: told in one line each, with what to write instead."""

from __future__ import annotations

import sys
from typing import Any, NoReturn

import typer
from typer.core import TyperGroup

_MOST_SHOWN = 60


class Program(TyperGroup):
    """The command with its verbs. A call that it cannot use is one line on standard error, and exit status 2."""

    def main(self, *words: Any, **rest: Any) -> NoReturn:
        """Run a call, and end with its status."""
        try:
            status = super().main(*words, **{**rest, "prog_name": "wallplan", "standalone_mode": False})
        except typer.Abort:
            status = 1
        except Exception as fault:
            if not hasattr(fault, "format_message"):
                raise
            typer.echo(explain_call(fault), err=True)
            status = getattr(fault, "exit_code", 2)
        sys.exit(status if isinstance(status, int) else 0)


def explain_call(fault: Any) -> str:
    """What is wrong with a call in one line; the help, where nothing is asked for."""
    said, context = str(fault.format_message()), getattr(fault, "ctx", None)
    if context is None:  # an option that lacks its value, or has one and takes none
        option = getattr(fault, "option_name", None)
        if option is None:
            return said
        return (f"{option}: stands alone; leave out what follows the equals sign" if "not take a value" in said else
                f"{option}: nothing stands behind it; write {option} and its value")
    if "\n" in said:
        return said
    place, command = context.command_path, context.command
    if said.startswith("No such command"):
        return _say_unknown("command", said.split("'")[1], list(command.list_commands(context)), place)
    if said.startswith("No such option"):
        options = [name for one in command.get_params(context) for name in one.opts if name.startswith("--")]
        return _say_unknown("option", str(fault.option_name), options, place)
    if said.startswith("Missing argument"):
        example = (command.epilog or "").removeprefix("Example: ")
        return f"{place}: the plan file is missing; write for example: {example}"
    if said.startswith("Got unexpected extra"):
        extra = said.partition("(s) (")[2].removesuffix(")")
        return f'{place}: "{_short(extra)}" is one too many; leave it out'
    return f"{place}: {_short(said)}; see: {place} --help"


def _say_unknown(kind: str, word: str, known: list[str], place: str) -> str:
    from difflib import get_close_matches  # only a mistake needs it

    near = get_close_matches(word.casefold().split("=")[0], known, n=1, cutoff=0.65)
    instead = f"write {near[0]}" if near else f"there are: {', '.join(known)}"
    return f'{place}: "{_short(word)}" is no {kind}; {instead}'


def _short(text: str) -> str:
    shown = "".join(letter if letter.isprintable() else "?" for letter in text)
    return shown if len(shown) <= _MOST_SHOWN else f"{shown[: _MOST_SHOWN - 3]}..."

"""What stands in a plan, shown in a message: short, on one line, as the mason wrote it."""

from __future__ import annotations

from collections.abc import Iterable

_LONGEST = 60


def print_found(value: object) -> str:
    """A value of a plan as text of at most about 60 printable characters. Lists and tables are only named."""
    if isinstance(value, bool):
        return "true" if value else "false"
    if isinstance(value, list | tuple):
        return "a list"
    if isinstance(value, dict):
        return "a table"
    if isinstance(value, int) and abs(value) >= 10**_LONGEST:
        return f"a number of over {_LONGEST} digits"
    return f'"{print_name(value)}"' if isinstance(value, str) else print_name(str(value))


def print_number(value: float) -> str:
    """A number that is read as a float, as it was likely written: without a point where it is whole."""
    return f"{value:.0f}" if value.is_integer() and abs(value) < 10**15 else print_name(str(value))


def print_name(name: str) -> str:
    """A name in a message: unprintable characters as ``?``, at most 60 characters. Empty stays empty."""
    text = "".join(letter if letter.isprintable() else "?" for letter in name[: _LONGEST + 1])
    return text if len(text) <= _LONGEST else f"{text[: _LONGEST - 3]}..."


def print_choices(choices: Iterable[str]) -> str:
    """``half, third, quarter or stack``. No choices give an empty text."""
    *most, last = tuple(choices) or ("",)
    return f"{', '.join(most)} or {last}" if most else last


def make_plain(word: str) -> str:
    """A word as it is compared: small letters, and one ``_`` for what parts its words. At most about 60 letters of it."""
    return "_".join(word[:_LONGEST].casefold().replace("-", " ").replace("_", " ").split())


def find_nearest(word: str, known: Iterable[str], least: float = 0.68) -> str | None:
    """The known word nearest to a mistyped one, or None where none is near: at ``least`` 1 only the very same is."""
    from difflib import get_close_matches  # only a mistake needs it

    by_plain = {make_plain(name): name for name in known}
    near = get_close_matches(make_plain(word), by_plain, n=1, cutoff=least)
    return by_plain[near[0]] if near else None

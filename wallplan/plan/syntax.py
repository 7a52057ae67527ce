"""TOML text to plain tables. Reading goes on past a line that cannot be read, so that all such lines are told at once."""

from __future__ import annotations

import json
import re
from typing import Any, NamedTuple

from wallplan.plan.complaints import Complaint, complain, value_of
from wallplan.plan.headings import mend_headings

MOST_COMMAS = 20_000
"""Items in all lists of a plan together: over this, reading alone takes too long."""

MOST_LINES = 20_000
"""Lines of a plan, for the same reason."""

MOST_UNREAD = 30
"""So many lines that cannot be read are told at once."""

_SHORT = 30_000
"""Letters of a text that is read anew after each such line."""

_PLAIN_KEY = re.compile(r"[A-Za-z0-9_-]+")
_MOST_DIGITS = 1_000
_LONG_NUMBER = re.compile(rf"\d[\d_]{{{_MOST_DIGITS}}}")
_DEEP_KEY = re.compile(r"""(?<![\w-])(?:(?:[\w-]+|"[^"\n]*"|'[^'\n]*')[ \t]*\.[ \t]*){20}""", re.ASCII)


class SyntaxMistake(NamedTuple):
    """What is no TOML: the message in plain words, its line (None where that is not known), and the key ("" for none).

    ``names`` are keys that stand on the line and are not read: they are not missing.
    """

    message: str
    line: int | None
    key: str = ""
    names: tuple[str, ...] = ()


class Reading(NamedTuple):
    """A text's tables, None where it could not be read to its end, what is wrong, and the text that could be read.

    A value that could not be read stands in ``tables`` and ``text`` as it was likely meant. ``doubtful`` is True where a key
    has two values, so that neither may be taken.
    """

    tables: dict[str, Any] | None
    mistakes: tuple[SyntaxMistake, ...]
    text: str
    doubtful: bool = False


def read_toml(text: str) -> Reading:
    """The tables of TOML text, or what is wrong with it, also where it is too deep or large to be a plan."""
    import tomllib

    if oversize := _find_oversize(text):
        return Reading(None, (oversize,), text)
    mistakes: list[SyntaxMistake] = []
    doubtful, lost = False, False
    for _ in range(MOST_UNREAD):
        try:
            tables = tomllib.loads(text)
            return Reading(None if lost else tables, _in_order(mistakes), text, doubtful)
        except tomllib.TOMLDecodeError as error:
            complaint, heading = complain(str(error), text), mend_headings(text, str(error))
        except (RecursionError, ValueError) as error:
            mistakes.append(_say_too_deep(text) if isinstance(error, RecursionError) else
                            SyntaxMistake(f"a value that cannot be read ({error})", None))
            break
        if heading is not None and len(text) <= _SHORT:
            mistakes += [SyntaxMistake(one.said, one.line, "", one.names) for one in heading.mistakes]
            text = heading.text
            continue
        last = max((one.line or 0 for one in mistakes), default=0)
        if complaint.line > last:
            mistakes.append(SyntaxMistake(complaint.said, complaint.line, complaint.key, complaint.names))
        mended = _mend_line(text, complaint, again=complaint.line == last)
        if mended in (None, text) or complaint.line < last or len(text) > _SHORT:
            break
        doubtful = doubtful or complaint.repeated
        lost = lost or complaint.line == last or not _PLAIN_KEY.fullmatch(complaint.key)
        text = mended or ""
    return Reading(None, _in_order(mistakes), text)


def _in_order(mistakes: list[SyntaxMistake]) -> tuple[SyntaxMistake, ...]:
    return tuple(sorted(mistakes, key=lambda one: one.line or 0))


def _say_too_deep(text: str) -> SyntaxMistake:
    """Told on the line with most brackets."""
    depths = [line.count("[") + line.count("{") for line in text.split("\n")]
    line = depths.index(max(depths)) + 1
    return SyntaxMistake("lists or tables inside each other too deep; a plan needs three levels", line)


def _mend_line(text: str, complaint: Complaint, *, again: bool) -> str | None:
    """The text with one line as it was likely meant, or empty at the second time.

    None where the fault may reach over several lines.
    """
    lines = text.split("\n")
    if complaint.runs_on or complaint.line > len(lines):
        return None
    line = lines[complaint.line - 1]
    if any(line.count(one) != line.count(other) for one, other in ("[]", "{}")) or "'''" in line or '"""' in line:
        return None
    meant = None if again else value_of(line)
    if meant is None:
        lines[complaint.line - 1] = ""
    else:
        key = f"{meant[0]}-again-{complaint.line}" if complaint.repeated else meant[0]
        lines[complaint.line - 1] = f"{key} = {json.dumps(meant[1], ensure_ascii=False)}"
    return "\n".join(lines)


def _find_oversize(text: str) -> SyntaxMistake | None:
    if text.count(",") > MOST_COMMAS:
        return SyntaxMistake(f"lists of more than {MOST_COMMAS:,} items; no plan needs so many", None)
    if text.count("\n") > MOST_LINES:
        return SyntaxMistake(f"more than {MOST_LINES:,} lines; split the plan", None)
    if found := _DEEP_KEY.search(text):
        return SyntaxMistake("a key of more than 20 parts; a key is one word", _line_at(text, found.start()))
    if found := _LONG_NUMBER.search(text):
        return SyntaxMistake(
            f"a number of more than {_MOST_DIGITS:,} digits; write a shorter one", _line_at(text, found.start()))
    return None


def _line_at(text: str, at: int) -> int:
    return text.count("\n", 0, at) + 1

"""Values that cannot be read: what is wrong with them, and the value that was likely meant."""

from __future__ import annotations

import re
from typing import NamedTuple

from wallplan.plan.found import print_name

_LONGEST = 120
_PAIRS = ("“”", "„“", "„”", "””", "‘’", "’’", "‚‘", "‚’", "``", "«»", "»«", "‹›", "´´", "''", '""')
_BARE = re.compile(r"[^\"“”„`\[\]{}\\=]{1,40}")
_FIRST = r"""("[^"]*"|'[^']*'|[A-Za-z0-9][\w.+-]*)"""
_ENDED = re.compile(rf"{_FIRST}\s*([,;.])$")
_NOTED = re.compile(rf"{_FIRST}\s*(?://|--|;|/\*|\()(.*)$")
_TWO_KEYS = re.compile(rf"{_FIRST}\s*[,;]?\s+([A-Za-z_]\w*)\s*[=:]\s*(.+)$")
_COMMA = re.compile(r"\d+,\d+")
_NUMBERS = re.compile(r"\d+(?:\.\d+)?")
_DATE = re.compile(r"\d{4}-\d\d?-\d\d?")
_LENGTH = re.compile(r"""["'`´]?(\d[\d ./½¼¾⅛⅜⅝⅞-]*)(?:('|`|´|ft\.?|feet)\s*-?\s*([\d ./½¼¾⅛⅜⅝⅞-]*))?(?:"|''|in)?["'`´]?""")
_YES_NO = {"true": "true", "yes": "true", "on": "true", "false": "false", "no": "false", "off": "false"}


class Judged(NamedTuple):
    """A value that cannot be read: what is said of it, the text that it is read as, and keys on its line that are lost."""

    said: str
    meant: str
    names: tuple[str, ...] = ()


def unquote(value: str) -> str:
    """A value without the quotes around it, straight or curly; marks of feet and inches stay."""
    ends = next((pair for pair in _PAIRS if value.startswith(pair[0])), None)
    if ends is None:
        return value
    closed = len(value) > 1 and (ends[0] + value[-1]) in _PAIRS
    return (value[1:-1] if closed else value[1:]).strip()


def judge_value(key: str, value: str, plain: str) -> Judged:
    """What is wrong with the value of a key, which TOML's reader cannot read, and what to write.

    ``plain`` is what its reader says of it, in plain words. Of a long value, or one with letters that cannot be seen,
    no more is said.
    """
    if len(value) > _LONGEST or not value.isprintable():
        return Judged(f"{print_name(value)}: {plain}", unquote(value))
    return _judge_plain(key, value, plain)


def _judge_plain(key: str, value: str, plain: str) -> Judged:
    if not value:
        return Judged("no value that can be read; write one after the equals sign", "")
    if found := _TWO_KEYS.match(value):
        second = f"{found[2]} = {print_name(found[3])}"
        return Judged(f"two keys on one line; write {key} = {found[1]}, and {second} on a line of its own",
                      unquote(found[1]), (found[2],))
    if found := _ENDED.match(value):
        return Judged(f'{print_name(value)}: a "{found[2]}" behind the value; leave it out, {key} = {found[1]}',
                      unquote(found[1]))
    if found := _NOTED.match(value):
        note = print_name(found[2].strip("*/) "))
        return Judged(f"{print_name(value)}: a note begins with #; write {key} = {found[1]}  # {note}", unquote(found[1]))
    if value.casefold() in _YES_NO:
        meant = _YES_NO[value.casefold()]
        return Judged(f"{value} cannot be read; write {key} = {meant}", meant)
    return _judge_by_kind(key, value) or _judge_quotes(key, value, plain)


def _judge_by_kind(key: str, value: str) -> Judged | None:
    """What is said where the key holds no text: quotes would not help it."""
    from wallplan.plan.wrong_value import kind_of  # with the schema: only a mistake needs it

    kind, numbers, shown = kind_of(key), _NUMBERS.findall(value), print_name(value)
    if kind == "number" and not _COMMA.fullmatch(value):
        written = f"write {key} = {numbers[0].lstrip('0') or 0}" if len(numbers) == 1 else "write a number, in figures alone"
        return Judged(f"{shown} is no number that can be read; {written}", value)
    if kind == "list" and not value.startswith("["):
        return Judged(f"{shown} is no list; write {key} = [{print_name(value.strip('(){}'))}]", value)
    if kind == "yes or no":
        return Judged(f"{shown} cannot be read; write {key} = true or false", value)
    if key == "date" and _DATE.fullmatch(value):
        return Judged(f"{shown} is no day of any year; write date = 2031-04-02", value)
    return None


def _judge_quotes(key: str, value: str, plain: str) -> Judged:
    meant = unquote(value)
    straight = meant.replace("’", "'").replace("”", '"').replace("′", "'").replace("″", '"')
    if value[0] in "“”„‘’‚`´«»‹›" and _BARE.fullmatch(straight):
        curly = "stands in curly quotes, which some programs put in by themselves; write straight ones"
        return Judged(f'{print_name(value)} {curly}, {key} = "{straight}"', meant)
    if _COMMA.fullmatch(value):
        pointed = value.replace(",", ".")
        return Judged(f"{value}: a decimal point, no comma; write {key} = {pointed}", pointed)
    if length := _find_length(value):
        return Judged(f"{print_name(value)}: {plain}, {key} = {length}", length[1:-1])
    other = {"'": '"', '"': "'"}.get(value[0], "")
    if other and other not in value and value[0] == value[-1] and value.count(value[0]) > 2:
        written = f"{other}{print_name(value[1:-1])}{other}"
        return Judged(f"{print_name(value)}: quotes inside quotes of one kind; write {key} = {written}", value[1:-1])
    if value.count('"') == 1 and value.endswith('"') and _BARE.fullmatch(value[:-1]):
        return Judged(f'{print_name(value)}: a text whose opening quote is missing; write {key} = "{value}', value[:-1])
    written = f', {key} = "{value}"' if _BARE.fullmatch(value) and not value.startswith("'") else ""
    return Judged(f"{print_name(value)}: {plain}{written}", meant)


def _find_length(value: str) -> str | None:
    """A length with its marks as a plan holds it, from a value whose quotes and marks run into one another."""
    found = _LENGTH.fullmatch(value)
    if found is None or not any(mark in value for mark in "'\"`´"):
        return None
    if found[2]:
        return '"' + f"{found[1].strip()}' {(found[3] or '').strip()}".strip() + '"'
    return f"'{found[1].strip()}\"'"

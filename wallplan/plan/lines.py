"""Finds the line on which each key of a plan stands.

A scan of TOML text that has already been read by tomllib, so it may take the text to be sound: it looks only for where
headings, keys and the items of lists begin. Used when there is a mistake to report, never on a plan without one.
"""

from __future__ import annotations

import re
from bisect import bisect_left
from collections.abc import Mapping

from wallplan.plan.notebook import KeyPath

_STRING = re.compile(
    r'"""(?:[^"\\]|\\.|"(?!""))*""""{0,2}' r"|'''.*?''''{0,2}" r'|"(?:[^"\\\n]|\\.)*"' r"|'[^'\n]*'", re.DOTALL)
_BLANK = re.compile(r"(?:[ \t\n]|#[^\n]*)*")
_PART = re.compile(r"[A-Za-z0-9_-]+")
_DOT = re.compile(r"[ \t]*\.[ \t]*")
_SCALAR = re.compile(r"[^,\]}\n#]*")
_PLAIN_ITEMS = re.compile(r"""[^\[\]{}"'#]+""")
_ESCAPE = re.compile(r"\\(u[0-9A-Fa-f]{4}|U[0-9A-Fa-f]{8}|[btnfr\"\\])")


def find_lines(text: str) -> Mapping[KeyPath, int]:
    """The line, from 1, of every table and key by its path. Unsound text gives the keys before the unsound place."""
    scan = _Scan(text.replace("\r\n", "\n"))
    try:
        scan.read_document()
    except RecursionError:
        return scan.lines
    return scan.lines


def line_of(lines: Mapping[KeyPath, int], path: KeyPath) -> int:
    """The line of a key, or of the nearest table around it that has one; the first line where none has."""
    for end in range(len(path), 0, -1):
        if path[:end] in lines:
            return lines[path[:end]]
    return 1


class _Scan:
    def __init__(self, text: str) -> None:
        self.text = text
        self.at = 0
        self.lines: dict[KeyPath, int] = {}
        self._breaks = [found.start() for found in re.finditer("\n", text)]
        self._counts: dict[KeyPath, int] = {}

    def read_document(self) -> None:
        table: KeyPath = ()
        while self._skip(_BLANK) is not None and self.at < len(self.text):
            start = self.at
            if self.text[start] == "[":
                table = self._read_heading()
            else:
                self._read_pair(table)
            if self.at == start:
                return

    def _mark(self, path: KeyPath, at: int) -> None:
        self.lines.setdefault(path, bisect_left(self._breaks, at) + 1)

    def _skip(self, pattern: re.Pattern[str]) -> str | None:
        found = pattern.match(self.text, self.at)
        if found is None:
            return None
        self.at = found.end()
        return found[0]

    def _read_heading(self) -> KeyPath:
        start, listed = self.at, self.text.startswith("[[", self.at)
        self.at += 2 if listed else 1
        self._skip(_BLANK)
        parts = self._read_key()
        path: KeyPath = ()
        for part in parts[:-1]:
            path += (part,)
            if path in self._counts:
                path += (self._counts[path] - 1,)
        path += parts[-1:]
        if listed:
            self._mark(path, start)
            self._counts[path] = self._counts.get(path, 0) + 1
            path += (self._counts[path] - 1,)
        for end in range(1, len(path) + 1):
            self._mark(path[:end], start)
        self._skip(_BLANK)
        self.at += 2 if listed else 1
        return path

    def _read_key(self) -> tuple[str, ...]:
        parts: list[str] = []
        while True:
            if (bare := self._skip(_PART)) is not None:
                parts.append(bare)
            elif (quoted := self._skip(_STRING)) is not None:
                parts.append(_unquote(quoted))
            if not parts or self._skip(_DOT) is None:
                return tuple(parts)

    def _read_pair(self, table: KeyPath) -> None:
        start = self.at
        parts = self._read_key()
        for end in range(1, len(parts) + 1):
            self._mark(table + parts[:end], start)
        self._skip(_BLANK)
        if self.text.startswith("=", self.at):
            self.at += 1
            self._read_value(table + parts)

    def _read_value(self, path: KeyPath) -> None:
        self._skip(_BLANK)
        if self._skip(_STRING) is not None:
            return
        opening = self.text[self.at: self.at + 1]
        if opening == "[":
            self._read_list(path)
        elif opening == "{":
            self._read_inline(path)
        else:
            self._skip(_SCALAR)

    def _read_list(self, path: KeyPath) -> None:
        index = 0
        self.at += 1
        while self._skip(_BLANK) is not None and self.at < len(self.text):
            letter = self.text[self.at]
            if letter == "]":
                self.at += 1
                return
            if letter in "[{\"'":
                self._mark((*path, index), self.at)
                self._read_value((*path, index))
            elif (plain := self._skip(_PLAIN_ITEMS)) is not None:
                index += plain.count(",")
            else:
                return

    def _read_inline(self, path: KeyPath) -> None:
        self.at += 1
        while self._skip(_BLANK) is not None and self.at < len(self.text):
            start = self.at
            if self.text[start] == "}":
                self.at += 1
                return
            if self.text[start] == ",":
                self.at += 1
            else:
                self._read_pair(path)
            if self.at == start:
                return


def _unquote(quoted: str) -> str:
    inner = quoted[1:-1]
    if quoted[0] == "'" or "\\" not in inner:
        return inner
    return _ESCAPE.sub(_unescape, inner)


def _unescape(found: re.Match[str]) -> str:
    code = found[1]
    if code[0] in "uU":
        return chr(int(code[1:], 16))
    return {"b": "\b", "t": "\t", "n": "\n", "f": "\f", "r": "\r"}.get(code, code)

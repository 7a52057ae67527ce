"""TOML text to plain tables, and tomllib's complaints in a mason's words."""

from __future__ import annotations

import re
from typing import Any

MOST_COMMAS = 20_000
"""Items in all lists of a plan together: over this, reading alone takes too long."""

MOST_LINES = 20_000
"""Lines of a plan, for the same reason."""

_MOST_DIGITS = 1_000
_LONG_NUMBER = re.compile(rf"\d[\d_]{{{_MOST_DIGITS}}}")
_DEEP_KEY = re.compile(r"""(?<![\w-])(?:(?:[\w-]+|"[^"\n]*"|'[^'\n]*')[ \t]*\.[ \t]*){20}""", re.ASCII)
_AT_LINE = re.compile(r"\s*\(at line (\d+), column \d+\)$")
_AT_END = re.compile(r"\s*\(at end of document\)$")

_PLAIN_WORDS = (
    ("Expected '=' after a key", "a key without an equals sign; write key = value, with plain letters in the key"),
    ("Expected ']'", "a heading that is not closed; write [masonry] or [[wall]]"),
    ("Invalid initial character for a key", "a key that does not start as one; write letters, then = and the value"),
    ("Cannot overwrite a value", "a key given twice, or a key and a table of one name; keep one"),
    ("Cannot declare", "a table given twice; keep one, and write walls as [[wall]], openings as [[wall.opening]]"),
    ("Cannot mutate", "a table that is closed already; put the key inside it"),
    ("Duplicate inline table key", "a key given twice inside { }; keep one"),
    ("Unterminated string", "a text whose closing quote is missing; close it"),
    ("Illegal character '\\n'", "a text whose closing quote is missing; close it on the same line"),
    ("Illegal character", "a character that may not stand here; take it out"),
    ("Unescaped '\\'", "a backslash in a text; put the text in single quotes"),
    ("Expected \"'''\"", "a text whose closing ''' is missing; close it"),
    ("Unclosed array", "a list that is not closed; write ]"),
    ("Unclosed inline table", "a { that is not closed; write }"),
    ("Invalid value", "no value that can be read; put texts and lengths in quotes"),
    ("Invalid statement", "neither a key nor a heading; write key = value, with plain letters in the key"),
    ("Expected newline or end of document", "more on the line than one value; put texts and lengths in quotes"),
    ("Invalid date or datetime", "a date that is none; write 2031-04-02"),
)
_CURLY = re.compile("=\\s*[\u201c\u201d\u201e\u2018\u2019\u00ab]")
_INCH_MARK = "; a length that ends in an inch mark is written '4\"' in single quotes, or without the mark: \"12' 4\""


class SyntaxMistake(ValueError):
    """Text that is not TOML: the message in plain words, and the line it stands on (None where that is not known)."""

    def __init__(self, message: str, line: int | None) -> None:
        super().__init__(message)
        self.line = line


def read_toml(text: str) -> dict[str, Any]:
    """The tables of TOML text. Raises SyntaxMistake for anything else, also for text too deep or large to be a plan."""
    import tomllib

    _refuse_oversize(text)
    try:
        return tomllib.loads(text)
    except tomllib.TOMLDecodeError as error:
        raise _explain(str(error), text) from None
    except RecursionError:
        raise SyntaxMistake("lists or tables inside each other too deep; a plan needs three levels", None) from None
    except ValueError as error:
        raise SyntaxMistake(f"a value that cannot be read ({error})", None) from None


def _refuse_oversize(text: str) -> None:
    if text.count(",") > MOST_COMMAS:
        raise SyntaxMistake(f"lists of more than {MOST_COMMAS:,} items; no plan needs so many", None)
    if text.count("\n") > MOST_LINES:
        raise SyntaxMistake(f"more than {MOST_LINES:,} lines; split the plan", None)
    if found := _DEEP_KEY.search(text):
        raise SyntaxMistake("a key of more than 20 parts; a key is one word", _line_at(text, found.start()))
    if found := _LONG_NUMBER.search(text):
        raise SyntaxMistake(
            f"a number of more than {_MOST_DIGITS:,} digits; write a shorter one", _line_at(text, found.start()))


def _line_at(text: str, at: int) -> int:
    return text.count("\n", 0, at) + 1


def _explain(message: str, text: str) -> SyntaxMistake:
    line = int(found[1]) if (found := _AT_LINE.search(message)) else len(text.rstrip().splitlines()) or 1
    said = _AT_END.sub("", _AT_LINE.sub("", message))
    plain = next((words for start, words in _PLAIN_WORDS if said.startswith(start)), f"not TOML ({said})")
    lines = text.split("\n")
    here = lines[line - 1].partition("#")[0] if line <= len(lines) else ""
    if _CURLY.search(here) and said.startswith(("Invalid value", "Illegal", "Unterminated", "Expected")):
        return SyntaxMistake("curly quotes, which some programs put in by themselves; write straight ones, \"12' 4\"", line)
    return SyntaxMistake(plain + (_INCH_MARK if here.count('"') % 2 or ("'" in here and '"' in here) else ""), line)

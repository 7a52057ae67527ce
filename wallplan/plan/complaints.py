"""What TOML's reader complains of, in a mason's words: what stands on the line, what is wrong, what to write instead."""

from __future__ import annotations

import re
from typing import NamedTuple

from wallplan.plan.found import print_name

_AT_LINE = re.compile(r"\s*\(at line (\d+), column \d+\)$")
_AT_END = re.compile(r"\s*\(at end of document\)$")
_LETTER = re.compile(r"(?:Illegal|Found invalid) character '(.+)'$")
_PAIR = re.compile(r"\s*([A-Za-z_][A-Za-z0-9_-]*)\s*([=:]?)\s*(.*?)\s*$")
_BARE = re.compile(r"[^\"“”„`\[\]{}\\=]{1,40}")
_MARKED = re.compile(r"\d\s*[\"']")
_YES_NO = {"true": "true", "yes": "true", "on": "true", "false": "false", "no": "false", "off": "false"}

_QUOTES = "put texts and lengths in quotes"
_LETTERS = "write key = value, with plain letters in the key"
_CARRIAGE_RETURN = "a line that ends with a carriage return alone; save the plan as plain text with ordinary line ends"
_CURLY = "stands in curly quotes, which some programs put in by themselves; write straight ones"
_OF_HEADINGS = (
    ("Expected ']", "a heading that is not closed; write [masonry] or [[wall]]"),
    ("Cannot overwrite a value", "a heading whose name is taken; keep one, and put [[wall]] before its [[wall.opening]]"),
    ("Cannot declare", "a table given twice; keep one, and write walls as [[wall]], openings as [[wall.opening]]"),
    ("Expected newline", "more on the line than the heading; leave the rest out"),
    ("Invalid initial character", "a heading without a name; write [masonry] or [[wall]]"),
)
_OF_KEYS = (
    ("Expected '=' after a key", f"a key without an equals sign; {_LETTERS}"),
    ("Invalid initial character for a key", "a key that does not start as one; write letters, then = and the value, "
                                            "and what stands in { } on one line"),
    ("Cannot overwrite a value", "a key given twice, or a key and a table of one name; keep one, or write the heading that "
                                 "it lacks"),
    ("Cannot mutate", "a table that is closed already; put the key inside it"),
    ("Duplicate inline table key", "a key given twice inside { }; keep one"),
    ("Unterminated string", "a text whose closing quote is missing; close it"),
    ("Illegal character '\\n'", "a text whose closing quote is missing; close it on the same line"),
    ("Unescaped '\\'", "a backslash in a text; put the text in single quotes"),
    ("Expected \"'''\"", "a text whose closing ''' is missing; close it"),
    ("Unclosed array", "a list that is not closed; write ]"),
    ("Unclosed inline table", "a { that is not closed; write }"),
    ("Invalid value", f"no value that can be read; {_QUOTES}"),
    ("Invalid statement", f"neither a key nor a heading; {_LETTERS}"),
    ("Expected newline or end of document", f"more on the line than one value; {_QUOTES}"),
    ("Invalid date or datetime", "a date that is none; write 2031-04-02"),
)
_INCH_MARK = "; a length that ends in an inch mark is written '4\"' in single quotes, or without the mark: \"12' 4\""


class Complaint(NamedTuple):
    """One complaint: its line, the key that stands there ("" for none), and what is said of it.

    ``repeated`` is True where the key stands above already; ``runs_on`` where the fault may reach over several lines.
    """

    line: int
    key: str
    said: str
    repeated: bool
    runs_on: bool


def complain(error: str, text: str) -> Complaint:
    """The complaint that an error of TOML's reader stands for. A line that is not known is the last one written on."""
    found, at_end = _AT_LINE.search(error), _AT_END.search(error) is not None
    number = int(found[1]) if found else len(text.rstrip().splitlines()) or 1
    bare = _AT_END.sub("", _AT_LINE.sub("", error))
    lines = text.split("\n")
    line = lines[number - 1] if number <= len(lines) else ""
    if "\r" in line.rstrip("\r"):
        return Complaint(number, "", f'"{print_name(line.strip())}": {_CARRIAGE_RETURN}', False, True)
    if line.lstrip().startswith("["):
        plain = _find_words(_OF_HEADINGS, bare) or _find_words(_OF_KEYS, bare) or _of_letter(bare)
        return Complaint(number, "", f'"{print_name(line.strip())}": {plain}', False, True)
    repeated = bare.startswith("Cannot overwrite")
    runs_on = at_end or bare.startswith(("Unterminated", "Unclosed", "Expected \"'''\""))
    pair = _PAIR.match(line)
    if pair is None:
        return Complaint(number, "", _of_line(line, bare), repeated, True)
    key = pair[1] if line[pair.end(1):pair.end(1) + 1].isascii() else print_name(line.partition("=")[0].strip())
    return Complaint(number, key, _of_pair(pair, line, bare), repeated, runs_on)


def value_of(line: str) -> tuple[str, str] | None:
    """Key and value of a line, the value without quotes and comment, as it was likely meant; None where there is no key."""
    pair = _PAIR.match(line)
    return None if pair is None else (pair[1], _unquote(_bare_value(pair[3])))


def _unquote(value: str) -> str:
    """A value without the quotes around it, straight or curly; marks of feet and inches stay."""
    ends = next((pair for pair in ('""', "''", "“”", "„“", "„”", "‘’", "``", "«»") if value.startswith(pair[0])), None)
    return value if ends is None else value[1:].removesuffix(ends[1]).strip()


def _find_words(words: tuple[tuple[str, str], ...], error: str) -> str | None:
    return next((plain for start, plain in words if error.startswith(start)), None)


def _of_line(line: str, error: str) -> str:
    """What is said of a line without a key. Letters that a key may not have are named, as they may not be seen."""
    plain = _find_words(_OF_KEYS, error) or _of_letter(error)
    return f'"{print_name(line.strip())}": {plain}' if line.strip() else plain


def _of_pair(pair: re.Match[str], line: str, error: str) -> str:
    key, sign, value = pair[1], pair[2], _bare_value(pair[3])
    odd = next((letter for letter in line.partition("=")[0] if not letter.isascii()), None)
    if error.startswith("Expected '='"):
        return _of_equals(key, value if sign or " " not in value else "", odd)
    if error.startswith(("Invalid value", "Expected newline")) and sign == "=":
        return _of_value(key, value, _find_words(_OF_KEYS, error) or "") + _of_inches(line)
    return (_find_words(_OF_KEYS, error) or _of_letter(error)) + _of_inches(line)


def _of_equals(key: str, value: str, odd: str | None) -> str:
    if odd is not None:
        return f"{_show_letter(odd)} may not stand in a key; {_LETTERS}"
    meant = _unquote(value)
    written = f'write {key} = "{meant}"' if meant and _BARE.fullmatch(meant) else _LETTERS
    return f"a key without an equals sign; {written}"


def _of_value(key: str, value: str, plain: str) -> str:
    if not value:
        return "no value that can be read; write one after the equals sign"
    if value.casefold() in _YES_NO:
        return f"{value} cannot be read; write {key} = {_YES_NO[value.casefold()]}"
    straight = _unquote(value).replace("’", "'").replace("”", '"')
    if value[0] in "“”„‘’`«" and _BARE.fullmatch(straight):
        return f'{print_name(value)} {_CURLY}, {key} = "{straight}"'
    if _BARE.fullmatch(value) and not value.startswith("'"):
        return f'{print_name(value)}: {plain}, {key} = "{value}"'
    return f"{print_name(value)}: {plain}"


def _of_inches(line: str) -> str:
    here = line.partition("#")[0]
    marks = here.count('"') % 2 or ("'" in here and '"' in here)
    return _INCH_MARK if marks and _MARKED.search(here) else ""


def _of_letter(error: str) -> str:
    found = _LETTER.match(error)
    if found is None:
        return f"not TOML ({print_name(error)})"
    return f"a character that may not stand here ({print_name(found[1])}); take it out"


def _show_letter(letter: str) -> str:
    seen = letter.isprintable() and not letter.isspace()
    return f'"{letter}"' if seen else f"a character that cannot be seen (U+{ord(letter):04X})"


def _bare_value(value: str) -> str:
    return value if "'" in value or '"' in value else value.partition("#")[0].strip()

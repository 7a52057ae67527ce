"""What TOML's reader complains of, in a mason's words: what stands on the line, what is wrong, what to write instead."""

from __future__ import annotations

import re
from typing import NamedTuple

from wallplan.plan.found import print_name
from wallplan.plan.meant_value import Judged, judge_value, unquote

_AT_LINE = re.compile(r"\s*\(at line (\d+), column \d+\)$")
_AT_END = re.compile(r"\s*\(at end of document\)$")
_LETTER = re.compile(r"(?:Illegal|Found invalid) character '(.+)'$")
_WORD = r"[A-Za-z_][A-Za-z0-9_-]*"
_PAIR = re.compile(rf"\s*({_WORD}(?: [A-Za-z0-9_-]+)*(?=\s*[=:])|{_WORD})\s*(:=|=>|==|->|[=:]?)\s*(.*?)\s*$")
_NOTE = re.compile(r"\s*(?://+|--+|;+|/\*|\*|<!--|'(?=\s))\s*(.*)$")
_LIST = re.compile(r"\[[^\[\]]*\]")
_UNPARTED = re.compile(r"""(["'\d])\s+(["'\d])""")
_WHOLE = re.compile(r"""=\s*("[^"]*"|'[^']*')\s*$""")
_BARE = re.compile(r"[^\"“”„`\[\]{}\\=]{1,40}")
_MARKED = re.compile(r"\d\s*[\"']")
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
    ("Cannot mutate", "a table that stands above in { }; give both a heading"),
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
    ("Invalid hex value", "a backslash in a text; put the text in single quotes"),
    ("Escaped character", "a backslash in a text; put the text in single quotes"),
)
_INCH_MARK = "; a length that ends in an inch mark is written '4\"' in single quotes, or without the mark: \"12' 4\""


class Complaint(NamedTuple):
    """One complaint: its line, the key that stands there ("" for none), and what is said of it.

    ``repeated`` is True where the key stands above already; ``runs_on`` where the fault may reach over several lines.
    ``names`` are other keys on the line that are lost with it.
    """

    line: int
    key: str
    said: str
    repeated: bool
    runs_on: bool
    names: tuple[str, ...] = ()


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
    open_list = bare.startswith("Unclosed") and not _LIST.fullmatch(_bare_value(line.partition("=")[2].strip()))
    runs_on = at_end or open_list or bare.startswith(("Unterminated", "Unclosed inline", "Expected \"'''\""))
    pair = _PAIR.match(line)
    if pair is None:
        return Complaint(number, "", _of_line(line, bare), repeated, True)
    bare_key = line[pair.end(1):pair.end(1) + 1].isascii()
    key = pair[1].replace(" ", "_") if bare_key else print_name(line.partition("=")[0].strip())
    judged = _of_pair(pair, line, bare)
    return Complaint(number, key, judged.said, repeated, runs_on, judged.names)


def value_of(line: str) -> tuple[str, str] | None:
    """Key and value of a line, the value without quotes and comment, as it was likely meant; None where there is no key."""
    pair = _PAIR.match(line)
    if pair is None:
        return None
    return pair[1].replace(" ", "_"), judge_value(pair[1], _bare_value(pair[3]), "").meant


def _find_words(words: tuple[tuple[str, str], ...], error: str) -> str | None:
    return next((plain for start, plain in words if error.startswith(start)), None)


def _of_line(line: str, error: str) -> str:
    """What is said of a line without a key. Letters that a line may not have are named, as they may not be seen."""
    if odd := _find_unseen(line):
        return f'"{print_name(line.strip())}": {_show_letter(odd)} may not stand here; take it out'
    if found := _NOTE.match(line):
        return f'"{print_name(line.strip())}": a note begins with #; write # {print_name(found[1].strip("*/ "))}'
    plain = _find_words(_OF_KEYS, error) or _of_letter(error)
    return f'"{print_name(line.strip())}": {plain}' if line.strip() else plain


def _of_pair(pair: re.Match[str], line: str, error: str) -> Judged:
    key, sign, value = pair[1], pair[2], _bare_value(pair[3])
    meant = judge_value(key, value, "")
    if error.startswith("Expected '=' after") and " " in key and sign:
        whole = key.replace(" ", "_")
        return Judged(f'"{key}" is a key of several words; write {whole} = {print_name(value)}', meant.meant, (whole,))
    if error.startswith("Expected '='"):
        odd = next((letter for letter in line.partition("=")[0] if not letter.isascii()), None)
        return Judged(_of_equals(key, value if sign or " " not in value or value[0] in "\"'" else "", odd), meant.meant)
    if error.startswith(("Invalid value", "Expected newline")) and len(sign) > 1:
        return Judged(f"more than an equals sign; write {key} = {print_name(value)}", meant.meant)
    if odd := _find_unseen(line[: pair.start(1)]):
        return Judged(f"{_show_letter(odd)} may not stand before a key; take it out", meant.meant)
    if error.startswith("Unclosed array") and _LIST.fullmatch(value):
        parted = _UNPARTED.sub(r"\1, \2", value)
        return Judged(f"no comma between the items of a list; write {key} = {print_name(parted)}", meant.meant)
    plain = _find_words(_OF_KEYS, error) or _of_letter(error)
    if error.startswith(("Invalid value", "Expected newline")) and sign:
        judged = judge_value(key, value, plain)
        return judged._replace(said=judged.said + _of_inches(value)) if plain in judged.said else judged
    return Judged(plain + ("" if error.startswith("Cannot") else _of_inches(line)), meant.meant)


def _of_equals(key: str, value: str, odd: str | None) -> str:
    if odd is not None:
        return f"{_show_letter(odd)} may not stand in a key; {_LETTERS}"
    meant = unquote(value)
    written = f'write {key} = "{meant}"' if meant and _BARE.fullmatch(meant) else _LETTERS
    return f"a key without an equals sign; {written}"


def _of_inches(text: str) -> str:
    """How an inch mark is written, where one may have been taken for a quote."""
    here = text.partition("#")[0]
    marks = here.count('"') % 2 or ("'" in here and '"' in here)
    return _INCH_MARK if marks and _MARKED.search(here) and not _WHOLE.search(here) else ""


def _find_unseen(line: str) -> str | None:
    """The first letter of a line that cannot be seen, or that looks like a blank."""
    return next((one for one in line if one != "\t" and one != " " and (one.isspace() or not one.isprintable())), None)


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

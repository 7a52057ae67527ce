"""Plan files spoilt in every way that a disk, an editor or a hand spoils them; the same ones for a number, every time."""

from __future__ import annotations

import random
import re
from collections.abc import Callable

Dice = random.Random

VALUES = (
    "9" * 400, "-1", "0", "1e400", "nan", "-inf", "0x7fffffffffffffff", "1979-05-27T07:32:00Z", "07:32:00", "2031-04-02", "true", "[]",
    "{}", "[[[[[[]]]]]]", '""', "''", '"\\u0000"', '"\\uD800"', "'" + "x" * 5000 + "'", '"12-4"', '"1/0"', '"½¼¾"', '"-4\'"', "{a = {b = 1}}",
    '"3,5 m"', "[1, \"a\", true]", '"' + "9" * 300 + "'\"", "1_000_000", "+5", ".5", "5.", "08", '"' + "\u202e" + '"', "[{}]", "[{name=1}]",
)


def spoil(text: str, number: int) -> bytes:
    """A good plan's text spoilt one to three times."""
    dice = Dice(f"spoilt plan {number}")
    data = text.encode()
    for _ in range(dice.choice((1, 1, 1, 2, 3))):
        data = dice.choice(WAYS)(data, dice)
    return data


def _flip(data: bytes, dice: Dice) -> bytes:
    spoilt = bytearray(data)
    for _ in range(dice.randint(1, 8) if data else 0):
        spoilt[dice.randrange(len(spoilt))] = dice.randrange(256)
    return bytes(spoilt)


def _cut_off(data: bytes, dice: Dice) -> bytes:
    return data[:dice.randint(0, len(data))]


def _lose(data: bytes, dice: Dice) -> bytes:
    start = dice.randint(0, len(data))
    return data[:start] + data[start + dice.randint(1, 40):]


def _double(data: bytes, dice: Dice) -> bytes:
    start = dice.randint(0, len(data))
    chunk = data[start:start + dice.randint(1, 200)]
    return data[:start] + chunk * dice.randint(2, 50) + data[start:]


def _drop_in(data: bytes, dice: Dice) -> bytes:
    at = dice.randint(0, len(data))
    junk = dice.choice((b"\0", b"\xff\xfe", b"\xef\xbb\xbf", b"\x1b[31m", b"\r", b"\x85", b"\xe2\x80\xa8", b"\\", b'"', b"'", b"[", b"]]", b"{",
                        b"=", b"#", b"\n[[wall]]\n", b"[" * 3000, b"{a=" * 3000, b"a." * 3000, b'"""', "\u200b\u202e".encode()))
    return data[:at] + junk + data[at:]


def _recode(data: bytes, dice: Dice) -> bytes:
    text = data.decode("utf-8", errors="replace")
    return dice.choice((
        lambda: text.encode("utf-16"), lambda: text.encode("utf-32-le"), lambda: b"\xef\xbb\xbf" + data,
        lambda: text.replace("\n", "\r\n").encode(), lambda: text.replace("\n", "\r").encode(),
        lambda: text.replace("Ferry", "Fähre").encode("latin-1", errors="replace"), lambda: data + b"\x1a",
    ))()


def _replace_value(data: bytes, dice: Dice) -> bytes:
    return _at_line(data, dice, rb"=", lambda line: line.partition(b"=")[0] + b"= " + dice.choice(VALUES).encode())


def _misspell(data: bytes, dice: Dice) -> bytes:
    def change(line: bytes) -> bytes:
        key, sign, rest = line.partition(b"=")
        at = dice.randint(0, len(key))
        return key[:at] + dice.choice((b"x", b"-", b".", b" ", b"\xc3\xa4", b"_")) + key[at + dice.randint(0, 1):] + sign + rest

    return _at_line(data, dice, rb"=", change)


def _repeat_line(data: bytes, dice: Dice) -> bytes:
    return _at_line(data, dice, rb"\S", lambda line: line + b"\n" + line)


def _change_heading(data: bytes, dice: Dice) -> bytes:
    return _at_line(data, dice, rb"^\[", lambda line: dice.choice((b"[wall]", b"[[masonry]]", b"[wall.opening]", b"[[wall.opening]]", b"[[order]]",
                                                                  b"[a.b.c.d]", b"[[wall.opening.x]]", b"[order.item]", b"[own_unit]")))


def _make_huge(data: bytes, dice: Dice) -> bytes:
    tail = dice.choice((b"\n" * 30_000, b"# " + b"x" * 1_000_001, b"\nx = [" + b"1," * 30_000 + b"]", b"\nx = '" + b"y" * 500_000 + b"'",
                        b"".join(b"\nk%d = 1" % n for n in range(5000)), b"\n[[wall]]" * 300))
    return data + tail


def _shuffle_lines(data: bytes, dice: Dice) -> bytes:
    lines = data.split(b"\n")
    dice.shuffle(lines)
    return b"\n".join(lines)


def _random_bytes(data: bytes, dice: Dice) -> bytes:
    return dice.randbytes(dice.randint(0, 3000))


def _at_line(data: bytes, dice: Dice, pattern: bytes, change: Callable[[bytes], bytes]) -> bytes:
    lines = data.split(b"\n")
    fit = [index for index, line in enumerate(lines) if re.search(pattern, line)]
    if fit:
        index = dice.choice(fit)
        lines[index] = change(lines[index])
    return b"\n".join(lines)


WAYS: tuple[Callable[[bytes, Dice], bytes], ...] = (
    _flip, _flip, _cut_off, _lose, _double, _drop_in, _drop_in, _recode, _replace_value, _replace_value, _replace_value, _misspell, _misspell,
    _repeat_line, _change_heading, _make_huge, _shuffle_lines, _random_bytes,
)

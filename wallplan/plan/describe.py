"""The page about the plan file, docs/plan-file.md, from the schema's own words."""

from __future__ import annotations

from collections.abc import Iterator

from wallplan.plan.schema import REQUIRED, TABLES, PlanTable, Table, default_of, key_of, list_keys

EXAMPLE = """\
title   = "Ferry landing: ticket kiosk"
measure = "feet"

[masonry]
unit = "block-8"
bond = "half"

[[wall]]
name   = "Landing side"
length = "20'"
height = "8' 8"

  [[wall.opening]]
  name      = "Door"
  from_left = "2' 8"
  width     = "3' 4"
  height    = "7' 4"

  [[wall.opening]]
  name      = "Ticket window"
  from_left = "11' 4"
  width     = "4'"
  sill      = "3' 4"
  height    = "4'"

[[wall]]
name       = "Water side"
length     = "20'"
courses    = 13
bond_beams = ["top"]
"""
"""A plan that can be laid as it stands: the kiosk's two long walls."""

_BEGINNING = """\
<!-- Written by wallplan from its schema; change the schema, not this page. -->

# The plan file

One text file describes one job: the walls, their openings, distances from the left. It is what you would write on a
set-out sheet. It is TOML: a line is `key = value`, a heading stands in brackets, and what follows `#` is yours to note.

The ferry landing's ticket kiosk, two of its walls:

```toml
"""

_LENGTHS = """\
## Lengths

Read the same way everywhere. In a plan that measures in feet:

| write | means |
|---|---|
| `"12'"`, `"12 ft"` | 12 feet |
| `"12' 4"`, `"12'-4\\""`, `"12 ft 4 in"` | 12 feet 4 inches |
| `"12' 4 5/8"`, `"12'-4-5/8\\""`, `"12' 4.625\\""` | 12 feet 4 5/8 inches |
| `'4"'`, `"4"`, `"4 in"`, `4` | 4 inches |
| `"3/8"`, `"15-5/8"`, `"15 5/8"` | inches |
| `"300 mm"`, `"30 cm"`, `"0.3 m"` | a metric length |

`"12-4"` is refused: it may be 12 feet 4 or 8 inches. The easiest is to leave the inch mark off: `"12' 4"`. A text that
ends in an inch mark goes in single quotes, `'4"'`, or with a backslash before the mark, `"12'-4\\""`.

In a metric plan a bare number is millimetres, `"3.6 m"` metres, and a length with a foot or inch mark is feet and inches.
The marks `′ ″ ’ ”` and `½ ¼ ¾ ⅜ ⅝ ⅞ ⅛` are read too. Anything else is refused, as are negative lengths and lengths over
3,000 m.

Lengths are printed as the plan measures them: feet and inches to the nearest 1/16 in., or whole millimetres.
"""

_ERRORS = """\
## When something is wrong

Every mistake of a file is told at once, a line each: the file and its line, where it is, the key, what was found, and
what to write. Nothing is written until the plan is right.

```
kiosk.toml:6: masonry: bond: "haalf" is not known; allowed: half, third, quarter, stack, flemish, english, english garden wall, flemish garden wall, common or header; write bond = "half"
kiosk.toml:15: wall "Landing side", opening "Door": from_left: "2-8" is not a length; write feet and inches as "2' 8"
```

Besides keys, words and lengths, these are mistakes: an opening that leaves its wall, meets another or reaches a control
joint, stands below a step of the footing or leaves a gable; steps that meet, or that no course can meet; a gable wider
than its wall; a lintel that bears across one; a control joint that leaves less than the least piece; courses and height that
disagree; a range of joints that does not hold the joint; a corner that its neighbour denies; walls or piers that run into
others; two walls whose sheets would have one name; more than 2,000,000 pieces in a plan.

The planner sets out masonry. It does not design it: lintels, steel, footings and bracing are for whoever answers for the
structure, under the code where you build.
"""


def describe_plan_file() -> str:
    """The whole page as Markdown, ending in a newline. The same at every call."""
    parts = [_BEGINNING + EXAMPLE + "```\n", "\n".join(_describe_least()), _LENGTHS]
    parts += ["\n".join(_describe_table(heading, table)) for heading, table in TABLES]
    return "\n".join([*parts, _ERRORS])


def _describe_least() -> Iterator[str]:
    yield "A plan needs only what is marked *required* below; everything else has a default, mostly the unit's own."
    yield "Words and units may be written in big letters too."
    yield ""


def _describe_table(heading: str, table: type[Table]) -> Iterator[str]:
    yield f"## `{heading}`" if table is not PlanTable else "## Above the first heading"
    yield ""
    yield str(table.__doc__)
    yield ""
    yield "| key | meaning | left out | example |"
    yield "|---|---|---|---|"
    for key in list_keys(table):
        told = key_of(table, key)
        default = default_of(table, key)
        shown = f"*{REQUIRED}*" if default == REQUIRED else default
        yield f"| `{key}` | {told.meaning} | {shown} | `{told.example}` |"
    yield ""

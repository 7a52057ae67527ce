"""The page put together: template, look, scripts and data in one file that asks nothing of any network.

The policy in its head lets the browser run this one script and this one style sheet, by their sums, and load nothing.
"""

from __future__ import annotations

import base64
import hashlib
import json
import re
from html import escape
from importlib.resources import files
from typing import Any

from wallplan.layout.model import Layout
from wallplan.teaching.page.course_list import list_courses
from wallplan.teaching.page.texts import Texts, tell_unit
from wallplan.teaching.page.wall_data import tell_wall

SCRIPTS = ("told.js", "picture.js", "strip.js", "steps.js", "compare.js", "practice.js", "start.js")
"""The page's scripts in the order in which they are joined to one."""


def write_page(layout: Layout) -> bytes:
    """The page of a layout as the bytes of an HTML file, the same for the same layout.

    Titles, names and units reach it as text, whatever signs are in them. A job without walls gives a page that says so.
    """
    style, script = _read("page.css"), "".join(_read(name) for name in SCRIPTS)
    filled = {
        "title": escape(layout.job.title), "unit": escape(tell_unit(layout.job)), "style": style, "script": script,
        "style-sum": _sum(style), "script-sum": _sum(script), "data": _write_data(tell_page(layout)),
        "courses": list_courses(layout) or "<p>This plan has no walls.</p>",
    }
    return re.sub(r"\{\{([a-z-]+)\}\}", lambda found: filled[found[1]], _read("page.html")).encode()


def tell_page(layout: Layout) -> dict[str, Any]:
    """All that the page's scripts show, as values that json can write."""
    texts = Texts()
    walls = [tell_wall(layout, index, texts) for index in range(len(layout.walls))]
    unit = layout.job.masonry.unit
    return {"unit": [unit.length, unit.height, unit.kind], "walls": walls, "texts": texts.all()}


def _write_data(data: dict[str, Any]) -> str:
    """JSON that no sign of ends early: the signs that HTML reads are written by their numbers."""
    text = json.dumps(data, separators=(",", ":"))
    return text.replace("<", "\\u003c").replace(">", "\\u003e").replace("&", "\\u0026")


def _sum(text: str) -> str:
    return f"sha256-{base64.b64encode(hashlib.sha256(text.encode()).digest()).decode()}"


def _read(name: str) -> str:
    return files("wallplan.teaching.page").joinpath(name).read_text(encoding="utf-8")

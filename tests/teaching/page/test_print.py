"""The page on paper: the picture, what is told of the course, and every course in words; nothing that wants a finger."""

from __future__ import annotations

import base64
import io
import unicodedata

from pypdf import PdfReader

from tests.jobs import pump_house
from tests.teaching.page.conftest import Show
from wallplan.layout.build import lay


def test_print(show: Show) -> None:
    driver = show(lay(pump_house()))
    driver.execute_script("go(7); setDark(true)")
    printed = driver.execute_cdp_cmd("Page.printToPDF", {"paperWidth": 8.5, "paperHeight": 11, "printBackground": False})
    pages = PdfReader(io.BytesIO(base64.b64decode(printed["data"]))).pages
    text = unicodedata.normalize("NFKC", " ".join(" ".join(page.extract_text() for page in pages).split()))
    assert "Ferry landing" in text and "Course 7 of 13" in text and "every course, the lowest first" in text
    assert "8'-8\"" in text, "the top of course 13"
    assert "Leads first" not in text and "Next" not in text
    assert len(pages) <= 4

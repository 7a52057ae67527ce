"""The page on paper: the picture, what is told of the course, and every course in words; nothing that wants a finger."""

from __future__ import annotations

import base64
import io
import unicodedata

from pypdf import PdfReader

from tests.jobs import pump_house
from tests.teaching.page.browser import Driver
from tests.teaching.page.conftest import Show
from wallplan.layout.build import lay


def print_page(driver: Driver) -> str:
    """The text on paper, from no more than four sheets."""
    printed = driver.execute_cdp_cmd("Page.printToPDF", {"paperWidth": 8.5, "paperHeight": 11, "printBackground": False})
    pages = PdfReader(io.BytesIO(base64.b64decode(printed["data"]))).pages
    assert len(pages) <= 4
    return unicodedata.normalize("NFKC", " ".join(" ".join(page.extract_text() for page in pages).split()))


def test_print(show: Show) -> None:
    driver = show(lay(pump_house()))
    driver.execute_script("go(7); setDark(true)")
    text = print_page(driver)
    assert "Ferry landing" in text and "Course 7 of 13" in text and "every course, the lowest first" in text
    assert "8'-8\"" in text, "the top of course 13"
    assert "Leads first" not in text and "Next" not in text


def test_where_no_course_was_looked_at_the_whole_wall_is_printed(show: Show) -> None:
    driver = show(lay(pump_house()))
    driver.execute_script("setMode('practice'); find('offers').children[0].click()")
    text = print_page(driver)
    assert "Question" not in text and "Not this one" not in text and "every course, the lowest first" in text
    assert driver.execute_script("return document.querySelectorAll('#picture .number').length") > 0
    driver.execute_script("dispatchEvent(new Event('beforeprint'))")
    whole = driver.execute_script("return document.querySelector('#picture svg').getAttribute('aria-label')")
    driver.execute_script("dispatchEvent(new Event('afterprint'))")
    assert whole == "The whole wall."
    assert "Question 1 of" in driver.execute_script("return find('say').textContent")

"""Signs that HTML, scripts or styles would read reach the page as plain text."""

from __future__ import annotations

import json
import re
from dataclasses import replace

from selenium.webdriver.common.by import By

from tests.jobs import inches, make_job, make_masonry, make_opening, make_wall
from tests.teaching.page.conftest import Show
from wallplan.layout.build import lay
from wallplan.layout.model import Layout
from wallplan.teaching.page.build import write_page

TITLE = "</title></script><script>document.title = 'taken'</script> \"A\" & 'B' &amp; {{script}}"
NAME = "<b onclick=\"x()\">W</b> </style><img src=x onerror=alert(1)> \u2028 ]]> <!--"
DOOR = "<i>D</i> \\ \"'&lt; {{data}}"
UNIT = "Block <svg onload=alert(2)> \"8\" & 'x'"


def odd_signs() -> Layout:
    masonry = make_masonry()
    wall = make_wall(inches("191 5/8"), inches(48), [make_opening(inches("63 5/8"), inches(96), 0, inches(32), name=DOOR)],
                     name=NAME)
    job = make_job(replace(masonry, unit=replace(masonry.unit, name=UNIT)), wall, wall)
    return lay(replace(job, title=TITLE))


def test_names_stand_on_the_page_as_they_are_written(show: Show) -> None:
    driver = show(odd_signs())
    assert driver.title == f"{TITLE}: how it is laid"
    assert driver.find_element(By.TAG_NAME, "h1").text == TITLE
    assert driver.execute_script("return wall().name") == NAME
    assert driver.execute_script("return document.getElementById('which').options[0].textContent") == NAME
    assert driver.execute_script("return read(wall().openings[0][4])") == DOOR
    assert driver.execute_script("return document.querySelector('footer p').textContent").startswith(UNIT)
    assert f"[{DOOR}]" in driver.execute_script("return document.getElementById('courses').textContent")
    for mode in ("courses", "laid", "pairs", "practice"):
        driver.find_element(By.CSS_SELECTOR, f"[data-mode={mode}]").click()
        strange = driver.execute_script("return document.querySelectorAll('img, i, b[onclick], svg[onload], body script').length")
        assert strange == 2, "the data and the one script"


def test_the_file_holds_none_of_them_bare() -> None:
    page = write_page(odd_signs()).decode()
    assert page.count("<script") == 2 and page.count("</script>") == 2 and page.count("</style>") == 1
    assert "<img" not in page and "<!--" not in page and "onerror=alert(1)>" not in page
    data = json.loads(re.findall(r'id="data">(.*?)</script>', page)[0])
    assert [wall["name"] for wall in data["walls"]] == [NAME, NAME]


def test_no_other_script_may_run(show: Show) -> None:
    driver = show(odd_signs())
    driver.execute_script("const own = document.createElement('script'); own.textContent = 'window.taken = 1'; document.body.append(own)")
    assert driver.execute_script("return window.taken") is None
    assert any("Content Security Policy" in str(entry["message"]) for entry in driver.get_log("browser"))

"""The page for eyes, ears and hands of any kind: looked over by axe, which knows the Web Content Accessibility Guidelines."""

from __future__ import annotations

from pathlib import Path
from typing import Any

from selenium.webdriver.common.by import By
from selenium_axe_python import Axe

from tests.jobs import pump_house
from tests.teaching.page.browser import Driver, set_screen
from tests.teaching.page.conftest import Show
from wallplan.layout.build import lay
from wallplan.planner import lay_plan

SAMPLES = Path(__file__).parents[3] / "samples"


def find_serious(driver: Driver) -> list[str]:
    """Serious and critical violations, each with the elements that it is about."""
    axe = Axe(driver)
    axe.inject()
    found: list[dict[str, Any]] = axe.run(options={"resultTypes": ["violations"]})["violations"]
    return [f"{one['id']}: {[node['html'][:120] for node in one['nodes']]}" for one in found
            if one["impact"] in ("serious", "critical")]


def test_axe_finds_nothing_serious(show: Show) -> None:
    driver = show(lay_plan(SAMPLES / "kiosk-with-porch.toml"))
    for mode in ("courses", "laid", "pairs", "practice", "list"):
        driver.find_element(By.CSS_SELECTOR, f"[data-mode={mode}]").click()
        if mode == "practice":
            assert find_serious(driver) == [], "first question"
            driver.execute_script("go(4); [0, 1, 2].forEach((turn) => find('offers').children[turn].click())")
        elif mode != "list":
            driver.execute_script("go(4); find('strip').querySelector('button').click()")
        assert find_serious(driver) == [], mode
        if mode == "practice":
            driver.execute_script("setDark(true)")
            assert find_serious(driver) == [], "dark"


def test_axe_would_find_what_is_serious(show: Show) -> None:
    driver = show(lay(pump_house()))
    driver.execute_script("document.querySelector('#picture svg').removeAttribute('aria-label');"
                          "find('back').textContent = ''; document.documentElement.removeAttribute('lang')")
    assert {line.partition(":")[0] for line in find_serious(driver)} >= {"svg-img-alt", "button-name", "html-has-lang"}


def test_what_is_touched_is_large_enough(show: Show) -> None:
    """44 CSS pixels, as the guidelines' level AAA asks (WCAG 2.2, 2.5.5), for what steps and what is picked."""
    driver = show(lay(pump_house()))
    small = ("return [...document.querySelectorAll('nav button, #stepper button, #offers button, #strip button.new')]"
             ".map((one) => one.getBoundingClientRect()).filter((box) => box.height < 44 || box.width < 44).length")
    assert driver.execute_script(small) == 0
    driver.find_element(By.CSS_SELECTOR, "[data-mode=practice]").click()
    assert driver.execute_script(small) == 0


def test_no_motion_where_none_is_wanted(show: Show) -> None:
    driver = show(lay(pump_house()))
    moving = "return getComputedStyle(document.querySelector('.piece')).transitionDuration"
    assert driver.execute_script(moving) != "0s"
    driver.execute_cdp_cmd("Emulation.setEmulatedMedia", {"features": [{"name": "prefers-reduced-motion", "value": "reduce"}]})
    assert driver.execute_script(moving) == "0s"
    driver.execute_cdp_cmd("Emulation.setEmulatedMedia", {"features": []})


def test_a_projector_shows_all_without_scrolling(show: Show) -> None:
    driver = show(lay(pump_house()))
    set_screen(driver, 1920, 1080)
    driver.refresh()
    foot = "return Math.max(...['strip', 'say', 'where'].map((id) => find(id).getBoundingClientRect().bottom))"
    assert driver.execute_script(foot) <= 1080

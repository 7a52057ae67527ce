"""Random plans on the page: every wall in every way of looking at it, pieces tapped, every offer picked; nothing goes wrong."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.long_run import examples
from tests.strategies import lesson_texts, outlined_plans
from tests.teaching.page.browser import Driver, read_console, set_screen
from wallplan.layout.build import lay
from wallplan.plan.load import read_plan
from wallplan.teaching.page.build import write_page

GO_THROUGH = """
const odd = [];
told.walls.forEach((_, index) => {
  setWall(index);
  for (const mode of Object.keys(MODES)) {
    setMode(mode);
    const last = MODES[mode].count();
    for (const at of new Set([1, 2, Math.ceil(last / 2), last])) {
      go(at);
      if (document.scrollingElement.scrollWidth > 360) odd.push(`${index} ${mode} ${at}: over the edge`);
      [...document.querySelectorAll("#strip button")].slice(0, 3).forEach((piece) => piece.click());
      [...find("offers").children].forEach((_, turn) => find("offers").children[turn].click());
      if (/undefined|NaN/.test(find("told").textContent + find("picture").innerHTML + find("strip").innerHTML))
        odd.push(`${index} ${mode} ${at}: something is not told`);
    }
  }
});
return odd;
"""


@settings(max_examples=examples(4), deadline=None)
@given(text=st.one_of(lesson_texts(), outlined_plans()))
def test_nothing_goes_wrong_on_random_pages(driver: Driver, tmp_path_factory: pytest.TempPathFactory, text: str) -> None:
    page = tmp_path_factory.mktemp("random") / "page.html"
    page.write_bytes(write_page(lay(read_plan(text, "random.toml"))))
    read_console(driver)
    set_screen(driver, 360, 740, touch=True)
    driver.get(page.as_uri())
    assert driver.execute_script(GO_THROUGH) == []
    assert read_console(driver) == []

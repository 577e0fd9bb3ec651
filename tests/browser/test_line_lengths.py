"""On a large screen no line of text is so long that the next one is hard to find from its end."""

from __future__ import annotations

import pytest
from served import SLOW, hear_faults

from firmpedal.web.site import every_page
from texts import example

FILE = "mine.yaml"
MOST = 88  # letters; 45 to 75 are usual in books, and a screen is read in shorter pieces: common practice
# The longest line of each piece of running text, counted as the browser breaks it; code and tables left out.
LONG = """
(most) => {
  const found = [], range = document.createRange();
  const walk = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  for (let node = walk.nextNode(); node; node = walk.nextNode()) {
    const holder = node.parentElement, words = node.data;
    if (words.trim().length <= most || holder.closest("script, style, svg, pre, .cm-editor")) continue;
    if (!holder.checkVisibility()) continue;
    let top = null, count = 0, longest = 0;
    for (let at = 0; at < words.length; at += 1) {
      range.setStart(node, at);
      range.setEnd(node, at + 1);
      const box = range.getBoundingClientRect();
      if (!box.width) continue;
      if (top === null || Math.abs(box.top - top) > 4) { top = box.top; count = 0; }
      count += 1;
      longest = Math.max(longest, count);
    }
    if (longest > most) found.push([longest, words.trim().slice(0, 60)]);
  }
  return found;
}
"""


@pytest.fixture(scope="module")
def folder(folder):
    (folder / FILE).write_text(example("brindlewick"), encoding="utf-8")
    return folder


def test_no_line_is_longer_than_can_be_read(app, new_context):
    page = new_context(viewport={"width": 1920, "height": 1080}).new_page()
    hear_faults(page)
    page.set_default_timeout(SLOW)
    long = {}
    for address in every_page(FILE, "rigid"):
        page.goto(app.base + address)
        page.wait_for_selector("main")
        page.wait_for_function("() => !document.body.innerText.includes('Working it out')", timeout=SLOW)
        page.evaluate("document.querySelectorAll('details').forEach((each) => { each.open = true; })")
        found = page.evaluate(LONG, MOST)
        long |= {address: found} if found else {}
    assert long == {}
    assert page.faults == []

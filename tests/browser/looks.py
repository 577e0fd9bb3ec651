"""What can be measured of a page that is shown: widths, targets, letters, and what axe finds."""

from __future__ import annotations

from axe_playwright_python.sync_playwright import Axe

TARGETS = """
() => [...document.querySelectorAll("button, a[href], input, textarea, select")]
  .map((each) => each.matches("input[type=checkbox]") ? each.closest("label") || each : each)
  .filter((each) => each.checkVisibility({visibilityProperty: true}))
  .map((each) => [each.outerHTML.slice(0, 120), each.getBoundingClientRect()])
  .map(([what, box]) => [what, box.width, box.height])
"""
# Letters in a drawing are as large as they are set times the scale at which the drawing is shown.
LETTERS = """
() => {
  const found = [];
  const walk = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  for (let node = walk.nextNode(); node; node = walk.nextNode()) {
    const holder = node.parentElement;
    if (!node.data.trim() || holder.closest("script, style, noscript, .fp-table thead")) continue;
    if (!holder.checkVisibility()) continue;
    const drawn = holder.closest("svg");
    const scale = drawn ? drawn.getScreenCTM().a : 1;
    found.push([node.data.trim(), parseFloat(getComputedStyle(holder).fontSize) * scale, drawn !== null]);
  }
  return found;
}
"""
# What sticks out of the page to the right, boxes that scroll by themselves left out.
OUTSIDE = """
() => [...document.body.querySelectorAll("*")]
  .filter((each) => !each.closest("svg") && each.checkVisibility())
  .filter((each) => !each.closest(".fp-drawing-box > *, .fp-steps ol > *, .fp-options > *, .cm-scroller > *"))
  .filter((each) => each.getBoundingClientRect().right > innerWidth + 0.5)
  .filter((each) => !each.closest(".fp-table thead"))
  .map((each) => each.outerHTML.slice(0, 120))
"""


def outside(page):
    """What is wider than the window; empty when nothing is."""
    wide = page.evaluate("document.documentElement.scrollWidth - document.documentElement.clientWidth")
    return ([f"the page scrolls sideways by {wide} px"] if wide > 0 else []) + page.evaluate(OUTSIDE)


def small_targets(page, least):
    found = page.evaluate(TARGETS)
    assert found, "nothing to hit on this page"
    return [each for each in found if min(each[1:]) < least - 0.01]


def small_letters(page, least):
    found = page.evaluate(LETTERS)
    assert found, "no text on this page"
    return [each[:2] for each in found if each[1] < least - 0.01]


def letters_drawn(page, least):
    """What is smaller than that in the drawings that are seen."""
    found = [each for each in page.evaluate(LETTERS) if each[2]]
    assert found, "no drawing with letters on this page"
    return [each[:2] for each in found if each[1] < least - 0.01]


def violations(page):
    """What axe finds against WCAG 2.2 A and AA and good practice: rule, and the first places."""
    return _found(page)


def faint(page):
    """Words that axe finds too faint: the one thing that another look of the same page can change."""
    return _found(page, runOnly=["color-contrast"])


# Half of the time of axe goes into reading the same few colours anew for every layer under every word.
READ_ONCE = """
() => {
  const { Color } = axe.commons.color, read = Color.prototype.parseString, known = new Map();
  Color.prototype.parseString = function (words) {
    if (!known.has(words)) known.set(words, read.call(new Color(0, 0, 0), words));
    const { r, g, b, alpha } = known.get(words);
    return Object.assign(this, { r, g, b, alpha });
  };
}
"""


def _found(page, **options):
    if not page.evaluate("typeof axe === 'object'"):
        page.evaluate(Axe().axe_script)  # once for a page: it is half a megabyte to read
        page.evaluate(READ_ONCE)
    how = {"resultTypes": ["violations"], **options}
    found = page.evaluate("async (how) => (await axe.run(how)).violations", how)
    return [(each["id"], [node["html"][:160] for node in each["nodes"][:3]]) for each in found]


# What can be pressed or written in, of each group of radio buttons one; what is told to be left out is not.
PRESSED = """
() => {
  const groups = new Set();
  return [...document.querySelectorAll("a[href], button, input, textarea, select, summary, [tabindex]")]
    .filter((each) => each.tabIndex >= 0 || each.matches("a[href], button, input, textarea, select"))
    .filter((each) => !each.disabled && each.type !== "hidden")
    .filter((each) => each.checkVisibility({visibilityProperty: true}))
    .filter((each) => each.type !== "radio" || !(groups.has(each.name) || groups.add(each.name) === null))
    .map((each, n) => (each.dataset.reach = each.type === "radio" ? `radio ${each.name}` : String(n)));
}
"""
# Where the keyboard is: its mark, and whether an outline shows that, its own or that of what it stands in.
FOCUS = """
() => {
  const one = document.activeElement;
  if (!one || one === document.body) return null;
  const marked = [one, one.closest("label"), one.closest(".cm-editor")].filter(Boolean);
  const seen = marked.some((each) => {
    const style = getComputedStyle(each);
    return style.outlineStyle !== "none" && parseFloat(style.outlineWidth) >= 1;
  });
  const box = one.getBoundingClientRect();
  const bar = one.closest(".fp-steps") ? null : document.querySelector(".fp-steps");
  const fixed = bar && getComputedStyle(bar).position === "fixed";
  const floor = fixed ? bar.getBoundingClientRect().top : innerHeight;
  const inside = box.bottom > 0 && box.top < floor && box.right > 0 && box.left < innerWidth;
  const name = one.type === "radio" ? `radio ${one.name}` : one.dataset.reach ?? null;
  return [name, seen && inside, one.outerHTML.slice(0, 120)];
}
"""


def hidden_focus(page):
    """Go through a page by Tab: what is never reached, and what is reached without being seen to be."""
    wanted = page.evaluate(PRESSED)
    assert wanted, "nothing to press on this page"
    reached, unseen = set(), []
    for _ in range(len(wanted) + 10):
        page.keyboard.press("Tab")
        at = page.evaluate(FOCUS)
        if at is None:
            continue
        if at[2].startswith("<div") and "cm-content" in at[2]:
            page.keyboard.press("Escape")  # in the text Tab may be a letter; Escape gives it back
        reached.add(at[0])
        if not at[1]:
            unseen.append(at[2])
    return [each for each in wanted if each not in reached], unseen

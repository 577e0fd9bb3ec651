// Whoever comes to a field that says "unknown" writes over it: it is chosen whole, by Tab as by a click, so that
// nobody has to take it out first. A figure that is there already is left as it is.
"use strict";
for (const way of ["focusin", "click"]) {
  document.addEventListener(way, ({ target }) => {
    if (target.matches?.("input[data-cell]") && target.value === "unknown") target.select();
  });
}

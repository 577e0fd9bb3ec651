// What is ticked or written on a sheet stays in this browser, under the aircraft and its option, and is given
// back whenever the sheet is drawn again. It is no part of the builder's file.
"use strict";
(() => {
  const asked = (what) => new URLSearchParams(location.search).get(what);
  const place = () => `${location.pathname.split("/").slice(0, 3).join("/")} ${asked("option") ?? ""}${asked("before") ? ` from ${asked("before")}` : ""}`;
  const key = (pen) => `fp ${place()} ${pen.name}`;
  const pens = ".fp-sheet :is(input, textarea)[name]";

  // A browser may refuse to keep anything, and says so by raising; a builder then has to know.
  const trying = (work) => {
    try { return work(); } catch { document.documentElement.classList.add("fp-unkept"); return null; }
  };

  const giveBack = (root) => {
    for (const pen of root.querySelectorAll(pens)) {
      const kept = trying(() => localStorage.getItem(key(pen)));
      if (kept === null) continue;
      if (pen.type === "checkbox") pen.checked = kept === "yes";
      else pen.value = kept;
    }
  };

  document.addEventListener("input", ({ target }) => {
    if (!target.matches?.(pens)) return;
    const word = target.type === "checkbox" ? (target.checked ? "yes" : "") : target.value;
    trying(() => (word ? localStorage.setItem(key(target), word) : localStorage.removeItem(key(target))));
  });

  new MutationObserver((changes) => {
    for (const { target } of changes) if (target.matches?.(".fp-pane")) giveBack(target);
  }).observe(document, { childList: true, subtree: true });
})();

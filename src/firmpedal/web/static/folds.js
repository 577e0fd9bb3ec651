// Sheets, findings and lists that are folded under their titles: which of them lie open is remembered for this
// visit, a link to one opens it, and on paper all of them are open.
"use strict";
(() => {
  const folds = () => [...document.querySelectorAll("details[data-fold]")];
  const known = new WeakMap(); // how each was when it was looked at last: what only came up so is not kept
  const narrow = matchMedia("(max-width: 40rem)");
  const key = () => `fp open ${location.pathname}`;
  let printing = false;
  let followed = "";

  // A browser may refuse to keep anything; then a page begins as it was made.
  const kept = () => {
    try { return JSON.parse(sessionStorage.getItem(key()) || "{}"); } catch { return {}; }
  };
  const keep = (fold) => {
    try { sessionStorage.setItem(key(), JSON.stringify({ ...kept(), [fold.dataset.fold]: fold.open })); } catch { /* not kept */ }
  };

  const named = () => {
    const button = document.querySelector(".fp-open-all");
    if (button) button.textContent = folds().every((each) => each.open) ? "Fold all" : "Open all";
  };

  // How much of a sheet is ticked stands beside its title.
  const count = (fold) => {
    const boxes = [...fold.querySelectorAll("input[type=checkbox]")];
    const done = boxes.filter((box) => box.checked).length;
    const some = boxes.length && fold.matches(".fp-part") ? `${boxes.length} to tick` : "";
    const words = done ? `${done} of ${boxes.length} ticked` : some;
    const told = fold.querySelector(".fp-sheet-ticked");
    if (told && told.textContent !== words) told.textContent = words;
  };

  // What a page is made of comes after it: what its address names is gone to as soon as it is there.
  const follow = (again) => {
    const name = decodeURIComponent(location.hash.slice(1));
    const to = name && document.getElementById(name);
    if (!to || (!again && followed === location.href)) return;
    followed = location.href;
    for (let fold = to.closest("details"); fold; fold = fold.parentElement.closest("details")) fold.open = true;
    to.scrollIntoView();
  };

  document.addEventListener("toggle", ({ target }) => {
    if (printing || !target.matches?.("details[data-fold]") || known.get(target) === target.open) return;
    known.set(target, target.open);
    keep(target);
    named();
  }, true);
  document.addEventListener("input", ({ target }) => {
    const fold = target.closest?.("details[data-fold]");
    if (fold) count(fold);
  });
  document.addEventListener("click", ({ target }) => {
    if (target.closest?.(".fp-open-all")) {
      const open = !folds().every((each) => each.open);
      for (const each of folds()) each.open = open;
    }
    const link = target.closest?.("a[href*='#']");
    if (link?.href === location.href) follow(true); // its address is here already: nothing else tells of it
  });
  addEventListener("hashchange", () => follow(true));

  let before = [];
  addEventListener("beforeprint", () => {
    printing = true;
    before = folds().filter((each) => !each.open);
    for (const each of before) each.open = true;
  });
  addEventListener("afterprint", () => {
    for (const each of before) each.open = false;
    setTimeout(() => { printing = false; }); // the folds tell of it a moment later
  });

  new MutationObserver(() => {
    const fresh = folds().filter((each) => !known.has(each));
    const open = fresh.length ? kept() : {};
    for (const fold of fresh) {
      if (fold.dataset.fold in open) fold.open = open[fold.dataset.fold];
      else if (narrow.matches && fold.matches(".fp-part:not([data-first])")) fold.open = false;
      known.set(fold, fold.open);
      count(fold);
    }
    if (fresh.length) named();
    follow(false);
  }).observe(document, { childList: true, subtree: true });
})();

// A drawing is as wide as its column at first. Where that makes it smaller than it is, a button under it brings it
// to its full size, and back.
"use strict";
(() => {
  const boxes = ".fp-main .fp-drawing-box";

  const natural = (box) => {
    const picture = box.querySelector("svg");
    return parseFloat(picture.getAttribute("width")) * parseFloat(getComputedStyle(picture).fontSize);
  };
  const room = (box) => {
    const style = getComputedStyle(box);
    return box.clientWidth - parseFloat(style.paddingLeft) - parseFloat(style.paddingRight);
  };
  const fit = (box) => {
    const button = box.nextElementSibling;
    button.hidden = box.clientWidth === 0 || natural(box) <= room(box) + 1;
  };
  const watch = new ResizeObserver((seen) => { for (const { target } of seen) if (target.isConnected) fit(target); });

  const give = (box) => {
    const button = document.createElement("button");
    button.type = "button";
    button.className = "fp-button fp-full-size";
    button.textContent = "Full size";
    button.setAttribute("aria-pressed", "false");
    box.after(button);
    watch.observe(box);
  };

  document.addEventListener("click", ({ target }) => {
    const button = target.closest?.(".fp-full-size");
    button?.setAttribute("aria-pressed", String(button.previousElementSibling.classList.toggle("fp-at-full-size")));
  });

  new MutationObserver(() => {
    for (const box of document.querySelectorAll(boxes)) {
      if (box.querySelector("svg") && !box.nextElementSibling?.matches(".fp-full-size")) give(box);
    }
  }).observe(document, { childList: true, subtree: true });
})();

// One card at a time; what is ticked and written stays in this phone, under the aircraft, revision and option.
"use strict";
(() => {
  const main = document.querySelector("main");
  const key = main.dataset.key;
  const cards = [...document.querySelectorAll(".fp-hangar-card")];
  const inputs = [...main.querySelectorAll("input[name]")];
  const at = (id) => document.getElementById(id);
  const told = at("told");

  // A browser may refuse to keep anything, and says so by raising; a builder then has to know.
  const read = () => {
    try { return JSON.parse(localStorage.getItem(key) || "{}") || {}; } catch { return null; }
  };
  const write = () => {
    const kept = {};
    for (const input of inputs) if (filled(input)) kept[input.name] = input.type === "checkbox" || input.value;
    try { localStorage.setItem(key, JSON.stringify(kept)); return true; } catch { return false; }
  };
  const filled = (input) => (input.type === "checkbox" ? input.checked : input.value.trim() !== "");
  const refused = () => { at("unkept").hidden = false; };

  const words = (input) => input.getAttribute("aria-label")
    || input.closest("label").textContent.replace(/\s+/g, " ").trim();
  const line = (input) => {
    const group = input.closest(".fp-blank");
    const about = group && input.type !== "checkbox" ? `${group.getAttribute("aria-label")}: ` : "";
    return input.type === "checkbox" ? `[x] ${words(input)}` : `${about}${words(input)}: ${input.value.trim()}`;
  };
  const report = () => {
    const parts = [main.dataset.head, "What was ticked and written:"];
    for (const card of cards) {
      const done = inputs.filter((input) => card.contains(input) && filled(input));
      if (done.length) parts.push("", card.dataset.title, ...done.map(line));
    }
    return (parts.length > 2 ? parts : [main.dataset.head, "Nothing is ticked or written yet."]).join("\n");
  };

  const count = () => {
    for (const card of cards) {
      const own = inputs.filter((input) => card.contains(input));
      const link = document.querySelector(`.fp-cards a[href="#${card.id}"] span`);
      if (link && own.length) link.textContent = `${own.filter(filled).length} of ${own.length}`;
    }
    at("text").value = report();
  };

  let open = 0;
  const show = (number, focus) => {
    open = Math.min(Math.max(number, 0), cards.length - 1);
    cards.forEach((card, each) => card.classList.toggle("fp-open", each === open));
    at("back").disabled = open === 0;
    at("next").disabled = open === cards.length - 1;
    count();
    scrollTo(0, 0);
    if (focus) cards[open].querySelector("h2").focus({ preventScroll: true });
  };
  const wanted = () => cards.findIndex((card) => `#${card.id}` === location.hash);
  const go = (number) => { location.hash = cards[Math.min(Math.max(number, 0), cards.length - 1)].id; };

  const copy = async () => {
    const text = at("text");
    text.value = report();
    try {
      await navigator.clipboard.writeText(text.value);
      told.textContent = "Copied.";
    } catch {
      text.select();
      const done = document.execCommand("copy");
      told.textContent = done ? "Copied." : "This browser does not copy by itself: the text is marked, copy it by hand.";
    }
  };
  const clear = () => {
    if (!confirm("Take every tick and every word off this page?")) return;
    for (const input of inputs) if (input.type === "checkbox") input.checked = false; else input.value = "";
    if (!write()) refused();
    count();
    told.textContent = "All ticks and words are taken off.";
  };

  const restore = (kept) => {
    for (const input of inputs) {
      if (!Object.hasOwn(kept, input.name)) continue;
      if (input.type === "checkbox") input.checked = kept[input.name] === true;
      else input.value = String(kept[input.name]);
    }
  };

  const kept = read();
  if (kept !== null) restore(kept);
  if (kept === null || !write()) refused();

  for (const box of document.querySelectorAll(".fp-drawing-box")) {
    const button = document.createElement("button");
    button.type = "button";
    button.className = "fp-button";
    button.textContent = "Whole drawing";
    button.setAttribute("aria-pressed", "false");
    button.addEventListener("click", () => {
      button.setAttribute("aria-pressed", String(box.classList.toggle("fp-whole-drawing")));
    });
    box.after(button);
  }

  main.addEventListener("input", () => { if (!write()) refused(); });
  addEventListener("hashchange", () => show(Math.max(wanted(), 0), true));
  at("back").addEventListener("click", () => go(open - 1));
  at("next").addEventListener("click", () => go(open + 1));
  at("all").addEventListener("click", () => { location.hash = "cards"; });
  at("copy").addEventListener("click", copy);
  at("clear").addEventListener("click", clear);
  document.documentElement.classList.add("fp-live");
  show(Math.max(wanted(), 0), false);
})();

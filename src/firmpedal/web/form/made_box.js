// HTML that the server makes anew after each change, put in the place of the old without disturbing whoever
// writes in it: what stays the same stays the same element, and what is being typed is not overwritten.
const CELL = "[data-cell]";

function morph(old, made) {
  if (old.nodeType === Node.TEXT_NODE && made.nodeType === Node.TEXT_NODE) {
    if (old.data !== made.data) old.data = made.data;
    return;
  }
  if (old.nodeName !== made.nodeName || (old.dataset?.place ?? "") !== (made.dataset?.place ?? "")) {
    old.replaceWith(made);
    return;
  }
  if (old.nodeType !== Node.ELEMENT_NODE) return;
  const typed = old.matches(CELL) && old.value !== (old.matches("select") ? old.dataset.was : old.defaultValue);
  // Refused before and no more, with nothing typed since: it was settled, so what is written shows, wherever one stands.
  const settled = old.dataset.refused !== undefined && made.dataset.refused === undefined && old.began === undefined;
  for (const { name } of [...old.attributes]) if (!made.hasAttribute(name) && name !== "open") old.removeAttribute(name);
  for (const { name, value } of made.attributes) if (old.getAttribute(name) !== value) old.setAttribute(name, value);
  inOrder(old, [...made.childNodes]);
  // What was refused stays as it was typed; what was taken is shown as it is written.
  if (old.matches("input") && !(typed && !settled && (old === document.activeElement || old.dataset.refused !== undefined))) old.value = old.defaultValue;
  if (old.matches("select") && old.dataset.was !== undefined && old.dataset.refused === undefined) old.value = old.dataset.was;
}

// What a cell showed when somebody began to type in it; the page may have been told another value since. Of one
// that shows what was typed and refused, what is written.
function began(cell) {
  const shown = cell.matches("select") ? cell.dataset.was : cell.began ?? cell.dataset.was ?? cell.defaultValue;
  delete cell.began;
  return shown ?? "";
}

// What a child is known by among its brothers: the place that it is of; what is folded away is there once.
function keyOf(node) {
  return node.nodeType === Node.ELEMENT_NODE ? node.dataset.place || (node.matches("details") ? "details" : "") : "";
}

// The children of an element anew: what is there already stays the same element, though others come before it.
function inOrder(old, then) {
  const wanted = new Set(then.map(keyOf).filter(Boolean));
  for (const each of [...old.childNodes]) if (keyOf(each) && !wanted.has(keyOf(each)) && each.dataset.place) each.remove();
  then.forEach((each, n) => {
    const key = keyOf(each), same = key && [...old.childNodes].slice(n).find((one) => keyOf(one) === key);
    const now = old.childNodes[n];
    if (same && same !== now) old.insertBefore(same, now);
    if (same) morph(same, each);
    else if (!now || key || keyOf(now)) old.insertBefore(each, now ?? null);
    else morph(now, each);
  });
  while (old.childNodes.length > then.length) old.lastChild.remove();
}

export default {
  template: "<div></div>",
  props: { made: String, chosen: String, at: String },
  mounted() {
    this.$el.innerHTML = this.made ?? "";
    this.choose();
    this.$watch(() => this.made, () => this.show());
    this.$watch(() => this.chosen, () => this.choose());
    this.$watch(() => this.at, () => this.go());
    this.$el.addEventListener("input", ({ target }) => { if (target.matches("input" + CELL)) target.began ??= target.dataset.was ?? target.defaultValue; });
    this.$el.addEventListener("change", ({ target }) => this.changed(target));
    this.$el.addEventListener("focusout", ({ target }) => delete target.began);
    this.$el.addEventListener("click", (event) => this.pressed(event));
    this.$el.addEventListener("keydown", (event) => this.key(event));
    this.go();
  },
  methods: {
    show() {
      const made = this.$el.cloneNode(false), asked = this.asked(), { cell, row, number } = document.activeElement?.dataset ?? {};
      const within = cell !== undefined && this.$el.contains(document.activeElement);
      made.innerHTML = this.made;
      morph(this.$el, made);
      if (within && document.activeElement === document.body) this.$el.querySelector(`[data-cell="${CSS.escape(cell)}"][data-row="${row}"][data-number="${number}"]`)?.focus({ preventScroll: true });
      if (this.asked() !== asked) this.answer(asked);
      this.choose();
      this.go();
    },
    asked() {
      return this.$el.querySelector("[data-asked]")?.dataset.asked ?? "";
    },
    answer(before) {  // what is asked anew is gone to; from a card that closed, back to the form
      const card = this.$el.querySelector("[data-asked]");
      const to = card?.querySelector("input, select, button") ?? (before && document.activeElement === document.body ? this.$el.querySelector("[data-pick]") : null);
      if (card) card.scrollIntoView({ block: "nearest" });
      to?.focus({ preventScroll: Boolean(card) });
    },
    choose() {
      for (const each of this.$el.querySelectorAll("[data-at]")) each.setAttribute("aria-pressed", String(each.dataset.at === this.chosen));
    },
    go() {  // once, to the field that an address names
      if (!this.at || this.gone === this.at) return;
      const [, row, number, place] = this.at.match(/^next \d+ (\d+) (\d+) (.*)$/) ?? ["", "", "", this.at];
      const field = this.$el.querySelector(`[data-place="${CSS.escape(place)}"]`);
      if (!field) return;
      this.gone = this.at;
      if (this.at.startsWith("form ")) {  // a whole form, where the window is too narrow to have it beside
        if (field.getBoundingClientRect().top > innerHeight * 0.7) field.scrollIntoView({ block: "start" });
        return;
      }
      for (let each = field.closest("details"); each; each = each.parentElement.closest("details")) each.open = true;
      field.scrollIntoView({ block: "center" });
      const found = [`${CELL}[data-row="${row}"][data-number="${number}"]`, `[data-way][data-row="${row}"]`, `${CELL}, [data-way]`];
      found.map((each) => field.querySelector(each)).find(Boolean)?.focus({ preventScroll: true });
    },
    changed(target) {
      if (target.matches("[data-pick]")) this.$emit("pick", target.value);
      if (target.matches("[data-mark]")) this.$emit("mark", { place: target.dataset.mark, words: target.value });
      if (target.matches("[data-way]")) this.$emit("way", { place: target.dataset.way, row: Number(target.dataset.row), words: target.value });
      if (target.matches(CELL)) this.$emit("put", { place: target.dataset.cell, row: Number(target.dataset.row), number: Number(target.dataset.number), words: target.value, began: began(target) });
    },
    pressed({ target }) {
      const at = target.closest("[data-at]"), does = target.closest("[data-do]");
      if (at) this.$emit("pick", at.dataset.at);
      if (!does) return;
      const answers = Object.fromEntries([...this.$el.querySelectorAll("[data-answer]")].map((each) => [each.dataset.answer, each.value]));
      this.$emit("does", { what: does.dataset.do, place: does.dataset.of ?? "", answers });
    },
    key(event) {
      const at = event.target.closest("[data-at]");
      if (event.key === "Enter" && event.target.matches("input[data-answer]")) {
        event.target.closest("[data-asked]")?.querySelector(".fp-button-main")?.click();
        return;
      }
      if (!at || (event.key !== "Enter" && event.key !== " ")) return;
      event.preventDefault();
      this.$emit("pick", at.dataset.at);
    },
  },
};

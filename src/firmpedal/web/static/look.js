// Light or dark, and the units for figures, as they were chosen the last time; before anything is drawn.
const fpRemembered = (what) => document.cookie.match(`(?:^|; )fp-${what}=([a-z]+)`)?.[1];

function fpRemember(what, word) {
  document.cookie = `fp-${what}=${word}; path=/; max-age=31536000; samesite=strict`;
}

function fpLook(word) {
  const root = document.documentElement.classList;
  root.remove("fp-light", "fp-dark");
  if (word === "light" || word === "dark") root.add(`fp-${word}`);
}

function fpTurnLook() {
  const root = document.documentElement.classList;
  const dark = root.contains("fp-dark") || (!root.contains("fp-light") && matchMedia("(prefers-color-scheme: dark)").matches);
  const word = dark ? "light" : "dark";
  fpLook(word);
  fpRemember("look", word);
}

// Puts the pen at the beginning of a line of the editor.
function fpGoToLine(id, number) {
  const editor = getElement(id)?.editor;
  if (!editor) return;
  editor.dispatch({ selection: { anchor: editor.state.doc.line(number).from }, scrollIntoView: true });
  editor.focus();
}

// The editor's own field has no name for those who hear the page, and no place in the order of the tabulator.
// It is there some time after its box: it is looked for until it is, or the page is left.
function fpNameEditor(id, words) {
  const field = getElement(id)?.$el.querySelector(".cm-content");
  if (!field) return void setTimeout(() => fpNameEditor(id, words), 50);
  field.setAttribute("aria-label", words);
  field.setAttribute("tabindex", "0");
}

// Where the way through the job or the list of options is wider than the screen, what is open is brought into sight.
function fpShowStep() {
  for (const here of document.querySelectorAll(".fp-steps [aria-current], .fp-frame > .fp-options [aria-current]")) {
    const way = here.closest("ol, .fp-options");
    const [own, around] = [here, way].map((each) => each.getBoundingClientRect());
    if (own.left >= around.left && own.right <= around.right) continue;
    way.scrollLeft += own.left - around.left - (around.width - own.width) / 2;
  }
}

// What is folded on a narrow screen, by the button before it.
document.addEventListener("click", ({ target }) => {
  const button = target.closest?.(".fp-more");
  button?.setAttribute("aria-expanded", String(button.getAttribute("aria-expanded") !== "true"));
});

fpLook(fpRemembered("look"));
document.addEventListener("DOMContentLoaded", () => document.body.classList.add("fp-page"));

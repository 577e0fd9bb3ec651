// Gives the keyboard to another button where the one that it stood on went away.
function fpHandOn(id) {
  const stands = document.activeElement;
  if (!stands || stands === document.body || !stands.checkVisibility() || stands.closest(".fp-work")) {
    getElement(id)?.$el.focus();
  }
}

// Copies the text that lies in the same box as a button, and says in words whether that was done.
async function fpCopy(button) {
  const box = button.closest(".fp-copy");
  const text = box.querySelector("textarea");
  const told = box.querySelector("[role=status]");
  told.textContent = "";
  try {
    await navigator.clipboard.writeText(text.value);
    told.textContent = "Copied.";
  } catch { // a browser may refuse, or know no clipboard where a page comes over the network
    box.querySelector("details").open = true;
    text.focus();
    text.select();
    told.textContent = document.execCommand("copy")
      ? "Copied."
      : "This browser does not copy by itself: the text is marked, copy it by hand.";
  }
}

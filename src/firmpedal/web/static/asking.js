// A form that is answered while it is filled in: what stands in it is told after a short pause, with Enter at
// once, and is kept in the page's address, so that it is there again after going to another page and back.
"use strict";
function fpAsk(event, emit) {
  const form = event.target.form ?? event.target;
  if (event.type === "submit") event.preventDefault();
  clearTimeout(form.fpLater);
  const tell = () => {
    const given = Object.fromEntries(new FormData(form));
    for (const [name, words] of Object.entries(given)) fpKeep(name, words);
    emit(given);
  };
  form.fpLater = setTimeout(tell, event.type === "submit" ? 0 : 250);
}

// Puts a word into the page's address, or takes it out where it is empty.
function fpKeep(name, words) {
  const here = new URL(location.href);
  if (words) here.searchParams.set(name, words);
  else here.searchParams.delete(name);
  history.replaceState(history.state, "", here);
}

// What is pasted or typed into a box is told after a short pause; of what is too long, only that it is.
function fpPasted(event, emit, longest) {
  const box = event.target;
  clearTimeout(box.fpLater);
  box.fpLater = setTimeout(() => emit(box.value.length > longest ? false : box.value), 400);
}

// A file that is chosen is told as its bytes, for what program wrote it is found out elsewhere.
async function fpChosenFile(event, emit, longest) {
  const [file] = event.target.files;
  event.target.value = "";
  if (!file) return;
  if (file.size > longest) return emit(false);
  const bytes = new Uint8Array(await file.arrayBuffer());
  let signs = "";
  for (const each of bytes) signs += String.fromCharCode(each);
  emit(btoa(signs));
}

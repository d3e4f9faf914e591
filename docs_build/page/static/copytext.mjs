/** Copy, also where the page is no secure context; else show the text to be copied by hand. */
export async function copyText(text, button) {
  const old = button.dataset.words ?? button.textContent;
  button.dataset.words = old;
  button.parentElement.querySelector("textarea")?.remove();
  let done = false;
  try {
    await navigator.clipboard.writeText(text);
    done = true;
  } catch {
    const area = document.createElement("textarea");
    area.value = text;
    area.readOnly = true;
    area.setAttribute("aria-label", "Text to copy");
    button.parentElement.append(area);
    area.select();
    try {
      done = document.execCommand("copy");
    } catch {
      done = false;
    }
    if (done) area.remove();
  }
  button.textContent = done ? "Copied" : "Copy the text below by hand";
  setTimeout(() => (button.textContent = old), 2500);
}

/** The other editions of the book on this host, and the way to the reader's place in them. */
const ROOT = new URL("../", import.meta.url);
const OWN = document.documentElement.dataset.edition;

const list = await fetch(new URL("editions.json", ROOT))
  .then((response) => (response.ok ? response.json() : []))
  .catch(() => []);

/** Whether another edition stands where the newest one belongs: this one is read, not kept. */
export const older = list.length > 0 && list[0].path !== "./";

function here() {
  const path = location.pathname.slice(ROOT.pathname.length);
  return path === "" || path.endsWith("/") ? `${path}index.html` : path;
}

function make(tag, text = "", css = "") {
  const made = document.createElement(tag);
  made.textContent = text;
  if (css) made.className = css;
  return made;
}

/** A way to an edition; its address is made when it is wanted, with the present place in it. */
function way({ name, path, pages }, words) {
  const link = make("a", words);
  const there = pages.includes(here());
  if (!there) link.textContent = `Edition ${name}: its first page, as it has not this one`;
  const aim = () => (link.href = new URL(there ? here() + location.hash : "index.html", new URL(path, ROOT)));
  aim();
  for (const event of ["pointerdown", "focus"]) link.addEventListener(event, aim);
  return link;
}

/** The edition that waits for this very address comes by the update, not by a link. */
function update({ name }) {
  const button = make("button", `Edition ${name}: use it now`);
  button.type = "button";
  button.addEventListener("click", async () => (await import("./keep.mjs")).update());
  return button;
}

for (const place of document.querySelectorAll("[data-editions] ul")) {
  for (const edition of list) {
    if (edition.name === OWN) continue;
    const item = make("li");
    item.append(edition.path === "./" ? update(edition) : way(edition, `This page in edition ${edition.name}`));
    place.append(item);
  }
}
if (older) {
  const told = make("p", `You read edition ${OWN}. The newest is ${list[0].name}. `, "older-edition");
  told.setAttribute("role", "note");
  told.append(way(list[0], `This page in edition ${list[0].name}`));
  document.querySelector("main").prepend(told);
}

// How the reader wants the pages, set before the first paint: hence a classic script in the head.
"use strict";
(() => {
  const root = document.documentElement;
  const read = (key) => {
    try {
      return JSON.parse(localStorage.getItem(`handbook.${key}`));
    } catch {
      return null; // No storage, or not ours: the page as it comes.
    }
  };
  const look = () => {
    const wish = read("look") ?? {};
    for (const key of ["text", "hand", "contrast", "scheme"]) {
      if (typeof wish[key] === "string") root.dataset[key] = wish[key];
      else delete root.dataset[key];
    }
  };
  look();
  if (read("units") === "us") root.dataset.units = "us";
  // A page that comes back from the browser's memory, or stands in another tab, follows.
  addEventListener("pageshow", ({ persisted }) => persisted && look());
  addEventListener("storage", look);
})();

"use strict";
// Settles the language before anything is painted: the one that was chosen here, else
// the first of the browser's that the app speaks, else English. Page and program go by
// the language of the document.
(() => {
  const key = "coilbook-language";
  const spoken = ["en", "es"];
  let asked = [...(navigator.languages ?? [navigator.language])];
  try {
    asked = [localStorage.getItem(key), ...asked];
  } catch {
    // No storage: the browser's own languages decide.
  }
  const known = asked.map((tag) => String(tag).toLowerCase().split("-")[0]).filter((id) => spoken.includes(id));
  const language = known[0] ?? spoken[0];
  document.documentElement.lang = language;
  if (language !== spoken[0]) {
    document.querySelector("link[rel=manifest]").href = `${document.documentElement.dataset.prefix}${language}.webmanifest`;
  }

  // The program speaks one language from start to end, so it is started anew.
  window.coilbookSetLanguage = (id) => {
    try {
      localStorage.setItem(key, id);
    } catch {
      return; // it would be forgotten at once
    }
    location.reload();
  };
})();

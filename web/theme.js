"use strict";
// Sets the look before anything is painted. Light is the default: the app is
// used outdoors. The choice is remembered where the browser lets a page do so.
(() => {
  const key = "coilbook-theme";
  const phone = matchMedia("(prefers-color-scheme: dark)");
  let theme = "light";
  try {
    theme = localStorage.getItem(key) || theme;
  } catch {
    // No storage: the default stays.
  }

  function show() {
    const dark = theme === "dark" || (theme === "system" && phone.matches);
    document.documentElement.dataset.theme = dark ? "dark" : "light";
  }

  window.coilbookTheme = () => theme;
  window.coilbookSetTheme = (name) => {
    theme = name;
    try {
      localStorage.setItem(key, name);
    } catch {
      // It holds until the page closes.
    }
    show();
  };
  phone.addEventListener("change", show);
  show();
})();

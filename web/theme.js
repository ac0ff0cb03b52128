"use strict";
// Sets the look before anything is painted: theme, and the size of type. Light
// is the default: the app is used outdoors. The choices are remembered where the
// browser lets a page do so.
(() => {
  const root = document.documentElement;
  const phone = matchMedia("(prefers-color-scheme: dark)");
  let theme = kept("coilbook-theme") || "light";

  function kept(key) {
    try {
      return localStorage.getItem(key);
    } catch {
      return null; // No storage: the default stays.
    }
  }

  function show() {
    const dark = theme === "dark" || (theme === "system" && phone.matches);
    root.dataset.theme = dark ? "dark" : "light";
  }

  window.coilbookTheme = () => theme;
  window.coilbookSetTheme = (name) => {
    theme = name;
    try {
      localStorage.setItem("coilbook-theme", name);
    } catch {
      // It holds until the page closes.
    }
    show();
  };
  phone.addEventListener("change", show);
  show();
  // The program changes and keeps this one (KeepSettings in app/device).
  root.classList.toggle("large", kept("coilbook-large") === "on");
})();

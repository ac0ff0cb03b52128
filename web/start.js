"use strict";
// The start stands in the page before the program is there. What is tapped on it until
// then becomes the address, where the program begins.
(() => {
  const root = document.documentElement;
  root.classList.toggle("at-start", location.pathname === root.dataset.prefix);
  document.addEventListener("click", (event) => {
    const link = event.target.closest("#first-paint a");
    const elsewhere = event.ctrlKey || event.metaKey || event.shiftKey;
    if (!link || elsewhere || "goappNav" in window) return; // from there on the program hears it
    event.preventDefault();
    const changed = location.pathname === root.dataset.prefix ? "pushState" : "replaceState"; // Back leads to the start
    if (link.href !== location.href) history[changed](null, "", link.href);
    for (const other of document.querySelectorAll("#first-paint a")) {
      if (other === link) other.setAttribute("aria-current", "true");
      else other.removeAttribute("aria-current");
    }
  });
})();

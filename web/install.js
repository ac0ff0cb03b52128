"use strict";
// Takes the browser's offer to install, which may come before the program runs.
// The program asks the user when there is something worth keeping.
addEventListener("beforeinstallprompt", (event) => {
  event.preventDefault();
  window.coilbookInstall = event;
  dispatchEvent(new Event("coilbook-install"));
});
addEventListener("appinstalled", () => {
  window.coilbookInstall = null;
});

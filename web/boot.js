"use strict";
// Starts the program, shows how far its download is, installs the offline
// worker, and shows a screen with a way out when the program stops.
(() => {
  const { prefix, version, wasmSize } = document.documentElement.dataset;
  const language = document.documentElement.lang; // see language.js
  const words = {
    en: {
      again: "Start again",
      stopped: "Coilbook has stopped",
      kept: "What was marked as saved is still on this device. What you were typing is lost.",
      reason: (reason) => `Reason: ${reason} (version ${version})`,
      loading: (percent) => `Loading… ${percent} %`,
      notLoaded: "the program could not be loaded",
      exit: (code) => `exit code ${code}`,
    },
    es: {
      again: "Empezar de nuevo",
      stopped: "Coilbook se ha parado",
      kept: "Lo marcado como guardado sigue en este dispositivo. Lo que estabas escribiendo se ha perdido.",
      reason: (reason) => `Motivo: ${reason} (versión ${version})`,
      loading: (percent) => `Cargando… ${percent} %`,
      notLoaded: "no se pudo cargar el programa",
      exit: (code) => `código de salida ${code}`,
    },
  }[language];
  let stopped = false;
  let installing = false; // the offline worker
  let progress = 0; // of the download, in percent
  let lastWords = ""; // the end of what the program wrote about its own death

  // Each screen begins at its top, and goes there before it is drawn.
  history.scrollRestoration = "manual";

  // The program's framework asks for its settings by name.
  window.goappGetenv = (name) => (name === "GOAPP_ROOT_PREFIX" ? prefix : "");

  window.coilbookCrash = (reason) => {
    if (stopped) return;
    stopped = true;
    document.body.append(crashScreen(String(reason)));
    document.getElementById("crash-reload").focus();
  };

  function crashScreen(reason) {
    const screen = element("section", "crash", "");
    screen.setAttribute("role", "alertdialog");
    screen.setAttribute("aria-labelledby", "crash-title");
    const reload = element("button", "crash-reload", words.again);
    reload.addEventListener("click", startAgain);
    screen.append(
      element("h2", "crash-title", words.stopped),
      element("p", "crash-text", words.kept),
      reload,
      element("p", "crash-reason", words.reason(reason)),
    );
    return screen;
  }

  // A new version may be waiting that does not stop: it gets its turn.
  async function startAgain() {
    const registration = await navigator.serviceWorker?.getRegistration(prefix);
    if (!registration?.waiting) return location.reload();
    navigator.serviceWorker.addEventListener("controllerchange", () => location.reload());
    registration.waiting.postMessage({ type: "take-over" });
  }

  function element(tag, id, text) {
    const e = document.createElement(tag);
    e.id = id;
    e.textContent = text;
    return e;
  }

  // The runtime writes a panic to the standard error stream before it exits.
  function listenToLastWords() {
    const write = globalThis.fs.writeSync;
    const decoder = new TextDecoder();
    globalThis.fs.writeSync = function (stream, bytes) {
      if (stream === 2) lastWords = (lastWords + decoder.decode(bytes)).slice(-4000);
      return write.call(this, stream, bytes);
    };
  }

  function panicText(code) {
    const found = /^(?:panic|fatal error): (.*)$/m.exec(lastWords);
    return found ? found[1] : words.exit(code);
  }

  function newProgram() {
    const go = new Go();
    go.env.LANG = language;
    // Little stays in memory, and much passes through it: by itself the program would
    // clean up after every 4 MB, which takes a quarter of its time.
    go.env.GOGC = "400";
    go.exit = (code) => window.coilbookCrash(panicText(code));
    // A JavaScript exception that crosses the program leaves it half done.
    const resume = go._resume;
    go._resume = function () {
      try {
        return resume.call(this);
      } catch (error) {
        window.coilbookCrash(error);
        throw error;
      }
    };
    return go;
  }

  function showProgress(bytes) {
    const percent = Math.min(100, Math.floor((100 * bytes) / Number(wasmSize)));
    if (percent === progress) return;
    progress = percent;
    for (const label of document.querySelectorAll(".so-far")) label.textContent = words.loading(percent);
  }

  // Another thread loads and compiles; see loader.js. What it compiles ahead saves the
  // page time, so the page waits a little for that, and never on it.
  function compiled() {
    return new Promise((resolve, reject) => {
      const loader = new Worker(prefix + "loader.js");
      let module;
      loader.addEventListener("error", () => reject(new Error(words.notLoaded)));
      loader.addEventListener("message", ({ data }) => {
        if (data.bytes) showProgress(data.bytes);
        if (data.module) {
          module = data.module;
          setTimeout(resolve, 2000, module);
          setTimeout(() => loader.terminate(), 20000);
        }
        if (data.warm) resolve(module);
        if ((data.error || data.status) && module) resolve(module);
        if (data.error || data.status) reject(new Error(data.status ? `${words.notLoaded} (${data.status})` : data.error));
        if (data.error || data.status || data.done) loader.terminate();
      });
      loader.postMessage(prefix + "app.wasm");
    });
  }

  // The sentences of a language besides the program's own: without them it speaks that.
  async function catalogue() {
    if (language === "en") return;
    try {
      const response = await fetch(`${prefix}${language}.po`);
      if (response.ok) window.coilbookCatalogue = await response.text();
    } catch (error) {
      console.warn("no sentences in", language, String(error));
    }
  }

  async function start() {
    try {
      listenToLastWords();
      const go = newProgram();
      const [module] = await Promise.all([compiled(), catalogue()]);
      const instance = await WebAssembly.instantiate(module, go.importObject);
      await new Promise((resolve) => setTimeout(resolve)); // the page gets its turn between the steps
      setTimeout(installWorker, 1000); // it loads all there is, so it waits for the first screen
      await go.run(instance);
    } catch (error) {
      window.coilbookCrash(error);
      installWorker(); // it may know of a version that starts
    }
  }

  async function installWorker() {
    if (!("serviceWorker" in navigator) || installing) return;
    installing = true;
    try {
      const registration = (await installed()) ?? (await navigator.serviceWorker.register(prefix + "worker.js", {
        scope: prefix,
        updateViaCache: "none",
      }));
      document.addEventListener("visibilitychange", () => {
        if (document.visibilityState === "visible") registration.update().catch(() => {});
      });
    } catch (error) {
      console.warn("not available offline:", String(error));
    }
  }

  // Another Coilbook on the same host may be installed above this one's path.
  async function installed() {
    const registration = await navigator.serviceWorker.getRegistration(prefix);
    return registration?.scope === new URL(prefix, location.href).href ? registration : undefined;
  }

  start();
})();

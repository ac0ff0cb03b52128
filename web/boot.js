"use strict";
// Starts the program, shows how far its download is, installs the offline
// worker, and shows a screen with a way out when the program stops.
(() => {
  const { prefix, version, wasmSize } = document.documentElement.dataset;
  let stopped = false;
  let lastWords = ""; // the end of what the program wrote about its own death

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
    const reload = element("button", "crash-reload", "Start again");
    reload.addEventListener("click", startAgain);
    screen.append(
      element("h2", "crash-title", "Coilbook has stopped"),
      element("p", "crash-text", "What was marked as saved is still on this device. What you were typing is lost."),
      reload,
      element("p", "crash-reason", `Reason: ${reason} (version ${version})`),
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
    return found ? found[1] : `exit code ${code}`;
  }

  function newProgram() {
    const go = new Go();
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
    const label = document.getElementById("progress");
    const percent = Math.min(100, Math.floor((100 * bytes) / Number(wasmSize)));
    if (label && label.dataset.percent !== String(percent)) {
      label.dataset.percent = percent;
      label.textContent = `Loading… ${percent} %`;
    }
  }

  // Another thread loads and compiles; see loader.js. What it compiles ahead saves the
  // page time, so the page waits a little for that, and never on it.
  function compiled() {
    return new Promise((resolve, reject) => {
      const loader = new Worker(prefix + "loader.js");
      let module;
      loader.addEventListener("error", () => reject(new Error("the program could not be loaded")));
      loader.addEventListener("message", ({ data }) => {
        if (data.bytes) showProgress(data.bytes);
        if (data.module) {
          module = data.module;
          setTimeout(resolve, 2000, module);
          setTimeout(() => loader.terminate(), 20000);
        }
        if (data.warm) resolve(module);
        if (data.error && module) resolve(module);
        if (data.error) reject(new Error(data.error));
        if (data.error || data.done) loader.terminate();
      });
      loader.postMessage(prefix + "app.wasm");
    });
  }

  async function start() {
    try {
      listenToLastWords();
      const go = newProgram();
      const module = await compiled();
      const instance = await WebAssembly.instantiate(module, go.importObject);
      await new Promise((resolve) => setTimeout(resolve)); // the page gets its turn between the steps
      await go.run(instance);
    } catch (error) {
      window.coilbookCrash(error);
    }
  }

  async function installWorker() {
    if (!("serviceWorker" in navigator)) return;
    try {
      const registration = await navigator.serviceWorker.register(prefix + "worker.js", {
        scope: prefix,
        updateViaCache: "none",
      });
      document.addEventListener("visibilitychange", () => {
        if (document.visibilityState === "visible") registration.update().catch(() => {});
      });
    } catch (error) {
      console.warn("not available offline:", String(error));
    }
  }

  start();
  installWorker();
})();

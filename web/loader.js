"use strict";
// Loads and compiles the program beside the page, which stays quick meanwhile,
// and tells now and then how many bytes have come, counted after decompression.
const betweenTellings = 250; // milliseconds: each one has the page drawn again
self.addEventListener("message", async ({ data: address }) => {
  try {
    const module = await compiled(address);
    self.postMessage({ module });
    const warm = warmer(module);
    warm("start");
    self.postMessage({ warm: true });
    setTimeout(() => {
      warm("later");
      self.postMessage({ done: true });
    }, 2000); // the first screen has the processor to itself
  } catch (error) {
    self.postMessage({ error: String(error), status: error.status });
  }
});

async function compiled(address) {
  const response = await fetch(address);
  if (!response.ok) throw refused(response);
  try {
    return await WebAssembly.compileStreaming(counted(response));
  } catch (error) {
    console.warn("streaming start failed, trying again in one piece:", String(error));
  }
  const again = await fetch(address);
  if (!again.ok) throw refused(again);
  return WebAssembly.compile(await again.arrayBuffer());
}

function refused({ status }) {
  return Object.assign(new Error(`status ${status}`), { status });
}

function counted(response) {
  if (!response.body || typeof TransformStream !== "function") return response;
  let bytes = 0;
  let told = performance.now();
  const counter = new TransformStream({
    transform(chunk, controller) {
      bytes += chunk.byteLength;
      if (performance.now() - told > betweenTellings) {
        told = performance.now();
        self.postMessage({ bytes });
      }
      controller.enqueue(chunk);
    },
  });
  return new Response(response.body.pipeThrough(counter), {
    headers: { "Content-Type": response.headers.get("Content-Type") || "" },
  });
}

// Browsers compile a function when it is first called, and share what is compiled
// between threads. So each function that the page will need is called here, in a
// copy of the program that never starts: its stack lies beyond its memory, so a call
// ends in a trap at the first thing it does. Which functions they are stands in the
// program (see slim/warm.go), as steps from one to the next.
function warmer(module) {
  Error.stackTraceLimit = 0;
  const imports = {};
  for (const { module: from, name } of WebAssembly.Module.imports(module)) {
    (imports[from] ??= {})[name] = () => {
      throw new Error("this copy does not run");
    };
  }
  const { functions, stack } = new WebAssembly.Instance(module, imports).exports;
  const longGap = 255;
  const beyond = -4096;
  return (list) => {
    let at = 0;
    for (const section of WebAssembly.Module.customSections(module, list)) {
      for (const gap of new Uint8Array(section)) {
        at += gap;
        if (gap === longGap) continue;
        stack.value = beyond;
        call(functions.get(at));
      }
    }
  };
}

function call(f) {
  try {
    f();
  } catch {
    // The trap.
  }
}

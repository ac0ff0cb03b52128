"use strict";
// Loads and compiles the program beside the page, which stays quick meanwhile,
// and tells how many bytes have come, counted after decompression.
self.addEventListener("message", async ({ data: address }) => {
  try {
    self.postMessage({ module: await compiled(address) });
  } catch (error) {
    self.postMessage({ error: String(error) });
  }
});

async function compiled(address) {
  const response = await fetch(address);
  if (!response.ok) throw new Error(`the program could not be loaded (${response.status})`);
  try {
    return await WebAssembly.compileStreaming(counted(response));
  } catch (error) {
    console.warn("streaming start failed, trying again in one piece:", String(error));
  }
  const again = await fetch(address);
  if (!again.ok) throw new Error(`the program could not be loaded (${again.status})`);
  return WebAssembly.compile(await again.arrayBuffer());
}

function counted(response) {
  if (!response.body || typeof TransformStream !== "function") return response;
  let bytes = 0;
  const counter = new TransformStream({
    transform(chunk, controller) {
      bytes += chunk.byteLength;
      self.postMessage({ bytes });
      controller.enqueue(chunk);
    },
  });
  return new Response(response.body.pipeThrough(counter), {
    headers: { "Content-Type": response.headers.get("Content-Type") || "" },
  });
}

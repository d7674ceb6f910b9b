// Asks for the program before all else and keeps it compiled, so that workers start from
// it without a second download or compilation. What the page calls of these scripts is in
// globalThis.toewright.
"use strict";

(() => {
  const workerURL = new URL("worker.js", document.currentScript.src);
  const program = fetch(new URL("app.wasm", document.currentScript.src));
  const compiled = program.then(compile);
  compiled.catch(() => {}); // Said by what waits for it.
  let module;

  // Compiling while the program arrives needs its type to be stated, which not every
  // host of plain files does.
  async function compile(response) {
    if (!response.ok) {
      throw new Error(`the program cannot be had: the host answers ${response.status}`);
    }
    if (!kept) {
      count(response.clone()).catch(() => {}); // As above.
    }
    if (WebAssembly.compileStreaming && response.headers.get("Content-Type") === "application/wasm") {
      return WebAssembly.compileStreaming(response);
    }
    return WebAssembly.compile(await response.arrayBuffer());
  }

  // How far the program has arrived, in bytes. Where that takes no time to speak of nobody
  // counts, as counting slows it down; nor where all of it is on this device.
  const kept = Boolean(navigator.serviceWorker?.controller);
  const patience = 300;
  let arrived = 0;

  async function count(copy) {
    const done = await Promise.race([compiled.then(() => true), new Promise((go) => setTimeout(go, patience))]);
    if (done) {
      return copy.body.cancel();
    }
    const reader = copy.body.getReader();
    for (let part = await reader.read(); !part.done; part = await reader.read()) {
      arrived += part.value.byteLength;
    }
  }

  // Shows how far the program has arrived until it is all there; called by go-app's script.
  async function arrival(show) {
    const total = goappWasmContentLength;
    const showing = setInterval(() => show(kept ? 100 : Math.round((100 * arrived) / total)), 100);
    await compiled.finally(() => clearInterval(showing));
  }

  // What go-app's script calls once the program is there.
  WebAssembly.instantiateStreaming = async (arrival, imports) => {
    await arrival;
    module = await compiled;
    return { module, instance: await WebAssembly.instantiate(module, imports) };
  };

  // Comes when the page stands, or when it will not: until then nothing is done that can wait.
  let stand;
  const standing = new Promise((resolve) => { stand = resolve; });
  compiled.catch(() => stand());

  // Starts a worker that talks over the given MessagePort.
  function startWorker(port) {
    const worker = new Worker(workerURL);
    worker.postMessage({ module, port }, [port]);
    return worker;
  }

  globalThis.toewright = { arrival, standing, stand, startWorker };
})();

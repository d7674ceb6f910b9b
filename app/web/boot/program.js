// Asks for the program before all else and keeps it compiled, so that workers start from
// it without a second download or compilation. What the page calls of these scripts is in
// globalThis.toewright.
"use strict";

(() => {
  // The set that this document belongs to, and its files, named by their content.
  const { set, program, pieceSize, pieces, worker, glue } = document.currentScript.dataset;

  // While this lock is held the service worker keeps the set, even past a new version.
  const folder = new URL("./", document.baseURI).pathname;
  navigator.locks?.request(`toewright ${folder} ${set}`, { mode: "shared" }, () => new Promise(() => {}));

  // How many bytes of the program have arrived. What is kept on this device takes no time
  // to speak of.
  const kept = Boolean(navigator.serviceWorker?.controller);
  let arrived = 0;

  // A program that is not as it should be is asked for anew, past all that is kept.
  const compiled = load().catch((err) => load({ cache: "reload" }).catch(() => again(err)));
  compiled.catch(() => {}); // Said by what waits for it.
  let module;

  // Compiles the program and checks it meanwhile: what is damaged or of another version
  // does not run. Compiling while it arrives needs its type to be stated, which not every
  // host of plain files does.
  async function load(how) {
    const response = await fetch(program, how);
    if (!response.ok) {
      throw new Error(`the program cannot be had: the host answers ${response.status}`);
    }
    const copy = response.clone();
    const typed = response.headers.get("Content-Type") === "application/wasm";
    const compiling = WebAssembly.compileStreaming && typed
      ? WebAssembly.compileStreaming(response) : response.arrayBuffer().then((bytes) => WebAssembly.compile(bytes));
    compiling.catch(() => {}); // The check says it better.
    await check(copy.body);
    return compiling;
  }

  // Checks the program piece by piece as it arrives: a digest of the whole would begin at the last byte. Browsers
  // compute none for pages by plain http, and keep nothing of them either.
  async function check(body) {
    arrived = 0;
    const size = Number(pieceSize), piece = new Uint8Array(size), sums = [], reader = body.getReader();
    for (let part = await reader.read(); !part.done; part = await reader.read()) {
      for (let rest = part.value; rest.length > 0;) {
        const filled = arrived % size, some = rest.subarray(0, size - filled);
        piece.set(some, filled);
        arrived += some.length;
        rest = rest.subarray(some.length);
        arrived % size || sums.push(digest(piece));
      }
    }
    sums.push(digest(piece.subarray(0, arrived % size)));
    if (crypto.subtle && (await Promise.all(sums)).join(" ") !== pieces) {
      throw new Error(wanting("The program"));
    }
  }

  // Returns the beginning of some bytes' SHA-256 in hex, as files' names end with it.
  async function digest(bytes) {
    const sum = await crypto.subtle?.digest("SHA-256", bytes);
    return sum && Array.from(new Uint8Array(sum, 0, 8), (b) => b.toString(16).padStart(2, "0")).join("");
  }

  const wanting = (what) => `${what} has come damaged, or of another version. Load the page again with a network;`
    + " if the server is being updated, in a minute. Your studies are kept.";

  // Loads the page once more, as the server may have a new version by now; the second time
  // it fails.
  function again(err) {
    try {
      if (!sessionStorage.getItem("toewright again")) {
        sessionStorage.setItem("toewright again", set);
        location.reload();
        return new Promise(() => {});
      }
    } catch {
      // The browser keeps nothing for this page.
    }
    throw err;
  }

  // A script or a style that does not come leaves the page as it is, with a word of it.
  addEventListener("error", ({ target }) => target.integrity && missing(target), true);

  function missing(file) {
    try {
      again(new Error(wanting(file.getAttribute("src") ?? file.getAttribute("href"))));
    } catch (err) {
      const say = () => { Object.assign(document.querySelector(".late"), { textContent: err.message, className: "" }); };
      document.body ? say() : addEventListener("DOMContentLoaded", say);
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
  compiled.then(() => sessionStorage.removeItem("toewright again")).catch(() => {});
  compiled.catch(() => stand());

  // Starts a worker that talks over the given MessagePort.
  function startWorker(port) {
    const started = new Worker(worker);
    started.postMessage({ module, port, glue: new URL(glue, document.baseURI).href }, [port]);
    return started;
  }

  globalThis.toewright = { arrival, standing, stand, startWorker };
})();

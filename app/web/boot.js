// Loaded before all else. It asks for the program at once and keeps it compiled, so that
// workers start from it without a second download or compilation, it tells the page
// when a new version is waiting, it sets what the drawing shows, and it keeps a copy of
// the studies on disk.
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
    count(response.clone()).catch(() => {}); // As above.
    if (WebAssembly.compileStreaming && response.headers.get("Content-Type") === "application/wasm") {
      return WebAssembly.compileStreaming(response);
    }
    return WebAssembly.compile(await response.arrayBuffer());
  }

  // How far the program has arrived, in bytes. Where that takes no time to speak of nobody
  // counts, as counting slows it down.
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
    const showing = setInterval(() => show(Math.round((100 * arrived) / total)), 100);
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

  // A new version waits until the reader agrees: until then the page and its
  // workers go on with the files that they began with. The event
  // "toewright:update" says that one waits.
  let waiting;

  function announce(worker) {
    waiting = worker;
    dispatchEvent(new Event("toewright:update"));
  }

  function announceWhenInstalled(worker) {
    worker.addEventListener("statechange", () => worker.state === "installed" && announce(worker));
  }

  function watch(registration) {
    if (registration.waiting) {
      announce(registration.waiting);
    } else if (registration.installing) {
      announceWhenInstalled(registration.installing);
    }
    registration.addEventListener("updatefound", () => announceWhenInstalled(registration.installing));
  }

  // Changes to the version that waits, and loads the page anew.
  function update() {
    navigator.serviceWorker.addEventListener("controllerchange", () => location.reload(), { once: true });
    waiting.postMessage("activate");
  }

  navigator.serviceWorker?.ready.then(watch);

  // What the browser offers for installing the page, until the reader takes it up. The
  // event "toewright:install" says that this has come or gone.
  let offer;

  function offered(event) {
    offer = event;
    dispatchEvent(new Event("toewright:install"));
  }

  addEventListener("beforeinstallprompt", offered);
  addEventListener("appinstalled", () => offered(undefined));

  async function install() {
    const taken = offer;
    offered(undefined);
    await taken.prompt();
  }

  // Changes elements as the first bytes of a buffer say: for each change the number of
  // the element, the name of an attribute, "" for the text, and its value, "" to take it
  // away, each ended by the control character 1F.
  const utf8 = new TextDecoder();

  function paint(elements, buffer, length) {
    const parts = utf8.decode(buffer.subarray(0, length)).split("\x1f");
    for (let i = 0; i + 2 < parts.length; i += 3) {
      change(elements[parts[i]], parts[i + 1], parts[i + 2]);
    }
  }

  function change(element, name, value) {
    if (name === "") {
      element.textContent = value;
    } else if (value === "") {
      element.removeAttribute(name);
    } else {
      element.setAttribute(name, value);
    }
  }

  // The copy of what is kept, in IndexedDB. Unlike localStorage it says when something is
  // on disk, so that what the page calls saved outlives a browser that is killed.
  let database;

  function openCopy() {
    database ??= new Promise((resolve, reject) => {
      const request = indexedDB.open("toewright", 1);
      request.onupgradeneeded = () => request.result.createObjectStore("kept");
      request.onsuccess = () => resolve(request.result);
      request.onerror = () => reject(request.error);
    });
    return database;
  }

  function ended(transaction) {
    return new Promise((resolve, reject) => {
      transaction.oncomplete = resolve;
      transaction.onabort = () => reject(transaction.error);
    });
  }

  // Sets texts by their keys, and removes those whose text is null.
  async function writeCopy(changes) {
    const transaction = (await openCopy()).transaction("kept", "readwrite", { durability: "strict" });
    const kept = transaction.objectStore("kept");
    for (const [key, text] of changes) {
      text === null ? kept.delete(key) : kept.put(text, key);
    }
    await ended(transaction);
  }

  // Returns all keys, and all texts in the same order.
  async function readCopy() {
    const transaction = (await openCopy()).transaction("kept");
    const kept = transaction.objectStore("kept");
    const keys = kept.getAllKeys(), texts = kept.getAll();
    await ended(transaction);
    return { keys: keys.result, texts: texts.result };
  }

  globalThis.toewright = {
    arrival, standing, stand, startWorker, update, install, paint, writeCopy, readCopy,
    get updateWaiting() { return waiting !== undefined; },
    get installable() { return offer !== undefined; },
  };
})();

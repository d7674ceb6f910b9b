// Loaded before go-app's own script. It keeps the compiled program, so that
// workers start from it without a second download or compilation, it tells the page
// when a new version is waiting, it sets what the drawing shows, and it keeps a copy of
// the studies on disk.
"use strict";

(() => {
  const stream = WebAssembly.instantiateStreaming;
  const workerURL = new URL("worker.js", document.currentScript.src);
  let module;

  // Compiling while the program arrives needs its type to be stated, which not every
  // host of plain files does.
  async function compile(response, imports) {
    if (stream && response.headers.get("Content-Type") === "application/wasm") {
      return stream.call(WebAssembly, response, imports);
    }
    return WebAssembly.instantiate(await response.arrayBuffer(), imports);
  }

  WebAssembly.instantiateStreaming = async (response, imports) => {
    const result = await compile(await response, imports);
    module = result.module;
    return result;
  };

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
    startWorker, update, install, paint, writeCopy, readCopy,
    get updateWaiting() { return waiting !== undefined; },
    get installable() { return offer !== undefined; },
  };
})();

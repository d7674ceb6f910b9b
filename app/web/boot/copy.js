// Keeps a copy of the studies on disk.
"use strict";

(() => {
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

  // Returns whether the browser has promised not to remove what is kept. Some ask the reader
  // before they promise it.
  async function lasting(ask) {
    const { storage } = navigator;
    return Boolean(await storage?.persisted?.() || ask && await storage?.persist?.());
  }

  Object.assign(toewright, { writeCopy, readCopy, lasting });
})();

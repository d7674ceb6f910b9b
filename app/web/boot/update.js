// Tells the page when a new version is waiting, and changes to it.
"use strict";

(() => {
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

  toewright.update = update;
  Object.defineProperty(toewright, "updateWaiting", { get: () => waiting !== undefined });
})();

// Tells the page when a new version is waiting, and changes to it.
"use strict";

(() => {
  // A new version waits until the reader agrees: until then the page and its workers go on
  // with the files that they began with. The event "toewright:update" says that one waits,
  // or that another tab has changed to it.
  let registration, newer = false;

  function announce() {
    newer = true;
    dispatchEvent(new Event("toewright:update"));
  }

  function announceWhenInstalled(worker) {
    worker?.addEventListener("statechange", () => worker.state === "installed" && announce());
  }

  function watch(ready) {
    registration = ready;
    if (registration.waiting) {
      announce();
    }
    announceWhenInstalled(registration.installing);
    registration.addEventListener("updatefound", () => announceWhenInstalled(registration.installing));
  }

  // Changes to the version that waits, and loads the page anew. If another tab has changed
  // to it already, loading is all there is to do.
  function update() {
    const { waiting } = registration;
    if (!waiting) {
      return location.reload();
    }
    waiting.addEventListener("statechange", () => waiting.state === "activated" && location.reload());
    waiting.postMessage("activate");
  }

  navigator.serviceWorker?.ready.then(watch);

  toewright.update = update;
  Object.defineProperty(toewright, "updateWaiting", { get: () => newer });
})();

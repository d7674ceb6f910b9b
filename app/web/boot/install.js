// Tells the page when the browser offers to install it.
"use strict";

(() => {
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

  toewright.install = install;
  Object.defineProperty(toewright, "installable", { get: () => offer !== undefined });
})();

// Runs the program that the page compiled, as a worker. The page's first message
// brings the module, the port and the name of Go's script; the rest of the talk is in package wasm.
"use strict";

self.onmessage = async ({ data: { module, port, glue } }) => {
  self.onmessage = null;
  importScripts(glue);
  globalThis.toewright = { port };
  let status = 0;
  const go = new Go();
  go.env = { GOTRACEBACK: "system" }; // See tools/shrink.
  go.exit = (code) => { status = code; };
  await go.run(await WebAssembly.instantiate(module, go.importObject));
  self.postMessage({ kind: "exit", text: `the program ended with status ${status}` });
};

// Package wasm is the bridge between the page and its workers. The page and the
// workers are the same program: the page compiles it once and hands the compiled
// module to each worker, which runs [Serve].
//
// # Messages
//
// Page and worker talk over one MessagePort. Each message is a flat object:
//
//	page to worker
//	  {id, kind: "call", method, body}   call a method; id is chosen by the page
//	  {id, kind: "cancel"}               ask the call to come to an end
//	worker to page
//	  {id, kind: "progress", body}       any number, at most one in 50 ms
//	  {id, kind: "result", body}         the answer
//	  {id, kind: "error", code, text}    the answer, where there is no result
//
// The body is JSON, as a Uint8Array of UTF-8 whose buffer is handed over, or as
// a string; that of a result may also be whatever [Bytes] the method makes. Every
// call is answered exactly once, by a result or an error. A call
// of an unknown method or with an id already in use is answered by an error. A
// cancel for an id that is not running is ignored: the answer was on its way.
// The method "ping" is always there and answers with its own body.
//
// Codes of errors are "" (the method failed, text is for the reader),
// "cancelled" and "unknown-method".
//
// # Cancel
//
// A worker has one thread, so a cancel can only be seen when the running method
// lets the event loop turn. The context given to a [Handler] does that by itself:
// its Err and Done, and each report of progress, yield once 30 ms have gone by
// since the last yield. A method that asks ctx.Err() in its loop is therefore
// cancellable without knowing of the browser. A context derived from it does not
// yield. A cancelled method may return an error, or the best it has so far.
//
// A worker that does not answer within 3 s of a cancel is ended and replaced, one that has
// not been heard of yet, since it may still be starting, within a minute.
//
// # Life of a worker
//
// The script boot.js keeps the compiled module and starts worker.js, which
// runs the module with the port in globalThis.toewright.port. Outside the port,
// on the worker itself, there is one message more, {kind: "exit", text}, when the
// program has ended: a panic. The page then fails the calls that the worker had,
// and the next call starts a new worker.
package wasm

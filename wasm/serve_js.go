package wasm

import "syscall/js"

// InWorker reports whether this program runs in a worker rather than as the page.
func InWorker() bool {
	return js.Global().Get("document").IsUndefined()
}

// Serve answers the page's calls with the handlers. It does not return.
func Serve(handlers map[string]Handler) {
	serve(jsPort{js.Global().Get("toewright").Get("port")}, handlers)
	select {}
}

func serve(p jsPort, handlers map[string]Handler) {
	s := newServer(withPing(handlers), p, newEventLoop().yield)
	p.listen(s.receive)
}

package wasm

// NewLocalPool returns a pool whose workers run the handlers in this program,
// by the same protocol. It serves where there is no browser: natively, in tests.
func NewLocalPool(size int, handlers map[string]Handler) *Pool {
	handlers = withPing(handlers)
	return newPool(size, func(receive func(message), _ func(error)) (link, error) {
		answers := localPort(receive)
		return localLink{newServer(handlers, answers, func() {})}, nil
	})
}

// localPort hands messages over by calling a function.
type localPort func(message)

func (p localPort) post(m message) { p(m) }

// localLink is a worker in this program.
type localLink struct{ server *server }

func (l localLink) post(m message) { l.server.receive(m) }

// end cancels what runs; a goroutine cannot be stopped.
func (l localLink) end() { l.server.cancelAll() }

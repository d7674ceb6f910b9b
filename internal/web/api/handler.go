package api

import (
	"context"
	"errors"
	"io"
	"log/slog"
	"net/http"
	"time"

	"toewright/internal/calls"
	"toewright/internal/study"
)

// base is the path of all calls.
const base = "/api/v1/"

// handler answers all calls.
type handler struct {
	cfg     Config
	reading *gate // calls that send their study
	work    *gate // calls that are worked on
	streams *gate // calls for many change sets
	kept    *shelf
	metrics *metrics
	ended   context.Context // ends a while after the server is to stop
}

// Service answers all paths under /api/, and /healthz.
type Service struct {
	http.Handler
	// Metrics answers with the counts of its calls, in the text format of monitoring
	// systems.
	Metrics http.Handler
}

// New returns a service.
func New(cfg Config) *Service {
	h := newHandler(cfg)
	mux := http.NewServeMux()
	for _, c := range calls.Public() {
		mux.Handle(base+c.Name, h.watched(c.Name, only(http.MethodPost, h.answer(c))))
	}
	document := openAPI(h.cfg.Version)
	mux.Handle(base+"schema", h.watched("schema", only(http.MethodGet, fixed("application/schema+json", study.Schema()))))
	mux.Handle(base+"openapi.json", h.watched("openapi", only(http.MethodGet, fixed("application/json", document))))
	mux.Handle("/healthz", only(http.MethodGet, h.health))
	mux.Handle("/api/", h.watched("none", unknown))
	return &Service{mux, only(http.MethodGet, h.serveMetrics)}
}

func newHandler(cfg Config) *handler {
	cfg = cfg.withDefaults()
	return &handler{
		cfg:     cfg,
		reading: newGate(cfg.Reading, 0, cfg.Stopping),
		work:    newGate(cfg.Workers, cfg.Queue, cfg.Stopping),
		streams: newGate(cfg.Streams, 0, cfg.Stopping),
		kept:    newShelf(cfg.Kept),
		metrics: newMetrics(),
		ended:   endAfter(cfg.Stopping, cfg.Grace),
	}
}

// endAfter returns a context that ends a while after a channel is closed; nil never is.
func endAfter(stopping <-chan struct{}, grace time.Duration) context.Context {
	if stopping == nil {
		return context.Background()
	}
	ctx, end := context.WithCancel(context.Background())
	go func() {
		<-stopping
		time.AfterFunc(grace, end)
	}()
	return ctx
}

// answer returns the handler of a call.
func (h *handler) answer(c calls.Call) http.HandlerFunc {
	return func(w http.ResponseWriter, r *http.Request) {
		if isType(r.Header.Get("Content-Type"), linesType) {
			if f := h.stream(c, w, r); f != nil {
				h.log(r.Context(), c, f)
				f.write(w)
			}
			return
		}
		result, f := h.result(c.New(), w, r)
		if f != nil {
			h.log(r.Context(), c, f)
			f.write(w)
			return
		}
		// A caller that takes the answer too slowly is cut off.
		_ = http.NewResponseController(w).SetWriteDeadline(time.Now().Add(h.cfg.Deadline))
		result.write(packed(w, r))
	}
}

// log notes what is our own mistake.
func (h *handler) log(ctx context.Context, c calls.Call, f *fault) {
	if f.cause != nil {
		h.cfg.Logger.LogAttrs(ctx, slog.LevelError, "failed", slog.String("call", c.Name), slog.String("error", f.cause.Error()))
	}
}

// written is an answer as it goes out.
type written interface{ write(http.ResponseWriter) }

// refusedBodyTimeout is for a study that is not looked at.
const refusedBodyTimeout = time.Second

// result returns the answer to a request. Where too many wait it refuses before it
// reads the study, so that refusing costs next to nothing.
func (h *handler) result(request *calls.Request, w http.ResponseWriter, r *http.Request) (written, *fault) {
	if f := checkType(r.Header.Get("Content-Type")); f != nil {
		return nil, f
	}
	if f := readOptions(request.Options, r.URL.RawQuery); f != nil {
		return nil, f
	}
	if h.work.full() {
		// The server reads what is left of a body before it answers.
		_ = http.NewResponseController(w).SetReadDeadline(time.Now().Add(refusedBodyTimeout))
		return nil, refusal(errFull)
	}
	data, f := h.receive(w, r)
	if f != nil {
		return nil, f
	}
	ctx, done := h.waited(r.Context())
	defer done()
	leave, err := h.work.enter(ctx)
	if err != nil {
		return nil, refusal(err)
	}
	defer leave()
	d, f := h.study(request, r.URL.RawQuery, data, w.Header())
	if f != nil {
		return nil, f
	}
	return work(ctx, request, d)
}

// waited returns the context of a call: it ends with its caller, at the deadline, and for
// its cause where the server stops.
func (h *handler) waited(caller context.Context) (ctx context.Context, done func()) {
	ctx, stop := context.WithCancelCause(caller)
	ctx, cancel := context.WithTimeout(ctx, h.cfg.Deadline)
	unregister := context.AfterFunc(h.ended, func() { stop(errStopping) })
	return ctx, func() {
		unregister()
		cancel()
		stop(nil)
	}
}

// work answers a request for a study and writes the answer, which takes longer than a sweep
// itself.
func work(ctx context.Context, request *calls.Request, d *study.Document) (written, *fault) {
	result, f := ask(ctx, request, d)
	if f != nil {
		return nil, f
	}
	if f, ok := result.(*calls.File); ok {
		return (*file)(f), nil
	}
	answer, f := asJSON(http.StatusOK, result)
	if f != nil {
		return nil, f
	}
	return answer, nil
}

// ask answers a request for a study.
func ask(ctx context.Context, request *calls.Request, d *study.Document) (any, *fault) {
	result, err := request.Ask(ctx, d, nil)
	if ctx.Err() != nil {
		err = context.Cause(ctx) // A search gives the best so far, which is not what was asked for.
	}
	if err != nil {
		return nil, refusal(err)
	}
	return result, nil
}

// receive reads the text of a study once there is room for it.
func (h *handler) receive(w http.ResponseWriter, r *http.Request) ([]byte, *fault) {
	leave, err := h.reading.enter(r.Context())
	if err != nil {
		return nil, refusal(err)
	}
	defer leave()
	return h.readBody(w, r)
}

// refusal returns the fault of a call that was not let in.
func refusal(err error) *fault {
	switch {
	case errors.Is(err, errFull):
		return faultf(http.StatusTooManyRequests, "", "%s", err)
	case errors.Is(err, errStopping):
		return faultf(http.StatusServiceUnavailable, "", "%s", err)
	}
	return faultOf(err)
}

// only lets one method through, and HEAD with GET.
func only(method string, next http.HandlerFunc) http.HandlerFunc {
	return func(w http.ResponseWriter, r *http.Request) {
		if r.Method == method || method == http.MethodGet && r.Method == http.MethodHead {
			next(w, r)
			return
		}
		w.Header().Set("Allow", method)
		faultf(http.StatusMethodNotAllowed, "", "want a %s", method).write(w)
	}
}

// fixed serves bytes that never change while the program runs.
func fixed(contentType string, body []byte) http.HandlerFunc {
	return func(w http.ResponseWriter, _ *http.Request) {
		w.Header().Set("Content-Type", contentType)
		w.Header().Set("Cache-Control", "no-cache")
		w.Write(body)
	}
}

// unknown answers a path that is none.
func unknown(w http.ResponseWriter, _ *http.Request) {
	faultf(http.StatusNotFound, "", "no such call; %sopenapi.json lists them", base).write(w)
}

// health says whether calls are taken.
func (h *handler) health(w http.ResponseWriter, _ *http.Request) {
	w.Header().Set("Content-Type", "text/plain; charset=utf-8")
	w.Header().Set("Cache-Control", "no-store")
	if h.work.stopped() {
		w.WriteHeader(http.StatusServiceUnavailable)
		io.WriteString(w, "stopping\n")
		return
	}
	io.WriteString(w, "ok\n")
}

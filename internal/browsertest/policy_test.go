package browsertest

import (
	"net/http"
	"net/http/httptest"
	"slices"
	"sync"
	"testing"
	"testing/fstest"

	"toewright/internal/web"
)

// bait is a server of another origin that notes what is asked of it.
type bait struct {
	*httptest.Server
	mu    sync.Mutex
	asked []string
}

func newBait(t *testing.T) *bait {
	b := &bait{}
	b.Server = httptest.NewServer(http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		b.mu.Lock()
		defer b.mu.Unlock()
		b.asked = append(b.asked, r.URL.Path)
		w.Header().Set("Access-Control-Allow-Origin", "*")
	}))
	t.Cleanup(b.Close)
	return b
}

func (b *bait) requests() []string {
	b.mu.Lock()
	defer b.mu.Unlock()
	return slices.Clone(b.asked)
}

// leave is a script that tries each way of reaching another origin that a page has,
// and returns how many were tried.
const leave = `(async (bait) => {
	const ended = (e, put) => new Promise((done) => {
		e.onload = e.onerror = e.onclose = done;
		put?.(e);
		setTimeout(done, 2000);
	});
	const element = (name, set) => ended(Object.assign(document.createElement(name), set), (e) => document.body.append(e));
	const tries = [
		fetch(bait + "/fetch").catch(() => {}),
		element("img", { src: bait + "/image" }),
		element("script", { src: bait + "/script" }),
		element("link", { rel: "stylesheet", href: bait + "/style" }),
		element("iframe", { src: bait + "/frame" }),
		element("object", { data: bait + "/object" }),
		element("video", { src: bait + "/video" }),
		ended(new EventSource(bait + "/events")),
		ended(new WebSocket(bait.replace("http", "ws") + "/socket")),
		navigator.sendBeacon(bait + "/beacon", "text"),
		import(bait + "/module").catch(() => {}),
	];
	const form = Object.assign(document.createElement("form"), { action: bait + "/form", method: "post" });
	document.body.append(form);
	form.submit();
	await Promise.all(tries);
	return tries.length + 1;
})(%s)`

// leaveWorker is the script of a worker that does the same with what a worker has.
const leaveWorker = `onmessage = async ({ data: bait }) => {
	const tries = [fetch(bait + "/worker-fetch").catch(() => {}), import(bait + "/worker-module").catch(() => {})];
	try { importScripts(bait + "/worker-script"); } catch {}
	await Promise.all(tries);
	postMessage("tried");
};`

// askWorker is a script that runs that worker.
const askWorker = `new Promise((done) => {
	const worker = new Worker("web/leave.js");
	worker.onmessage = ({ data }) => done(data);
	worker.onerror = (e) => done(e.message);
	worker.postMessage(%s);
})`

// withWorker returns the built front end and that worker.
func withWorker(t *testing.T) fstest.MapFS {
	files := Version(t, "policy")
	files["leave.js"] = &fstest.MapFile{Data: []byte(leaveWorker)}
	return files
}

func TestNothingLeavesTheOrigin(t *testing.T) {
	tests := []struct {
		name    string
		options Options
		worker  bool // A plain host has no policy for the scripts of workers.
	}{
		{name: "served", options: Options{Web: web.Config{Assets: withWorker(t)}}, worker: true},
		{name: "as a site", options: Options{Handler: plainHost(t, "")}},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			b := newBait(t)
			page := Open(t, tt.options)
			page.Expect("Content Security Policy")
			page.Expect(b.URL) // what the browser says of each refusal
			if got := Evalf[int](page, leave, quote(b.URL)); got != 12 {
				t.Errorf("%d ways were tried, want 12", got)
			}
			if tt.worker {
				if got := Evalf[string](page, askWorker, quote(b.URL)); got != "tried" {
					t.Errorf("the worker said %q, want that it tried", got)
				}
			}
			if got := b.requests(); len(got) > 0 {
				t.Errorf("another origin was asked for %q", got)
			}
		})
	}
}

// inject is a script that puts script and style into the document, and returns what
// had an effect.
const inject = `(async () => {
	const script = Object.assign(document.createElement("script"), { textContent: "window.ran = 'script element'" });
	const style = Object.assign(document.createElement("style"), { textContent: "body { outline: 7px solid }" });
	document.body.append(script, style);
	const button = document.createElement("button");
	button.setAttribute("onclick", "window.ran = 'attribute'");
	button.setAttribute("style", "outline: 9px solid");
	document.body.append(button);
	button.click();
	// Later, as the script of a debugger may evaluate what it likes.
	await new Promise((done) => setTimeout(() => {
		try { window.eval("window.ran = 'eval'"); } catch {}
		done();
	}));
	const effects = [window.ran, getComputedStyle(document.body).outlineWidth === "7px" && "style element",
		getComputedStyle(button).outlineWidth === "9px" && "style attribute"];
	return effects.filter(Boolean);
})()`

func TestInjectedCodeDoesNothing(t *testing.T) {
	for name, options := range map[string]Options{"served": {}, "as a site": {Handler: plainHost(t, "")}} {
		t.Run(name, func(t *testing.T) {
			page := Open(t, options)
			page.Expect("Content Security Policy")
			if got := Eval[[]string](page, inject); len(got) > 0 {
				t.Errorf("what was put into the document had an effect: %q", got)
			}
		})
	}
}

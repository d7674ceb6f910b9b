package browsertest

import (
	"net/http"
	"net/http/httptest"
	"os"
	"strings"
	"sync"
	"testing"

	"github.com/chromedp/chromedp"

	"toewright/internal/web"
	"toewright/internal/web/api"
)

// noted is a server of calls that notes how each post ended.
type noted struct {
	*httptest.Server
	mu   sync.Mutex
	ends map[int]int // by status
}

func newNoted(t *testing.T) *noted {
	t.Helper()
	handler, err := web.NewHandler(web.Config{API: api.New(api.Config{})})
	if err != nil {
		t.Fatal(err)
	}
	n := &noted{ends: map[int]int{}}
	n.Server = httptest.NewServer(http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		seen := &noting{ResponseWriter: w, status: http.StatusOK}
		handler.ServeHTTP(seen, r)
		if r.Method == http.MethodPost {
			n.mu.Lock()
			defer n.mu.Unlock()
			n.ends[seen.status]++
		}
	}))
	t.Cleanup(n.Close)
	return n
}

// noting keeps the status of an answer.
type noting struct {
	http.ResponseWriter
	status int
}

func (n *noting) WriteHeader(status int) {
	n.status = status
	n.ResponseWriter.WriteHeader(status)
}

// compute is a script that has a server compute in each way that needs no leave of it,
// and in the one that does, and returns how many were tried.
const compute = `(async (url, study) => {
	const post = (body, headers = {}, mode = "no-cors") =>
		fetch(url, { method: "POST", mode, headers, body }).catch(() => {});
	const tries = [
		post(study),
		post(study, { "Content-Type": "application/x-www-form-urlencoded" }),
		post(new Blob([study])),
		post(new Blob([study], { type: "application/json" })),
		post(study, { "Content-Type": "application/json" }, "cors"),
		navigator.sendBeacon(url, study),
	];
	const form = Object.assign(document.createElement("form"), { action: url, method: "post", enctype: "text/plain", target: "frame" });
	const frame = Object.assign(document.createElement("iframe"), { name: "frame" });
	form.append(Object.assign(document.createElement("textarea"), { name: study }));
	document.body.append(frame, form);
	const shown = new Promise((done) => { frame.onload = done; });
	form.submit();
	await Promise.all([...tries, shown]);
	return tries.length + 1;
})(%s, %s)`

// ask is a script that has the server of its own page compute, and returns the status.
const ask = `fetch("/api/v1/sweep", { method: "POST", headers: { "Content-Type": "application/json" }, body: %s }).then((r) => r.status)`

// TestNeighboursCannotCompute has a page of another origin try to make the server
// compute, and one whose name was pointed at it; the server's own page may.
func TestNeighboursCannotCompute(t *testing.T) {
	text, err := os.ReadFile("../../testdata/studies/double-wishbone-rack.json")
	if err != nil {
		t.Fatal(err)
	}
	study := quote(string(text))
	service := newNoted(t)
	neighbour := http.HandlerFunc(func(w http.ResponseWriter, _ *http.Request) { w.Header().Set("Content-Type", "text/html") })
	rebound := strings.Replace(service.URL, "127.0.0.1", reboundName, 1)
	page := Visit(t, Options{Handler: neighbour, Expected: []string{service.URL, rebound, "status of", "ERR_", "Cross-Origin-Opener-Policy"}})

	if got := Evalf[int](page, compute, quote(service.URL+"/api/v1/sweep"), study); got != 7 {
		t.Errorf("%d ways were tried, want 7", got)
	}
	page.Do(chromedp.Navigate(rebound + "/"))
	if got := Evalf[int](page, ask, study); got != http.StatusMisdirectedRequest {
		t.Errorf("the page of a name that was pointed here is answered %d, want 421", got)
	}
	page.Do(chromedp.Navigate(service.URL + "/"))
	if got := Evalf[int](page, ask, study); got != http.StatusOK {
		t.Errorf("the server's own page is answered %d, want 200", got)
	}

	service.mu.Lock()
	defer service.mu.Unlock()
	if service.ends[http.StatusOK] != 1 || service.ends[http.StatusForbidden] < 5 || service.ends[http.StatusMisdirectedRequest] == 0 { // which a browser may try again
		t.Errorf("posts ended so, by status: %v; want one answered, of its own page", service.ends)
	}
}

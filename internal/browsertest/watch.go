package browsertest

import (
	"context"
	"fmt"
	"slices"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/chromedp/cdproto/network"
	"github.com/chromedp/chromedp"
)

// watch collects what a page complains of, and where it asks for things.
type watch struct {
	origin string

	mu         sync.Mutex
	complaints []string
	crash      bool          // the program has crashed
	forgiving  bool          // the network is meant to fail
	expected   []string      // parts of messages that are meant to come
	seen       chan struct{} // closed when the last message has been seen
}

// lastMessage is written to the console at the end, to know that all before it has
// been seen.
const lastMessage = "browsertest: end of the test"

// newWatch watches the tab of a context until it ends.
func newWatch(t testing.TB, ctx context.Context, origin string) *watch {
	t.Helper()
	w := &watch{origin: origin, seen: make(chan struct{})}
	messages := chromedp.Console(ctx)
	go func() {
		for m, err := range messages {
			if err != nil {
				return
			}
			w.console(m)
		}
	}()
	if err := chromedp.Listen(ctx, w.request); err != nil {
		t.Fatal(err)
	}
	return w
}

// console takes in a message of the console.
func (w *watch) console(m chromedp.ConsoleMessage) {
	w.mu.Lock()
	defer w.mu.Unlock()
	switch {
	case m.Text == lastMessage:
		close(w.seen)
	case m.Source == "network" && w.forgiving:
	case w.expects(m.Text):
	case m.Type == chromedp.ConsoleError || m.IsException() || w.crashed(m.Text):
		w.complaints = append(w.complaints, fmt.Sprintf("%s (%s:%d)", m, m.URL, m.Line+1))
	}
}

// crashed reports whether a line is what Go says of a crash, or follows one.
func (w *watch) crashed(line string) bool {
	w.crash = w.crash || strings.HasPrefix(line, "panic: ") || strings.HasPrefix(line, "fatal error: ")
	return w.crash && len(w.complaints) < 40
}

// expects reports whether a message is one that is meant to come.
func (w *watch) expects(text string) bool {
	return slices.ContainsFunc(w.expected, func(part string) bool { return strings.Contains(text, part) })
}

// request takes in an event and looks at it if it is a request.
func (w *watch) request(event any) {
	e, ok := event.(*network.EventRequestWillBeSent)
	if !ok || w.ours(e.Request.URL) {
		return
	}
	w.mu.Lock()
	defer w.mu.Unlock()
	if !w.expects(e.Request.URL) {
		w.complaints = append(w.complaints, "request to "+e.Request.URL)
	}
}

// ours reports whether an address is the server's or the page's own making.
func (w *watch) ours(url string) bool {
	for _, start := range []string{w.origin + "/", "data:", "blob:" + w.origin + "/"} {
		if strings.HasPrefix(url, start) {
			return true
		}
	}
	return false
}

// String lists the complaints, for the message of a test that has failed already.
func (w *watch) String() string {
	w.mu.Lock()
	defer w.mu.Unlock()
	if len(w.complaints) == 0 {
		return ""
	}
	return "\nthe page says:\n\t" + strings.Join(w.complaints, "\n\t")
}

// Forgive takes the browser's complaints about the network for what they are from
// now on: the test makes it fail.
func (p *Page) Forgive() {
	p.watch.mu.Lock()
	defer p.watch.mu.Unlock()
	p.watch.forgiving = true
}

// Expect takes messages and requests with this part for what they are from now on:
// the test provokes them.
func (p *Page) Expect(part string) {
	p.watch.mu.Lock()
	defer p.watch.mu.Unlock()
	p.watch.expected = append(p.watch.expected, part)
}

// Offline stops the server for the rest of the test.
func (p *Page) Offline() {
	p.Forgive()
	p.Stop()
}

// check fails the test if the page has complained.
func (p *Page) check() {
	p.t.Helper()
	if p.t.Failed() {
		return // Said already, with the complaints.
	}
	Eval[chromedp.Void](p, fmt.Sprintf("console.debug(%q)", lastMessage))
	select {
	case <-p.watch.seen:
	case <-time.After(10 * time.Second):
		p.t.Error("the page's console did not answer")
	}
	if said := p.watch.String(); said != "" {
		p.t.Error(said)
	}
}

package browsertest

import (
	"context"
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
	"time"

	cdppage "github.com/chromedp/cdproto/page"
	"github.com/chromedp/chromedp"
)

// keepEditing is a script that renames the study again and again and notes in
// window.acknowledged the number of the last name that the page said is saved.
const keepEditing = `(async (from) => {
	window.acknowledged = 0;
	const text = (selector) => document.querySelector(selector)?.textContent;
	for (let i = from;; i++) {
		const field = document.querySelector("#study-name");
		field.value = "Edit " + i;
		field.dispatchEvent(new Event("change", {bubbles: true}));
		do {
			await new Promise((done) => setTimeout(done, 4));
		} while (text("#study-menu strong") !== "Edit " + i || text("#kept") !== "saved");
		window.acknowledged = i;
	}
})(%d), true`

// editedName is a script that returns the name of the study that is open.
const editedName = `document.querySelector("#study-menu strong")?.textContent ?? ""`

// visit opens the page of a server in a new tab of a browser that will be killed: nobody
// asks at the end what it complained of.
func visit(t *testing.T, b *browser, server *Server) *Page {
	t.Helper()
	tab, closeTab := chromedp.NewContext(b.ctx)
	t.Cleanup(closeTab)
	if err := chromedp.Do(tab); err != nil {
		t.Fatal(err)
	}
	ctx, cancel := context.WithTimeout(tab, pageTimeout)
	t.Cleanup(cancel)
	p := &Page{Server: server, t: t, ctx: ctx, watch: newWatch(t, ctx, server.Origin())}
	p.Do(chromedp.Navigate(server.Origin() + "/"))
	p.WaitRunning()
	return p
}

// killable starts a browser of a profile that is the test's own.
func killable(t *testing.T, profile string) *browser {
	t.Helper()
	b, err := launch(profile)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(b.stop)
	return b
}

// checkKept waits until the page shows an edit and returns its number, which must be
// that of the last acknowledged one or a later one.
func checkKept(p *Page, acknowledged int) int {
	p.t.Helper()
	p.WaitTrue(`!!document.querySelector("#kept") && document.querySelector("#kept").textContent !== "saving"`)
	got := -1
	for range 100 { // the study opens a moment after the page
		name := Eval[string](p, editedName)
		if number, ok := strings.CutPrefix(name, "Edit "); ok {
			got, _ = strconv.Atoi(number)
		}
		if got >= acknowledged {
			return got
		}
		time.Sleep(pollInterval)
	}
	p.t.Fatalf("the study that opens is edit %d, but %d was said to be saved", got, acknowledged)
	return got
}

// editFor edits on from a number for a while, and returns the last edit that the page
// said is saved, at least the first.
func editFor(p *Page, from int, while time.Duration) int {
	p.t.Helper()
	openPanel(p, "study")
	p.WaitTrue(`!!document.querySelector("#study-name")`)
	Eval[bool](p, fmt.Sprintf(keepEditing, from))
	p.WaitTrue(`window.acknowledged > 0`)
	time.Sleep(while)
	return Eval[int](p, `window.acknowledged`)
}

// kills is how often a browser is killed; TOEWRIGHT_KILLS says it otherwise.
func kills(t *testing.T, usual int) int {
	text := os.Getenv("TOEWRIGHT_KILLS")
	if text == "" {
		return usual
	}
	n, err := strconv.Atoi(text)
	if err != nil {
		t.Fatalf("TOEWRIGHT_KILLS: %v", err)
	}
	return n
}

// longestWork is the longest time that is edited before the end comes: more than a save
// takes.
const longestWork = 900 * time.Millisecond

// TestKilledBrowser kills the browser at moments of chance while a study is edited, and
// starts it again with the same profile: the study opens with every edit that the page
// said is saved.
func TestKilledBrowser(t *testing.T) {
	server := Serve(t, Options{})
	profile := filepath.Join(t.TempDir(), "profile")
	random := rand.New(rand.NewPCG(1, 1))
	acknowledged, next := -1, 1
	for round := range kills(t, 3) {
		b := killable(t, profile)
		p := visit(t, b, server)
		if round > 0 {
			next = checkKept(p, acknowledged) + 1
		}
		acknowledged = editFor(p, next, time.Duration(random.Int64N(int64(longestWork))))
		if err := b.kill(); err != nil {
			t.Fatal(err)
		}
		t.Logf("killed once edit %d was said to be saved", acknowledged)
	}
	checkKept(visit(t, killable(t, profile), server), acknowledged)
}

// TestKilledTab kills the process of the tab instead, and opens another tab.
func TestKilledTab(t *testing.T) {
	server := Serve(t, Options{})
	b := killable(t, filepath.Join(t.TempDir(), "profile"))
	random := rand.New(rand.NewPCG(2, 2))
	p := visit(t, b, server)
	next := 1
	for range kills(t, 4) {
		acknowledged := editFor(p, next, time.Duration(random.Int64N(int64(longestWork))))
		crash(p)
		p = visit(t, b, server)
		next = checkKept(p, acknowledged) + 1
	}
}

// crash ends the process of a page's tab.
func crash(p *Page) {
	ctx, cancel := context.WithTimeout(p.ctx, time.Second) // a tab that is gone does not answer
	defer cancel()
	_ = chromedp.Do(ctx, chromedp.Func(func(ctx context.Context, _ *chromedp.Target) error {
		_, err := chromedp.Call(ctx, cdppage.Crash, struct{}{})
		return err
	}))
}

package browsertest

import (
	"context"
	"fmt"
	"net/http"
	"os"
	"path/filepath"
	"testing"
	"time"

	"github.com/chromedp/cdproto/emulation"
	cdppage "github.com/chromedp/cdproto/page"
	"github.com/chromedp/chromedp"

	"toewright/internal/web"
)

// pageTimeout bounds all that one test does with its page.
const pageTimeout = 2 * time.Minute

// pollInterval is the time between two looks at a page that is waited for.
const pollInterval = 50 * time.Millisecond

// Options say how a page is opened. The zero value is a desktop window.
type Options struct {
	Width, Height int64      // of the window in CSS pixels; 1440 by 900 if zero
	Touch         bool       // a phone or tablet rather than a mouse
	Dark          bool       // the reader prefers a dark page
	Still         bool       // the reader asked the system for less motion
	Path          string     // what is opened, the root if empty
	Web           web.Config // what is served
	Name          string     // of the server in the page's address, such as [reboundName], in place of the loopback's
	Before        string     // a script that runs before the page's own, if any
	Expected      []string   // parts of messages that are meant to come; see [Page.Expect]
	// Handler is served in place of Web. The page is still at Web.BasePath.
	Handler http.Handler
}

// Page is a tab with the page in it, and the server it came from.
type Page struct {
	*Server
	t     testing.TB
	ctx   context.Context
	watch *watch
}

// Open starts a server, opens its page in a fresh profile and waits until the
// program runs. The test fails if by its end the page has complained.
func Open(t testing.TB, o Options) *Page {
	t.Helper()
	p := Visit(t, o)
	p.WaitRunning()
	return p
}

// Visit is [Open] without the wait.
func Visit(t testing.TB, o Options) *Page {
	t.Helper()
	tab, closeTab := chromedp.NewContext(shared.ctx, chromedp.WithNewBrowserContext())
	t.Cleanup(closeTab)
	return visitIn(t, tab, Serve(t, o), o)
}

// SecondTab opens the page once more, in another tab of the same reader: the two share
// what the browser keeps.
func (p *Page) SecondTab(o Options) *Page {
	p.t.Helper()
	tab, closeTab := chromedp.NewContext(p.ctx)
	p.t.Cleanup(closeTab)
	second := visitIn(p.t, tab, p.Server, o)
	second.WaitRunning()
	return second
}

// visitIn opens the page of a server in the tab of a context.
func visitIn(t testing.TB, tab context.Context, server *Server, o Options) *Page {
	t.Helper()
	if err := chromedp.Do(tab); err != nil { // Opens the tab, whose life hangs on this context.
		t.Fatal(err)
	}
	ctx, cancel := context.WithTimeout(tab, pageTimeout)
	t.Cleanup(cancel)
	p := &Page{Server: server, t: t, ctx: ctx, watch: newWatch(t, ctx, server.Origin())}
	p.watch.expected = o.Expected // No message can have come yet.
	t.Cleanup(p.check)
	p.Do(o.emulate()...)
	p.Do(before(o.Before))
	p.Do(chromedp.Navigate(server.Origin() + o.Web.BasePath + "/" + o.Path))
	return p
}

// before makes a script run before those of every page that is opened from now on.
func before(script string) chromedp.Action[chromedp.Void] {
	return chromedp.Func(func(ctx context.Context, _ *chromedp.Target) error {
		_, err := chromedp.Call(ctx, cdppage.AddScriptToEvaluateOnNewDocument,
			cdppage.AddScriptToEvaluateOnNewDocumentParams{Source: script})
		return err
	})
}

// emulate returns the steps that make the window be as the options say.
func (o Options) emulate() []chromedp.Action[chromedp.Void] {
	if o.Width == 0 {
		o.Width, o.Height = 1440, 900
	}
	var more []chromedp.EmulateViewportOption
	if o.Touch {
		more = append(more, chromedp.EmulateMobile, chromedp.EmulateTouch)
	}
	return []chromedp.Action[chromedp.Void]{
		chromedp.EmulateViewport(o.Width, o.Height, more...),
		prefer(
			map[bool]string{true: "dark", false: "light"}[o.Dark],
			map[bool]string{true: "reduce", false: "no-preference"}[o.Still]),
	}
}

// prefer makes the reader prefer a colour scheme and an amount of motion.
func prefer(scheme, motion string) chromedp.Action[chromedp.Void] {
	return chromedp.Func(func(ctx context.Context, tab *chromedp.Target) error {
		_, err := chromedp.Call(ctx, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{
			Features: []*emulation.MediaFeature{
				{Name: "prefers-color-scheme", Value: scheme},
				{Name: "prefers-reduced-motion", Value: motion},
			},
		})
		return err
	})
}

// Do runs steps on the page, and ends the test if one fails.
func (p *Page) Do(steps ...chromedp.Action[chromedp.Void]) {
	p.t.Helper()
	if err := chromedp.Do(p.ctx, steps...); err != nil {
		p.t.Fatalf("%v%v", err, p.watch)
	}
}

// Get runs an action on the page and returns its value. It ends the test if the
// action fails.
func Get[T any](p *Page, action chromedp.Action[T]) T {
	p.t.Helper()
	v, err := chromedp.Run(p.ctx, action)
	if err != nil {
		p.t.Fatalf("%v%v", err, p.watch)
	}
	return v
}

// Eval returns the value of a JavaScript expression, awaited if it is a promise.
func Eval[T any](p *Page, expression string) T {
	p.t.Helper()
	return Get(p, chromedp.Evaluate[T](expression, chromedp.EvalAwaitPromise))
}

// Evalf is [Eval] of a format and what is put in its place.
func Evalf[T any](p *Page, format string, args ...any) T {
	p.t.Helper()
	return Eval[T](p, fmt.Sprintf(format, args...))
}

// Reload loads the page anew and waits until the program runs.
func (p *Page) Reload() {
	p.t.Helper()
	p.Do(chromedp.Reload())
	p.WaitRunning()
}

// WaitRunning waits until the program runs and has put all of the page there.
func (p *Page) WaitRunning() {
	p.t.Helper()
	p.WaitTrue(`!document.querySelector("#app-wasm-loader, [aria-busy=true]")`)
}

// WaitText waits until the first element that a CSS selector finds has the text, as
// [Page.WaitTrue] does.
func (p *Page) WaitText(selector, text string) {
	p.t.Helper()
	p.WaitTrue(fmt.Sprintf(`document.querySelector(%q)?.textContent.trim() === %q`, selector, text))
}

// WaitOfflineReady waits until the service worker serves the page.
func (p *Page) WaitOfflineReady() {
	p.t.Helper()
	p.WaitTrue(`navigator.serviceWorker.controller !== null`)
}

// WaitTrue waits until a JavaScript expression, or the promise it makes, is true.
// It waits on through a reload.
func (p *Page) WaitTrue(expression string) {
	p.t.Helper()
	for p.ctx.Err() == nil {
		ok, err := chromedp.Run(p.ctx, chromedp.Evaluate[bool](expression, chromedp.EvalAwaitPromise))
		if err == nil && ok {
			return
		}
		time.Sleep(pollInterval)
	}
	p.t.Fatalf("%s did not come true within %v%v", expression, pageTimeout, p.watch)
}

// Shot writes a picture of the window to NAME.png in the folder that
// TOEWRIGHT_SHOTS names, if it does.
func (p *Page) Shot(name string) {
	p.t.Helper()
	folder := os.Getenv("TOEWRIGHT_SHOTS")
	if folder == "" {
		return
	}
	picture := Get(p, chromedp.CaptureScreenshot())
	if err := os.WriteFile(filepath.Join(folder, name+".png"), picture, 0o644); err != nil {
		p.t.Fatal(err)
	}
}

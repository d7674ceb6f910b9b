package engines

import (
	"encoding/json"
	"os"
	"path/filepath"
	"testing"

	"toewright/internal/browsertest"
)

// page is the page in a browser of an engine, and the server it came from. What does not work
// ends the test.
type page struct {
	*browsertest.Server
	t testing.TB
	s *Session
	// name of the engine and the window, for pictures
	name string
}

// mustOpen starts a browser of an engine with the page in a window of a size, and waits until the
// program runs. Where the engine is not installed the test is left out, unless it has to be there.
func mustOpen(t *testing.T, e Engine, width, height int, o Options) *page {
	t.Helper()
	wanted, required := wanted(e.Name)
	if !wanted {
		t.Skip("not asked for")
	}
	if packet := e.Missing(); packet != "" && required {
		t.Fatalf("there is no %s; on Debian: apt-get install %s", e.Name, packet)
	} else if packet != "" {
		t.Skipf("LEFT OUT: there is no %s; on Debian: apt-get install %s", e.Name, packet)
	}
	s, err := e.Start(o)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(s.Close)
	p := &page{Server: browsertest.Serve(t, browsertest.Options{}), t: t, s: s, name: e.Name}
	p.must(s.Size(width, height))
	p.visit()
	return p
}

// must ends the test on an error, with a picture of the page where pictures are wanted.
func (p *page) must(err error) {
	p.t.Helper()
	if err != nil {
		p.shot("failed")
		p.t.Fatalf("%s: %v", p.name, err)
	}
}

// visit opens the page and waits until it can be worked with.
func (p *page) visit() {
	p.t.Helper()
	p.must(p.s.Open(p.Origin() + "/"))
	p.ready()
}

// ready waits until all of the page is there and the solver answers.
func (p *page) ready() {
	p.t.Helper()
	p.wait(`!document.querySelector("#app-wasm-loader, [aria-busy=true]") && document.querySelector("#solver")?.textContent.trim() === "ready"`)
}

func (p *page) wait(expression string) {
	p.t.Helper()
	p.must(p.s.Wait(expression))
}

// click clicks what a selector finds as soon as it is there.
func (p *page) click(selector string) {
	p.t.Helper()
	p.wait(`document.querySelector(` + quote(selector) + `)`)
	p.must(p.s.Click(selector))
}

// open opens a step, and one of its ways if there is one.
func (p *page) open(step, way string) {
	p.t.Helper()
	p.click("#step-" + step)
	p.wait(`document.querySelector("#panel").getAttribute("aria-labelledby") === ` + quote("step-"+step))
	if way != "" {
		p.click("#way-" + way)
		p.wait(`document.querySelector(` + quote("#way-"+way) + `).getAttribute("aria-pressed") === "true"`)
	}
}

// get returns what an expression comes to.
func get[T any](p *page, expression string) T {
	p.t.Helper()
	v, err := Value[T](p.s, expression)
	p.must(err)
	return v
}

// shot writes a picture of the window to the folder that TOEWRIGHT_SHOTS names, if it does.
func (p *page) shot(name string) {
	folder := os.Getenv("TOEWRIGHT_SHOTS")
	if folder == "" {
		return
	}
	picture, err := p.s.Shot()
	if err == nil {
		err = os.WriteFile(filepath.Join(folder, p.name+" "+name+".png"), picture, 0o644)
	}
	if err != nil {
		p.t.Error(err)
	}
}

// quote writes a text as JavaScript does.
func quote(text string) string {
	q, _ := json.Marshal(text) // A string can be written.
	return string(q)
}

// number writes a number as JavaScript does.
func number(x float64) string {
	text, _ := json.Marshal(x) // What a page says is finite.
	return string(text)
}

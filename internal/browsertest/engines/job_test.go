package engines

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"toewright/internal/study"
)

// outerBall is the ball of the steering arm in the drawing.
const outerBall = `.ball-handle[aria-label="tie rod, outer ball"]`

// ballHeight is how high the drawing says that ball stands.
const ballHeight = `Number(document.querySelector('` + outerBall + `').getAttribute("aria-valuenow"))`

// notePointer has the page note what points at it.
const notePointer = `(addEventListener("pointerdown", (e) => { window.pointed = e.pointerType; }, {capture: true}), null)`

// curve is the toe curve of the selected car.
const curve = `document.querySelector(".curve.selected")?.getAttribute("d")`

// TestJob goes through the page's main job in each engine: the ball is dragged, the best car is
// found, a series is built, readings are typed, a study is opened and kept, and all of
// it is there without the server.
func TestJob(t *testing.T) {
	for _, e := range All {
		t.Run(e.Name, func(t *testing.T) {
			p := mustOpen(t, e, 1440, 900, Options{})
			for _, part := range []struct {
				name string
				run  func(*page)
			}{
				{"drag", (*page).dragsTheBall}, {"touch", (*page).dragsByTouch}, {"find", (*page).finds}, {"series", (*page).buildsASeries},
				{"readings", (*page).takesReadings}, {"open", (*page).opensAFile}, {"print", (*page).prints}, {"alone", (*page).worksAlone},
			} {
				ok := t.Run(part.name, func(t *testing.T) {
					q := *p
					q.t = t
					part.run(&q)
					q.shot(part.name)
				})
				if !ok {
					break // The next part begins where this one ended.
				}
			}
		})
	}
}

// dragsTheBall drags the outer ball upward: it stands higher, and another car's curve is drawn.
func (p *page) dragsTheBall() { p.drags(Mouse) }

// dragsByTouch does the same with a finger, where the driver has one: WebKitGTK's moves its mouse
// when it is told to touch.
func (p *page) dragsByTouch() { p.drags(Touch) }

func (p *page) drags(by Pointer) {
	p.wait(`document.querySelector('` + outerBall + `')`)
	height, was := get[float64](p, ballHeight), get[string](p, curve)
	at, err := p.s.Middle(outerBall)
	p.must(err)
	get[any](p, notePointer)
	p.must(p.s.Drag(by, at, 0, -12))
	p.wait(ballHeight + ` > ` + number(height))
	p.wait(curve + ` !== ` + quote(was))
	switch got := get[string](p, `window.pointed`); {
	case got == string(by):
	case p.name == "WebKit" && got == string(Mouse):
		p.t.Log("not dragged by a finger: WebKitGTK's driver has a mouse alone")
	default:
		p.t.Errorf("the ball was dragged by a %s, want a %s", got, by)
	}
}

// finds searches for the best car, and is told of the end.
func (p *page) finds() {
	p.open("find", "search")
	p.click("#find")
	p.wait(`document.querySelector("#answer")`)
	p.wait(`document.querySelector(".strip [aria-pressed=true]")?.textContent.includes("found")`)
}

// buildsASeries builds a series of cars.
func (p *page) buildsASeries() {
	p.open("make", "series")
	p.click("#forge")
	p.wait(`document.querySelector("#series")`)
}

// takesReadings types a run of readings with the keyboard.
func (p *page) takesReadings() {
	p.open("readings", "")
	p.click("#new-run")
	p.wait(`document.activeElement?.id === "pad-Stack"`)
	p.must(p.s.Type(Enter + "-50" + Enter + "1.25" + Enter + "1.5" + Enter))
	p.wait(`[...document.querySelectorAll(".run-rows tbody tr")].some((r) => r.textContent.includes("1.25") && r.textContent.includes("1.5"))`)
}

// opensAFile opens a study from a file.
func (p *page) opensAFile() {
	d := study.Template{Key: "strut-rack"}.Document()
	d.Name = "From a file"
	text, err := study.Encode(d)
	p.must(err)
	file := filepath.Join(p.t.TempDir(), "study.json")
	p.must(os.WriteFile(file, text, 0o644))
	p.click("#study-menu")
	p.wait(`document.querySelector("#open-file")`)
	p.must(p.s.Choose("#open-file", file))
	p.wait(`document.querySelector("#study-menu strong")?.textContent === "From a file"`)
	p.wait(`document.querySelector("#kept").textContent === "saved"`)
}

// prints prints the page, where the driver can.
func (p *page) prints() {
	pdf, err := p.s.Print()
	if err != nil && p.name == "WebKit" && strings.Contains(err.Error(), "unknown command") {
		p.t.Logf("not printed: WebKitGTK's driver has no such command: %v", err)
		return
	}
	p.must(err)
	if !bytes.HasPrefix(pdf, []byte("%PDF-")) {
		p.t.Errorf("printed %.20q", pdf)
	}
}

// worksAlone loads the page anew, and in a window of its own, with the server gone: the study that was
// opened is there.
func (p *page) worksAlone() {
	p.wait(`navigator.serviceWorker.controller !== null`)
	p.Stop()
	p.visit()
	p.wait(`document.querySelector("#study-menu strong")?.textContent === "From a file"`)
	p.must(p.s.Anew(p.Origin() + "/"))
	p.ready()
	p.wait(`document.querySelector("#study-menu strong")?.textContent === "From a file"`)
}

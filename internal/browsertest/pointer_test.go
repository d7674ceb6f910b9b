package browsertest

import (
	"testing"
	"time"

	"github.com/chromedp/chromedp"
)

// place is a place of the window, in CSS pixels.
type place struct{ X, Y float64 }

// by returns the place that lies at a step from p.
func (p place) by(x, y float64) place { return place{p.X + x, p.Y + y} }

// middle returns the middle of the first element that a CSS selector finds.
func middle(p *Page, selector string) place {
	p.t.Helper()
	return Eval[place](p, `(() => {
		const r = document.querySelector(`+quote(selector)+`).getBoundingClientRect();
		return { X: r.x + r.width / 2, Y: r.y + r.height / 2 };
	})()`)
}

// press presses the mouse's left button at a place.
func press(p *Page, at place) {
	p.t.Helper()
	p.Do(chromedp.MouseEvent(chromedp.MousePressed, at.X, at.Y, chromedp.Button("left"), chromedp.ClickCount(1)))
}

// lift lifts the mouse's left button.
func lift(p *Page, at place) {
	p.t.Helper()
	p.Do(chromedp.MouseEvent(chromedp.MouseReleased, at.X, at.Y, chromedp.Button("left"), chromedp.ClickCount(1)))
}

// screenFrame is the time between two frames of the screen.
const screenFrame = 17 * time.Millisecond

// drag presses at a place, moves in steps by x, y and lifts there.
func drag(p *Page, from place, x, y float64) {
	p.t.Helper()
	const steps = 8
	press(p, from)
	for i := 1.0; i <= steps; i++ {
		to := from.by(x*i/steps, y*i/steps)
		p.Do(chromedp.MouseEvent(chromedp.MouseMoved, to.X, to.Y, chromedp.Button("left")))
		time.Sleep(screenFrame)
	}
	lift(p, from.by(x, y))
	waitFrame(p)
}

// waitFrame waits until two frames have been shown, so that what was done is painted.
func waitFrame(p *Page) {
	p.t.Helper()
	Eval[bool](p, `new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(() => done(true))))`)
}

// attribute returns an attribute of the first element that a CSS selector finds.
func attribute(t testing.TB, p *Page, selector, name string) string {
	t.Helper()
	return Eval[string](p, `document.querySelector(`+quote(selector)+`).getAttribute(`+quote(name)+`) ?? ""`)
}

package ui

import (
	"fmt"
	"testing"

	"toewright/app/scene"
	"toewright/internal/plot"
)

// countingCanvas counts what is set.
type countingCanvas struct{ paths, texts, grips, figures int }

func (c *countingCanvas) path(scene.Slot, []byte)               { c.paths++ }
func (c *countingCanvas) text(_ scene.Slot, was, is scene.Text) { c.texts++ }
func (c *countingCanvas) grip(int, grip, grip)                  { c.grips++ }
func (c *countingCanvas) figure(int, string)                    { c.figures++ }
func (c *countingCanvas) class(string)                          {}
func (c *countingCanvas) done()                                 {}

func TestPainterTouchesOnlyWhatChanges(t *testing.T) {
	d := openDrawing(t)
	c := &countingCanvas{}
	d.painter = newPainter(c)
	d.request()
	d.frame(0)
	if first := *c; first.paths < 40 || first.texts < 20 || first.grips < 8 {
		t.Errorf("first frame sets %+v, want a whole sheet", first)
	}
	*c = countingCanvas{}
	d.request()
	d.frame(1)
	if *c != (countingCanvas{}) {
		t.Errorf("second frame without a change sets %+v, want nothing", *c)
	}
	d.desk.View.Lift(0, 10)
	d.request()
	d.frame(2)
	if c.paths == 0 || c.texts == 0 || c.grips == 0 {
		t.Errorf("frame of a lifted wheel sets %+v, want all kinds of nodes", *c)
	}
}

// TestHiddenHandle holds the picture's markup against what the painter takes it for.
func TestHiddenHandle(t *testing.T) {
	got := ""
	for _, a := range (grip{}).attributes() {
		if a.value != "" {
			got += fmt.Sprintf(" %s=%q", a.name, a.value)
		}
	}
	if got != scene.HiddenHandle {
		t.Errorf("attributes of no handle =%s, want those of the markup,%s", got, scene.HiddenHandle)
	}
}

func TestGripAttributes(t *testing.T) {
	g := grip{X: 10, Y: 20.5, Shown: true, Round: true, Focus: true, Held: true, Label: "ball", Value: -4, Low: -60, High: 60, Spoken: "height −4 mm"}
	want := map[string]string{
		"display": "", "class": "handle ball-handle held", "transform": "translate(10.00 20.50)", "tabindex": "0", "aria-hidden": "",
		"aria-label": "ball", "aria-valuenow": "-4.00", "aria-valuemin": "-60.00", "aria-valuemax": "60.00", "aria-valuetext": "height −4 mm",
	}
	for _, a := range g.attributes() {
		if a.value != want[a.name] {
			t.Errorf("%s = %q, want %q", a.name, a.value, want[a.name])
		}
	}
	g.Focus = false
	if a := g.attributes(); a[3].value != "" || a[4].value != "true" {
		t.Errorf("without focus: %v, want no tabindex and hidden from the reader", a[3:5])
	}
}

// place returns where the handle of a ball stands in the picture, the first of its name.
func place(t *testing.T, d *drawing, label string) plot.Point {
	t.Helper()
	for _, h := range d.stage.Handles() {
		if h.Label == label {
			return h.At
		}
	}
	t.Fatalf("there is no handle of %q", label)
	return plot.Point{}
}

package ui

import (
	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"toewright/internal/plot"
)

// front is a picture of choices of which each is better in one way and worse in
// another. A touch points at the one that is nearest.
type front struct {
	app.Compo
	Title          string
	XLabel, YLabel string
	X, Y           []float64 // of each choice, both better when less
	Picked         int       // number of the choice that is pointed at
	Pick           func(ctx app.Context, i int)
}

// The size of the picture in pixels, and how far beside a choice a finger may be.
const (
	frontWidth, frontHeight = 360.0, 240.0
	fingerReach             = 24.0
)

// chart returns the axes.
func (f *front) chart() plot.Chart {
	x, _ := plot.DomainOf(f.X, []float64{0})
	y, _ := plot.DomainOf(f.Y, []float64{0})
	return plot.Chart{
		Area: plot.Box(0, 0, frontWidth, frontHeight), Size: chartText, Along: plot.Horizontal,
		X: plot.ChartAxis{Domain: x.Widen(1e-3).Nice(6), Label: f.XLabel},
		Y: plot.ChartAxis{Domain: y.Widen(1e-3).Nice(6), Label: f.YLabel},
	}
}

// Render shows the choices, and the edge of what none of them reaches.
func (f *front) Render() app.UI {
	c := f.chart()
	frame := c.Frame()
	p := plot.Picture{Width: frontWidth, Height: frontHeight}
	p.Chart(c)
	p.Draw("thin", frame.AppendStaircase(nil, f.X, f.Y, plot.Undominated(f.X, f.Y)))
	p.Draw("mark s0", frame.AppendMarkers(nil, plot.Disc, 3.5, f.X, f.Y, 1))
	if i := f.Picked; i >= 0 && i < len(f.X) {
		p.Draw("picked", frame.AppendMarkers(nil, plot.Disc, 8, f.X[i:i+1], f.Y[i:i+1], 1))
	}
	markup := string(plot.Document{Title: f.Title, Picture: p}.AppendInline(nil))
	return app.Div().Class("front").OnClick(f.touch).Body(app.Raw(markup))
}

// touch points at the choice nearest to the place that was touched.
func (f *front) touch(ctx app.Context, e app.Event) {
	box := ctx.JSSrc().Call("getBoundingClientRect")
	scale := frontWidth / box.Get("width").Float()
	at := plot.Point{
		X: (e.Get("clientX").Float() - box.Get("left").Float()) * scale,
		Y: (e.Get("clientY").Float() - box.Get("top").Float()) * scale,
	}
	if i, ok := f.nearest(at); ok {
		f.Pick(ctx, i)
	}
}

// nearest returns the choice nearest to a place of the picture; ok is false where none is
// within a finger's reach.
func (f *front) nearest(at plot.Point) (nearest int, ok bool) {
	frame, least := f.chart().Frame(), fingerReach
	for i := range f.X {
		if d := frame.At(f.X[i], f.Y[i]).Sub(at).Length(); d <= least {
			nearest, least, ok = i, d, true
		}
	}
	return nearest, ok
}

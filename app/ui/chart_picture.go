package ui

import (
	"fmt"
	"math"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"toewright/app/plot"
	"toewright/internal/engine"
	"toewright/solver"
)

// chartPicture draws a map: shades on a canvas, contour lines and candidates above.
type chartPicture struct {
	app.Compo
	Bench  bench
	Result *engine.MapResult
	Stale  bool // the study has changed since

	drawn *engine.MapResult
}

// The size of a map in pixels, and the room for its labels.
const (
	mapWidth, mapHeight           = 360.0, 300.0
	mapLeft, mapBottom, mapMargin = 46.0, 34.0, 8.0
	mapText                       = 11.0
)

// OnMount and OnUpdate paint the shades, which are no part of the tree.
func (m *chartPicture) OnMount(ctx app.Context)  { ctx.Defer(m.paint) }
func (m *chartPicture) OnUpdate(ctx app.Context) { ctx.Defer(m.paint) }

// Render shows the map with what stands on it.
func (m *chartPicture) Render() app.UI {
	n := m.Bench.numbers()
	best := m.Result.Best
	return app.Figure().Class("map").Body(
		app.Div().Class("map-box").OnClick(m.touch).Body(
			app.Canvas().ID("map-shades").Width(len(m.Result.X.Values)).Height(len(m.Result.Y.Values)).Aria("hidden", "true"),
			app.Raw(m.lines()),
		),
		app.FigCaption().Body(
			app.Text(fmt.Sprintf("%s of toe change less target, %s; light is flat. Least on the map: %s at %s, %s.",
				map[string]string{"rms": "RMS", "peak": "Peak"}[m.Result.Figure], n.ToeUnit(), n.ToeNumber(degrees(best.Figure)),
				m.value(m.Result.X.Parameter, best.X), m.value(m.Result.Y.Parameter, best.Y))),
			app.If(m.Stale, func() app.UI { return app.Span().Class("warning").Text(" The study has changed since.") }),
		),
		button("Go to the least", func(ctx app.Context, _ app.Event) { m.goTo(ctx, best.X, best.Y) }, best.X, best.Y).ID("map-best"),
	)
}

// value writes a value of an axis.
func (m *chartPicture) value(key string, x float64) string {
	p, _, err := solver.FindParameter(m.Bench.cars().Design, key)
	if err != nil {
		return ""
	}
	return m.Bench.numbers().Value(m.Bench.document(), p, x)
}

// frame puts the axes' values, in the units shown, on the picture.
func (m *chartPicture) frame() plot.Frame {
	area := plot.Box(0, 0, mapWidth, mapHeight).Inset(mapLeft, mapMargin, mapMargin, mapBottom)
	return plot.NewFrame(area, ends(m.Result.X.Values), ends(m.Result.Y.Values))
}

func ends(values []float64) plot.Domain {
	d, _ := plot.DomainOf(values)
	return d
}

// grid returns the cells as a field.
func (m *chartPicture) grid() plot.Grid {
	g := plot.Grid{X: m.Result.X.Values, Y: m.Result.Y.Values}
	for _, row := range m.Result.Cells {
		for _, v := range row {
			g.Z = append(g.Z, float64(v))
		}
	}
	return g
}

// goTo gives the selected car the values of a place on the map.
func (m *chartPicture) goTo(ctx app.Context, x, y float64) {
	err := m.Bench.edit(ctx, func() error {
		if err := m.Bench.Desk.Set(m.Result.X.Parameter, x, "map"); err != nil {
			return err
		}
		return m.Bench.Desk.Set(m.Result.Y.Parameter, y, "map")
	})
	m.Bench.session().EndRun()
	if err == nil {
		m.Bench.Say(ctx, carName(m.Bench.Desk.Selected())+" has gone to "+m.value(m.Result.X.Parameter, x)+", "+m.value(m.Result.Y.Parameter, y)+".", m.Bench.Undo)
	}
}

// touch goes to the place that is touched.
func (m *chartPicture) touch(ctx app.Context, e app.Event) {
	box := ctx.JSSrc().Call("getBoundingClientRect")
	scale := mapWidth / box.Get("width").Float()
	at := plot.Point{
		X: (e.Get("clientX").Float() - box.Get("left").Float()) * scale,
		Y: (e.Get("clientY").Float() - box.Get("top").Float()) * scale,
	}
	f := m.frame()
	if !f.Area.Contains(at) {
		return
	}
	x, y := f.Invert(at)
	m.goTo(ctx, hundredth(x), hundredth(y))
}

// hundredth rounds to a hundredth of a unit: a finger is no finer.
func hundredth(x float64) float64 { return math.Round(x*100) / 100 }

// paint fills the canvas with the shades of the cells.
func (m *chartPicture) paint(app.Context) {
	canvas := app.Window().GetElementByID("map-shades")
	if m.drawn == m.Result || !canvas.Truthy() {
		return
	}
	m.drawn = m.Result
	g := m.grid()
	steps := levels(g.Z)
	dark := app.Window().Call("matchMedia", "(prefers-color-scheme: dark)").Get("matches").Bool()
	pixels := plot.AppendPixels(nil, plot.Classify(nil, g.Z, steps), len(g.X), plot.Ramp(len(steps)+1, dark))
	data := app.Window().Get("Uint8ClampedArray").New(len(pixels))
	app.CopyBytesToJS(data, pixels)
	image := app.Window().Get("ImageData").New(data, len(g.X), len(g.Y))
	canvas.Call("getContext", "2d").Call("putImageData", image, 0, 0)
}

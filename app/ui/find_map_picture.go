package ui

import (
	"sync"
	"time"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"toewright/app/model"
	"toewright/app/scene"
	"toewright/internal/plot"
)

// mapPicture is the map itself: shades on a canvas and, above them, lines and cars, which
// are set straight into nodes that stay. A pointer or the arrow keys move the selected
// car on it.
type mapPicture struct {
	app.Compo
	Bench  bench
	State  *mapping
	Frames frames

	held bool   // by a pointer
	cars string // markup of the cars as they were painted last
}

// The elements that are painted.
const (
	mapShadesID = "map-shades"
	mapGroundID = "map-ground"
	mapCarsID   = "map-cars"
)

// mapMarkup returns the picture without anything on it.
var mapMarkup = sync.OnceValue(func() string {
	return string(plot.Document{
		Title:   "Map of the toe change",
		Picture: plot.Picture{Width: scene.TerrainWidth, Height: scene.TerrainHeight},
	}.AppendInline(nil, mapGroundID, mapCarsID))
})

// OnMount shows what there is.
func (p *mapPicture) OnMount(app.Context) {
	p.State.paint, p.cars = p.paint, ""
	if p.State.shown != nil {
		p.paint(true)
	}
}

// OnDismount has nothing shown any more.
func (p *mapPicture) OnDismount() { p.State.paint = nil }

// Render shows the nodes that are painted on.
func (p *mapPicture) Render() app.UI {
	return app.Figure().Class("map").Body(
		app.Div().Class("map-box").ID("map").TabIndex(0).Role("application").Aria("label", "Map of the toe change; arrow keys move the selected car, Home goes to the least").
			On("pointerdown", p.down).On("pointermove", p.move).On("pointerup", p.up).On("pointercancel", p.up).
			OnKeyDown(p.key).Body(
			app.Canvas().ID(mapShadesID).Aria("hidden", "true"),
			app.Raw(mapMarkup()),
		),
	)
}

// terrain returns what draws the map that is shown.
func (p *mapPicture) terrain() *scene.Terrain {
	return &scene.Terrain{Desk: p.Bench.Desk, Map: p.State.shown}
}

// mover returns what moves the selected car on the map that is shown.
func (p *mapPicture) mover() mapMove { return mapMove{p.Bench, p.State.shown} }

// paint shows the cars and, where it is new, the ground. A map that is done is finer than a
// phone lays out in a frame: the page goes on in between.
func (p *mapPicture) paint(ground bool) {
	t := p.terrain()
	switch {
	case ground && t.Map.Size < model.FullMap:
		p.lay(t, func() {})
	case ground:
		p.Bench.Lasting.Async(func() { p.lay(t, pause) })
	}
	if cars := string(t.Cars().AppendMarks(nil)); cars != p.cars {
		p.cars = cars
		setMarkup(mapCarsID, cars)
	}
}

// lay shows the ground of a map, unless another is shown by then, and calls between between
// the parts of the work.
func (p *mapPicture) lay(t *scene.Terrain, between func()) {
	field := t.Field()
	between()
	levels := scene.Levels(field)
	markup := string(t.Ground(field, levels, between).AppendMarks(nil))
	between()
	if t.Map == p.State.shown && p.State.paint != nil {
		setMarkup(mapGroundID, markup)
		shade(field, levels)
	}
}

// pause lets the page do what else there is.
func pause() { time.Sleep(time.Millisecond) }

// setMarkup puts markup into an element of the picture.
func setMarkup(id, markup string) {
	if e := app.Window().GetElementByID(id); e.Truthy() {
		e.Set("innerHTML", markup)
	}
}

// shade fills the canvas with the classes of a field.
func shade(g plot.Grid, levels []float64) {
	canvas := app.Window().GetElementByID(mapShadesID)
	if !canvas.Truthy() {
		return
	}
	dark := app.Window().Call("matchMedia", "(prefers-color-scheme: dark)").Get("matches").Bool()
	pixels := plot.AppendPixels(nil, plot.Classify(nil, g.Z, levels), len(g.X), plot.Ramp(len(levels)+1, dark))
	data := app.Window().Get("Uint8ClampedArray").New(len(pixels))
	app.CopyBytesToJS(data, pixels)
	canvas.Set("width", len(g.X))
	canvas.Set("height", len(g.Y))
	image := app.Window().Get("ImageData").New(data, len(g.X), len(g.Y))
	canvas.Call("getContext", "2d").Call("putImageData", image, 0, 0)
}

// down takes hold of the map and goes where it was touched.
func (p *mapPicture) down(ctx app.Context, e app.Event) {
	if p.State.shown == nil || e.Get("button").Int() != 0 {
		return
	}
	p.held = p.lead(ctx, e)
	if p.held {
		ctx.JSSrc().Call("setPointerCapture", e.Get("pointerId"))
	}
}

// move follows the pointer that holds the map.
func (p *mapPicture) move(ctx app.Context, e app.Event) {
	ctx.PreventUpdate()
	if p.held && p.State.shown != nil {
		p.lead(ctx, e)
	}
}

// up lets go, and tells where the car has come to.
func (p *mapPicture) up(ctx app.Context, _ app.Event) {
	if !p.held {
		ctx.PreventUpdate()
		return
	}
	p.held = false
	p.Bench.session().EndRun()
	p.Bench.Changed(ctx)
	p.Bench.Say(ctx, p.mover().where(), p.Bench.Undo)
}

// lead brings the selected car under the pointer; false beside the map.
func (p *mapPicture) lead(ctx app.Context, e app.Event) bool {
	box := ctx.JSSrc().Call("getBoundingClientRect")
	scale := scene.TerrainWidth / box.Get("width").Float()
	x, y, ok := p.terrain().Values(plot.Point{
		X: (e.Get("clientX").Float() - box.Get("left").Float()) * scale,
		Y: (e.Get("clientY").Float() - box.Get("top").Float()) * scale,
	})
	if !ok && !p.held {
		return false
	}
	if err := p.mover().set(x, y, "map"); err != nil {
		p.Bench.Say(ctx, plain(err), nil)
	}
	p.Frames.request()
	return true
}

// key goes by the keyboard.
func (p *mapPicture) key(ctx app.Context, e app.Event) {
	if p.State.shown == nil || !p.mover().key(ctx, e.Get("key").String(), e.Get("shiftKey").Bool()) {
		ctx.PreventUpdate()
		return
	}
	e.PreventDefault()
}

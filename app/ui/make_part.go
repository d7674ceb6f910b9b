package ui

import (
	"encoding/json"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"toewright/app/model"
	"toewright/internal/calls"
	arm "toewright/internal/drawing"
	"toewright/internal/engine"
	"toewright/internal/study"
)

// makePart is the part drawing of the selected car's steering arm, as the shop takes it, and
// what the part fits.
type makePart struct {
	app.Compo
	Bench bench
	State *making
}

// making is what the workers have drawn and found of a part. It outlives the panel.
type making struct {
	drawn  job
	saved  job
	covers job

	side  string  // left where empty
	step  float64 // that the shop works to, mm; the usual one where 0
	of    *study.Document
	car   string
	shown string // side that is drawn
	image string // address of the picture
	fault string

	fits       *engine.CoversResult
	fitsFault  string
	fitsOf     *study.Document
	fitsOfName string
}

// drop lets go of what is under way.
func (m *making) drop() {
	for _, j := range []*job{&m.drawn, &m.saved, &m.covers} {
		j.drop()
	}
	m.forget()
}

// forget gives the picture's memory back.
func (m *making) forget() {
	if m.image != "" {
		app.Window().Get("URL").Call("revokeObjectURL", m.image)
	}
	m.image = ""
}

// OnMount and OnUpdate have the part drawn when it has changed.
func (p *makePart) OnMount(ctx app.Context)  { ctx.Defer(p.refresh) }
func (p *makePart) OnUpdate(ctx app.Context) { ctx.Defer(p.refresh) }

// arm returns the side that is asked for.
func (m *making) arm() string {
	if m.side == "" {
		return "left"
	}
	return m.side
}

// refresh draws the selected car's arm, and then asks what it fits, unless both are known.
func (p *makePart) refresh(app.Context) {
	s, doc, car := p.State, p.Bench.document(), p.Bench.Desk.Selected()
	if car == nil || car.Err != nil {
		return
	}
	if s.of != doc || s.car != car.Name || s.shown != s.arm() {
		s.of, s.car, s.shown = doc, car.Name, s.arm()
		s.drawn.drop()
		p.draw(&s.drawn, "svg", func(_ app.Context, text string, err error) {
			s.forget()
			if s.fault = ""; err != nil {
				s.fault = plain(err)
				return
			}
			s.image = app.Window().Get("URL").Call("createObjectURL", blobOf(svgType, []byte(text))).String()
		})
		return
	}
	if !s.drawn.running() && (s.fitsOf != doc || s.fitsOfName != car.Name) {
		p.fit(doc, car)
	}
}

// draw has the arm drawn as a file of a kind.
func (p *makePart) draw(j *job, kind string, done func(ctx app.Context, text string, err error)) {
	o := arm.Options{Candidate: p.Bench.Desk.Selected().Name, As: kind, Side: p.State.arm()}
	j.start(p.Bench.Lasting, p.Bench.Caller, calls.Drawing, p.Bench.document(), o, func(ctx app.Context, raw json.RawMessage, err error) {
		file, err := answerOf[calls.File](raw, err)
		if err != nil {
			done(ctx, "", err)
			return
		}
		done(ctx, file.Text, nil)
	})
}

// save hands the user the drawing as a file.
func (p *makePart) save(kind string) {
	name := fileName(p.Bench.document().Name + " " + carName(p.Bench.Desk.Selected()) + " " + p.State.arm() + " arm")
	p.State.saved.drop()
	p.draw(&p.State.saved, kind, func(ctx app.Context, text string, err error) {
		if err != nil {
			p.Bench.Say(ctx, plain(err), nil)
			return
		}
		download(name+"."+kind, "application/octet-stream", []byte(text))
		p.Bench.Say(ctx, "The drawing is on its way to your downloads. "+caution, nil)
	})
}

// fit asks within which set-ups the part holds the limit.
func (p *makePart) fit(doc *study.Document, car *model.Car) {
	s := p.State
	s.fitsOf, s.fitsOfName = doc, car.Name
	limit := model.YieldOf(doc).Limit
	s.covers.drop()
	s.covers.start(p.Bench.Lasting, p.Bench.Caller, calls.Covers, doc, engine.CoversOptions{Candidate: car.Name, Limit: &limit}, func(_ app.Context, raw json.RawMessage, err error) {
		s.fits, err = answerOf[engine.CoversResult](raw, err)
		s.fitsFault = faultOf(err)
	})
}

// Render shows the drawing, its files, and what the part fits.
func (p *makePart) Render() app.UI {
	car, s := p.Bench.Desk.Selected(), p.State
	if car == nil || car.Err != nil {
		return app.Div()
	}
	return app.Section().Class("make-part no-print").Aria("label", "Part drawing").Body(
		app.Div().Class("make-bar").Body(
			badge(car.Index), app.Strong().Text(carName(car)),
			app.Span().Class("note").Text("dashed: the original hole"),
			app.Div().Class("segments").Role("group").Aria("label", "Arm").Body(p.sideButton("left"), p.sideButton("right")),
			app.Div().Class("segments").Role("group").Aria("label", "Files for the shop").Body(
				p.fileButton("dxf", "DXF"), p.fileButton("step", "STEP"), p.fileButton("svg", "SVG"),
			),
		),
		app.If(s.fault != "", func() app.UI { return app.P().Class("problem").Text(s.fault) }).
			ElseIf(s.image == "", func() app.UI { return app.P().Class("note").Aria("live", "polite").Text("The arm is being drawn.") }).
			Else(func() app.UI {
				return app.Figure().TabIndex(0).Aria("label", "Part drawing, scrolls").Body(app.Img().ID("part-drawing").Src(s.image).Alt("Drawing of the " + s.shown + " steering arm of " + carName(car) + " in three views, in mm at 1:1"))
			}),
		app.P().Class("note").Text("In mm at 1:1; places and axes of the part, not its shape. Print the SVG without scaling. The STEP file has named points and axes in the car's own axes."),
		p.covers(),
	)
}

func (p *makePart) sideButton(side string) app.UI {
	return pressed("arm-"+side, upperFirst(side)+" arm", p.State.arm() == side, func() { p.State.side = side })
}

func (p *makePart) fileButton(kind, text string) app.UI {
	return button(text, func(app.Context, app.Event) { p.save(kind) }).ID("save-" + kind).Disabled(p.State.fault != "")
}

// covers lists within which set-ups the part holds the limit.
func (p *makePart) covers() app.UI {
	s, n := p.State, p.Bench.numbers()
	if s.fitsFault != "" {
		return app.P().Class("problem").Text("What the part fits: " + s.fitsFault)
	}
	if s.fits == nil || s.covers.running() {
		return app.P().Class("note").Text("What the part fits is being found.")
	}
	list := p.Bench.Desk.Covered(s.fits)
	return app.Div().Body(
		app.H2().Text("What the part fits"),
		app.P().Class("note").Text("Within these the "+s.fits.Figure+" stays within "+n.Toe(s.fits.Limit)+" "+n.ToeMark()+", one at a time, everything else as it stands."),
		app.Table().Class("figures sheet-table").ID("covers").Body(
			app.THead().Body(app.Tr().Body(heads("", "Own", "From", "To", "Ends by")...)),
			app.TBody().Body(app.Range(list).Slice(func(i int) app.UI {
				c := list[i]
				return app.Tr().Body(app.Th().Scope("row").Text(c.Label), app.Td().Text(c.Own), app.Td().Text(c.Low), app.Td().Text(c.High), app.Td().Text(c.Ends))
			})),
		),
	)
}

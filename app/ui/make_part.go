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

	side  string  // of the files for the shop; left where empty
	step  float64 // that the shop works to, mm; the last decimal shown where 0
	of    *study.Document
	car   string
	shown float64 // step that is drawn
	image string  // address of the picture
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

// made returns the shop's step as calls take it, nil for the last decimal shown.
func (m *making) made(d *study.Document) *float64 {
	if m.step == 0 {
		return nil
	}
	return new(d.Units.FromMillimetres(m.step))
}

// svgKind is the kind of file that has both arms on one sheet.
const svgKind = "svg"

// refresh draws the selected car's arm, and then asks what it fits, unless both are known.
func (p *makePart) refresh(app.Context) {
	s, doc, car := p.State, p.Bench.document(), p.Bench.Desk.Selected()
	if car == nil || car.Err != nil {
		return
	}
	if s.of != doc || s.car != car.Name || s.shown != s.step {
		s.of, s.car, s.shown = doc, car.Name, s.step
		s.drawn.drop()
		p.draw(&s.drawn, svgKind, "", func(_ app.Context, text string, err error) {
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

// draw has the arm of a side drawn as a file of a kind, both where it is empty.
func (p *makePart) draw(j *job, kind, side string, done func(ctx app.Context, text string, err error)) {
	doc := p.Bench.document()
	o := arm.Options{Candidate: p.Bench.Desk.Selected().Name, As: kind, Side: side, Step: p.State.made(doc)}
	j.start(p.Bench.Lasting, p.Bench.Caller, calls.Drawing, doc, o, func(ctx app.Context, raw json.RawMessage, err error) {
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
	side, whose := p.State.arm(), p.State.arm()+" arm"
	if kind == svgKind {
		side, whose = "", "arms"
	}
	name := fileName(p.Bench.document().Name + " " + carName(p.Bench.Desk.Selected()) + " " + whose)
	p.State.saved.drop()
	p.draw(&p.State.saved, kind, side, func(ctx app.Context, text string, err error) {
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
	return app.Section().Class("make-part").Aria("label", "Part drawing").Body(
		app.Div().Class("make-bar no-print").Body(
			badge(car.Index), app.Strong().Text(carName(car)),
			app.Span().Class("note").Text("Files for the shop"),
			p.fileButton(svgKind, "Sheet (SVG)"),
			app.Div().Class("segments").Role("group").Aria("label", "Arm of the DXF and STEP files").Body(p.sideButton("left"), p.sideButton("right")),
			app.Div().Class("segments").Role("group").Aria("label", "Files of one arm").Body(p.fileButton("dxf", "DXF"), p.fileButton("step", "STEP")),
		),
		app.If(s.fault != "", func() app.UI { return app.P().Class("problem").Text(s.fault) }).
			ElseIf(s.image == "", func() app.UI { return app.P().Class("note").Aria("live", "polite").Text("The arms are being drawn.") }).
			Else(func() app.UI {
				return app.Figure().Class(p.paper()).TabIndex(0).Aria("label", "Part drawing, scrolls").Body(app.Img().ID("part-drawing").Src(s.image).Alt("Drawing of both steering arms of " + carName(car) + ", each in three views, with its sizes"))
			}),
		app.P().Class("note no-print").Text("Print without scaling. DXF is one arm at 1:1, STEP its named points and axes in the car's own axes."),
		p.stated(),
		p.covers(),
	)
}

// stated are the fields of what the maker states of the part.
func (p *makePart) stated() app.UI {
	d := p.Bench.document()
	list, lies := model.ArmValues(d), ""
	if d.Arm != nil {
		lies = d.Arm.Projection
	}
	return app.Details().Class("block no-print").Body(
		app.Summary().ID("arm-stated").Text("Stated by the maker: hole, material, numbers"),
		app.P().Class("note").Text("It stands in the title block, in DXF and STEP; what is left empty is a blank to fill in by hand. Revision and date are the study's, under its name. Nothing here moves the wheel, and none of it is checked for strength."),
		app.Div().Class("numbers").Body(app.Range(list).Slice(func(i int) app.UI { return p.Bench.value(&list[i]) })),
		menu("arm-projection", "Views", lies, []choice{{"", "third angle, not stated"}, {study.ThirdAngle, "third angle"}, {study.FirstAngle, "first angle"}}, func(ctx app.Context, key string) {
			p.Bench.edit(ctx, func() error { return p.Bench.session().SetProjection(key) })
		}),
	)
}

// paper is the class of the sheet's paper.
func (p *makePart) paper() string { return arm.UsualPaper(p.Bench.document()) }

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
		return app.P().Class("problem no-print").Text("What the part fits: " + s.fitsFault)
	}
	if s.fits == nil || s.covers.running() {
		return app.P().Class("note no-print").Text("What the part fits is being found.")
	}
	list := p.Bench.Desk.Covered(s.fits)
	return app.Div().Class("no-print").Body(
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

package ui

import (
	"fmt"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"toewright/app/model"
	"toewright/internal/study"
)

// commands lists what can be done from anywhere.
func (p *Panels) commands(b bench) []command {
	list := p.steps()
	list = append(list, []command{
		{"Save the study as a file", "Ctrl S", p.saveFile},
		{"New candidate from the base car", "", func(ctx app.Context) { b.edit(ctx, func() error { return p.Desk.Duplicate(0) }) }},
		{"Lengths in mm", "", func(ctx app.Context) { p.setLengths(ctx, b, study.Millimetre) }},
		{"Lengths in inches", "", func(ctx app.Context) { p.setLengths(ctx, b, study.Inch) }},
		{"Both wheels at ride height, straight ahead", "", func(ctx app.Context) {
			p.Desk.View.Level()
			p.Changed(ctx)
		}},
	}...)
	list = append(list, b.exports()...)
	for i, t := range tabs {
		list = append(list, command{"Open " + t.text, fmt.Sprintf("Alt %d", i+1), func(ctx app.Context) { p.show(ctx, t.key) }})
	}
	for _, car := range p.Desk.Session.Cars().List {
		list = append(list, command{"Select " + carName(car), "", func(ctx app.Context) { p.present(ctx, car) }})
	}
	return list
}

// steps lists the steps back and forward that there are.
func (p *Panels) steps() []command {
	var list []command
	if label := p.Desk.Session.CanUndo(); label != "" {
		list = append(list, command{"Undo " + label, "Ctrl Z", p.undo})
	}
	if label := p.Desk.Session.CanRedo(); label != "" {
		list = append(list, command{"Redo " + label, "Ctrl Y", p.redo})
	}
	return list
}

func (p *Panels) present(ctx app.Context, car *model.Car) {
	p.Desk.Select(car.Index)
	p.show(ctx, tabs[0].key)
	p.Changed(ctx)
}

func (p *Panels) setLengths(ctx app.Context, b bench, u study.Units) {
	b.edit(ctx, func() error {
		return p.Desk.Session.SetDisplay("units", func(v *study.Display) { v.Units, v.Fraction = u, false })
	})
}

// saveFile hands the user the study as a file.
func (p *Panels) saveFile(ctx app.Context) {
	d := p.Desk.Session.Document()
	text, err := study.Encode(d)
	if err != nil {
		p.say(ctx, plain(err), nil)
		return
	}
	download(fileName(d.Name)+".json", "application/json", text)
	p.say(ctx, "The file is on its way to your downloads. "+caution, nil)
}

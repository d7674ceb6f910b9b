package ui

import (
	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"toewright/app/model"
	"toewright/internal/study"
	"toewright/solver"
)

// commands lists what can be done from anywhere.
func (p *Panels) commands(b bench) []command {
	list := p.backAndForth()
	list = append(list, p.carCommands(b)...)
	list = append(list, p.viewCommands()...)
	list = append(list, p.unitCommands(b)...)
	list = append(list,
		command{"Show before and after, on the whole screen", "", p.showCars},
		command{"Save the study as a file", "Ctrl S", p.saveFile},
		command{"Print", "Ctrl P", func(app.Context) { app.Window().Call("print") }},
		command{"Keys of this page", "?", p.cover(keymapOver)},
	)
	list = append(list, b.exports()...)
	list = append(list, p.openings()...)
	for _, t := range study.Templates() {
		list = append(list, command{"New study of a car like: " + t.Title, "", func(ctx app.Context) { p.Kept.put(ctx, p, t.Start()) }})
	}
	return list
}

// openings open the steps and their ways, and the study's menu.
func (p *Panels) openings() []command {
	opens := func(key string) func(app.Context) { return func(ctx app.Context) { p.show(ctx, key) } }
	var list []command
	for i, s := range steps {
		list = append(list, command{"Open " + s.text, stepKey(i), opens(s.key)})
		for _, w := range s.ways {
			list = append(list, command{"Open " + s.text + ": " + w.text, "", opens(w.key)})
		}
	}
	return append(list, command{"Studies, files and links", "", func(app.Context) { p.menu = "study-menu" }})
}

// backAndForth lists the steps back and forward that there are.
func (p *Panels) backAndForth() []command {
	var list []command
	if label := p.Desk.Session.CanUndo(); label != "" {
		list = append(list, command{"Undo " + label, "Ctrl Z", p.undo})
	}
	if label := p.Desk.Session.CanRedo(); label != "" {
		list = append(list, command{"Redo " + label, "Ctrl Y", p.redo})
	}
	return list
}

// carCommands select cars, and do with the selected one what its card does.
func (p *Panels) carCommands(b bench) []command {
	edit := func(do func() error) func(app.Context) { return func(ctx app.Context) { b.edit(ctx, do) } }
	list := []command{{"New candidate from the base car", "", edit(func() error { return p.Desk.Duplicate(0) })}}
	if car := p.Desk.Selected(); car != nil && car.Index > 0 {
		i, hide := car.Index, "Hide "
		if car.Hidden {
			hide = "Show "
		}
		list = append(list,
			command{"Duplicate " + car.Name, "", edit(func() error { return p.Desk.Duplicate(i) })},
			command{hide + car.Name, "", edit(func() error { return p.Desk.Session.Hide(i, !car.Hidden) })},
			command{"Compare with " + car.Name, "", edit(func() error { return p.Desk.SetYardstick(i) })},
			command{"Delete " + car.Name, "", func(ctx app.Context) {
				b.undoable(ctx, car.Name+" is deleted.", func() error { return p.Desk.Delete(i) })
			}},
		)
	}
	for _, car := range p.Desk.Session.Cars().List {
		list = append(list, command{"Select " + carName(car), "", func(ctx app.Context) { p.present(ctx, car) }})
	}
	return list
}

// present selects a car and shows its card.
func (p *Panels) present(ctx app.Context, car *model.Car) {
	p.Desk.Select(car.Index)
	p.show(ctx, "compare")
	p.Changed(ctx)
}

// viewCommands change what the drawing shows.
func (p *Panels) viewCommands() []command {
	v := &p.Desk.View
	set := func(change func()) func(app.Context) {
		return func(ctx app.Context) {
			change()
			p.Changed(ctx)
		}
	}
	return []command{
		{"Both wheels at ride height, straight ahead", "", set(v.Level)},
		{"Move both wheels together", "", set(func() { v.Move(solver.BothWheels) })},
		{"Move the wheels in roll", "", set(func() { v.Move(solver.RollMotion) })},
		{"Move the left wheel alone", "", set(func() { v.Move(solver.LeftWheel) })},
		{"Move the right wheel alone", "", set(func() { v.Move(solver.RightWheel) })},
		{"Show from any side (3D), or no longer", "", set(v.Turn)},
		{"Show the roll centre, or no longer", "", set(func() { v.Instant = !v.Instant })},
		{"Zoom the toe scale to the selected car, or to all", "", set(func() { v.Zoomed = !v.Zoomed })},
		{"Show the chart of the other wheel, where there is one alone", "", set(v.OtherSide)},
		{"Show the selected car's curve alone, or all", "", set(func() { v.Alone = !v.Alone })},
	}
}

// unitCommands change how numbers are written.
func (p *Panels) unitCommands(b bench) []command {
	set := func(change func(*study.Display)) func(app.Context) {
		return func(ctx app.Context) {
			b.edit(ctx, func() error { return p.Desk.Session.SetDisplay("units", change) })
		}
	}
	lengths := func(name, style string) command {
		return command{name, "", set(func(v *study.Display) { showLengths(v, style) })}
	}
	return []command{
		lengths("Lengths in mm", "mm"),
		lengths("Lengths in inches", "in"),
		lengths("Lengths in inches and 1/16", "in16"),
		lengths("Lengths in inches and 1/32", "in32"),
		lengths("Lengths in inches and 1/64", "in64"),
		{"Toe in degrees", "", set(func(v *study.Display) { v.Toe = "degrees" })},
		{"Toe as two indicators read it", "", set(func(v *study.Display) { v.Toe = "indicators" })},
		{"Toe as a plate reads it", "", set(func(v *study.Display) { v.Toe = "plate" })},
	}
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

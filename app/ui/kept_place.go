package ui

import (
	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"toewright/app/model"
	"toewright/app/store"
)

// note notes what is looked at, if that is not noted already. What finds no room is
// looked up again by the reader.
func (k *kept) note(p *Panels) {
	if !k.begun {
		return // what was noted before is still to be read
	}
	at := store.Place{Study: k.keeper.ID(), Panel: p.at.key(), Order: p.comparing.order.String()}
	if car := p.Desk.Selected(); car != nil {
		at.Car = car.Name
	}
	if at != k.place && k.store.SetPlace(at) == nil {
		k.place = at
	}
}

// backTo goes back to what was looked at before the page was left: the panel and, in the
// same study, the car.
func (k *kept) backTo(ctx app.Context, p *Panels) {
	at := k.store.Place()
	k.place = at
	p.open(at.Panel)
	if at.Study == k.keeper.ID() {
		p.comparing.order = model.ParseCompareOrder(at.Order)
		p.choose(ctx, at.Car)
	}
}

// choose selects the car of a name, if there is one.
func (p *Panels) choose(ctx app.Context, name string) {
	for _, car := range p.Desk.Session.Cars().List {
		if car.Name == name {
			p.Desk.Select(car.Index)
			p.Changed(ctx)
		}
	}
}

// draft is what is being typed, and the study beside which it is.
type draft struct {
	study store.ID
	text  string
}

// noteDraft keeps the row of readings and the fields that are being typed. What finds no room is typed
// again by the reader, who has it before the eyes.
func (k *kept) noteDraft(p *Panels) {
	if !k.begun {
		return // what was being typed before is still to be read
	}
	now := draft{k.keeper.ID(), draftText{p.reading.keypad.Draft(), halfTyped.texts}.String()}
	if now != k.draft && k.store.SetDraft(now.study, now.text) == nil {
		k.draft = now
		k.copying.flush(p.lasting)
	}
}

// noteHabits keeps how the reader works. What finds no room is chosen again.
func (k *kept) noteHabits(h store.Habits) { _ = k.store.SetHabits(h) }

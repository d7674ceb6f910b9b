package ui

import (
	"toewright/app/model"
	"toewright/internal/study"
)

// work is what the panels have under way or have found, all of it of the open study. It
// outlives the panels.
type work struct {
	pointing  pointing
	asking    asking
	finding   finding
	forging   forging
	measuring measuring
	shelving  shelving
	mapping   mapping
	trading   trading
	sheeting  sheeting
	reading   reading
	comparing comparing
	whying    whying
	making    making
	taping    taping
}

// drop lets go of all of it: answers that are still to come come to nothing.
func (w *work) drop() {
	for _, j := range []*job{&w.asking.check.job, &w.finding.job, &w.forging.job, &w.measuring.job, &w.shelving.job, &w.sheeting.job, &w.sheeting.page, &w.reading.fit.job, &w.trading.job, &w.whying.job, &w.taping.job, &w.taping.page} {
		j.drop()
	}
	habits := w.reading.habits
	w.comparing.stop()
	w.making.drop()
	w.mapping.x, w.mapping.y = "", ""
	*w = work{mapping: w.mapping} // the map follows the desk by itself
	w.reading.work(habits)
	halfTyped.find(nil)
}

// lay puts another study on the desk, with nothing left of the one before.
func (p *Panels) lay(d *study.Document) {
	p.Kept.theirs, p.telling = nil, false
	p.drop()
	p.Desk.Open(d)
	takenOver++
}

// resume goes on with the row of readings and the fields that were being typed when the
// study was left, unless others are typed already.
func (p *Panels) resume() {
	left := parseDraft(p.Kept.store.Draft(p.Kept.keeper.ID()))
	if p.reading.keypad.Draft() == "" {
		p.reading.keypad = model.ParseKeypad(left.Row)
	}
	if len(halfTyped.texts) == 0 {
		halfTyped.find(left.Fields)
	}
	p.reading.habits = p.Kept.store.Habits()
	p.reading.keypad.Fine = p.reading.habits.Fine
}

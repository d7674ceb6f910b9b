package ui

import (
	"cmp"
	"fmt"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"toewright/internal/study"
)

// offer says that another tab has saved the study since, and offers both ways on.
// Whichever is taken, both are kept.
func (k *kept) offer(p *Panels) app.UI {
	r := k.theirs
	if r == nil {
		return nothing()
	}
	return app.Div().ID("theirs").Class("banner").Role("alert").Body(
		app.P().Text(fmt.Sprintf("Another tab has saved this study since: revision %d at %s, %s. What you see here is the one before it.",
			r.Version.Number, r.Saved.Local().Format("15:04"), cmp.Or(r.Label, "opened"))),
		app.Div().Class("deeds").Body(
			button("Go on with theirs", func(ctx app.Context, _ app.Event) { k.take(ctx, p) }).ID("take-theirs"),
			button("Keep this one apart", func(ctx app.Context, _ app.Event) { k.apart(ctx, p) }).ID("keep-apart"),
		),
	)
}

// take opens what the other tab saved. What was changed here and is not saved yet is
// kept as a study of its own first.
func (k *kept) take(ctx app.Context, p *Panels) {
	id, at := k.keeper.ID(), k.place.Car
	k.save(ctx, p)
	if err := k.open(ctx, p, id); err != nil {
		p.say(ctx, plain(err), nil)
		return
	}
	p.choose(ctx, at)
}

// apart makes what is open here a study of its own.
func (k *kept) apart(ctx app.Context, p *Panels) {
	s := p.Desk.Session
	err := s.Edit("keep apart", "", func(d *study.Document) { d.Name = cmp.Or(d.Name, "study") + " (kept apart)" })
	if err == nil {
		err = k.keeper.Apart(s.Document(), "kept apart")
	}
	if err != nil {
		p.say(ctx, plain(err), nil)
		return
	}
	k.theirs = nil
	p.say(ctx, "This is a study of its own now. The other one is in the study's menu, as the other tab saved it.", nil)
	p.Changed(ctx)
}

package ui

import (
	"time"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"toewright/app/model"
	"toewright/app/store"
	"toewright/internal/study"
)

// kept keeps the open study in the browser.
type kept struct {
	store  *store.Store
	keeper *store.Keeper

	pending bool            // a save is on its way
	fault   string          // why the study is not kept
	theirs  *store.Revision // that another tab has saved since; nil for none
	place   store.Place     // as it was noted last
	deaf    []func()
	copying copying
	begun   bool // the study to begin with is open
	asked   bool // the browser, not to remove what is kept
	lasts   bool // it has promised that

	draft draft  // as it was kept last
	drawn opened // first, if it was one that is kept
}

// opened is a study of the store that is opened.
type opened struct {
	id     store.ID
	at     store.Version
	notice string // what is to be said of it
}

// saveDelay is the time from an edit to its save: a drag is one save, not hundreds.
const saveDelay = 400 * time.Millisecond

// start opens what the link brings or, without one, the study that was open last.
func (k *kept) start(ctx app.Context, p *Panels) {
	k.listen(ctx, p)
	halfTyped.note = func() { k.noteDraft(p) }
	k.copying.recover(ctx, p, func(ctx app.Context) { k.begin(ctx, p) })
}

// begin opens the study to begin with, unless the reader was faster.
func (k *kept) begin(ctx app.Context, p *Panels) {
	k.begun = true
	if k.drawn.id != "" && k.keeper.ID() == k.drawn.id {
		k.goOn(ctx, p)
		return
	}
	if k.keeper.ID() != "" || k.edited(p) {
		return
	}
	if !k.openLink(ctx, p) {
		k.openLast(ctx, p)
		p.resume()
		k.backTo(ctx, p)
		p.telling = k.keeper.ID() == ""
	}
}

// listen saves before the page is left and hears of the saves of other tabs.
func (k *kept) listen(ctx app.Context, p *Panels) {
	on := func(event string, do func(app.Context)) {
		k.deaf = append(k.deaf, listen(event, func(app.Value) { ctx.Dispatch(do) }))
	}
	on("pagehide", func(ctx app.Context) { k.save(ctx, p) })
	on("visibilitychange", func(ctx app.Context) { k.save(ctx, p) })
	on("hashchange", func(ctx app.Context) { k.openLink(ctx, p) })
	on("storage", func(app.Context) { k.theirs = k.keeper.Theirs() })
	on(updateEvent, func(app.Context) { p.host.look() })
	on(installEvent, func(app.Context) { p.host.look() })
	p.host.look()
}

// stop lets go of the window.
func (k *kept) stop() {
	for _, f := range k.deaf {
		f()
	}
	k.deaf = nil
}

// openLink opens the study that the page's address carries. What was open before stays
// kept as it is.
func (k *kept) openLink(ctx app.Context, p *Panels) bool {
	fragment := ctx.Page().URL().Fragment
	if !store.IsLink(fragment) {
		return false
	}
	d, err := store.ParseLink(fragment)
	if err != nil {
		forgetFragment()
		p.say(ctx, plain(err), nil)
		return false
	}
	k.put(ctx, p, d)
	if k.fault == "" {
		forgetFragment() // a study that is not kept comes back by its link alone
		p.say(ctx, "The study of the link is open. Your own are in the study's menu.", nil)
	}
	return true
}

// openLast opens the study that was open last. Where it cannot be opened it is left
// alone and the demo stays.
func (k *kept) openLast(ctx app.Context, p *Panels) {
	id := k.store.Current()
	if id == "" {
		return
	}
	k.tell(ctx, p, k.open(ctx, p, id))
}

// reopen opens the study that is open again, as the store has it now.
func (k *kept) reopen(ctx app.Context, p *Panels) { k.tell(ctx, p, k.open(ctx, p, k.keeper.ID())) }

// tell says why the study that was open last could not be opened, if it could not.
func (k *kept) tell(ctx app.Context, p *Panels, err error) {
	if err != nil {
		p.say(ctx, "The study that was open last stays closed: "+plain(err), nil)
	}
}

// open opens a study of the store.
func (k *kept) open(ctx app.Context, p *Panels, id store.ID) error {
	l, err := k.keeper.Open(id)
	if err != nil {
		return err
	}
	k.fault = ""
	p.lay(l.Document)
	p.resume()
	k.recall(p, l.Version)
	if l.Notice != "" {
		p.say(ctx, l.Notice, nil)
	}
	p.Changed(ctx)
	return nil
}

// put opens a study that the store does not have, and keeps it from now on.
func (k *kept) put(ctx app.Context, p *Panels, d *study.Document) {
	k.save(ctx, p)
	k.keeper.Start()
	p.lay(d)
	k.keep(ctx, p)
	p.Changed(ctx)
}

// later saves the study soon, if it was edited.
func (k *kept) later(p *Panels) {
	k.note(p)
	k.noteDraft(p)
	k.copying.flush(p.lasting)
	if k.pending || p.Desk.Moving || !k.edited(p) {
		return
	}
	k.pending = true
	p.after(saveDelay, func(ctx app.Context) { k.save(ctx, p) })
}

// edited reports whether there is anything to keep: a demo that nobody has touched is
// not.
func (k *kept) edited(p *Panels) bool { return k.keeper.Unsaved(p.Desk.Session.Document()) }

// save keeps the study now, if it is not kept already.
func (k *kept) save(ctx app.Context, p *Panels) {
	k.pending = false
	if !k.edited(p) {
		k.copying.flush(p.lasting)
		return
	}
	demo := k.keeper.ID() == ""
	k.keep(ctx, p)
	if demo && k.fault == "" {
		_ = k.store.SetDraft("", "") // it goes along with the study, which is kept now
	}
	k.noteDraft(p)
}

// keep keeps the study as it stands.
func (k *kept) keep(ctx app.Context, p *Panels) {
	notice, err := k.keeper.Save(p.Desk.Session.Document(), label(p.Desk.Session.Made()))
	k.fail(ctx, p, err)
	k.copying.flush(p.lasting)
	if err == nil && !k.asked {
		k.asked = true
		k.promise(p.lasting, true)
	}
	if notice != "" {
		k.theirs = nil
		p.say(ctx, notice, nil)
	}
}

// promise hears from the browser whether it has promised not to remove what is kept. Some ask
// the reader before they do, so it is asked for only once a study of the reader's own is kept.
func (k *kept) promise(ctx app.Context, ask bool) {
	if boot := app.Window().Get("toewright"); boot.Truthy() {
		await(ctx, boot.Call("lasting", ask), func(_ app.Context, v app.Value, ok bool) { k.lasts = ok && v.Truthy() })
	}
}

// lasting says how long studies stay in the browser.
func (k *kept) lasting() string {
	if k.lasts {
		return "Studies are kept in this browser on this device; it has promised not to remove them by itself."
	}
	return "Studies are kept in this browser on this device; it may remove them when it is short of room, or after weeks without a visit."
}

// label returns what a revision is called that a step has made.
func label(made model.Step) string {
	switch made.Way {
	case model.Undone:
		return store.Undone(made.Label)
	case model.Redone:
		return store.Redone(made.Label)
	}
	return made.Label
}

// fail notes why the study could not be kept, nil if it was, and says so once.
func (k *kept) fail(ctx app.Context, p *Panels, err error) {
	before := k.fault
	k.fault = ""
	if err != nil {
		k.fault = plain(err)
	}
	if k.fault != "" && k.fault != before {
		p.say(ctx, "Not kept: "+k.fault+".", nil)
	}
}

// state says in a word or two whether the study is kept: saved is what would be there if
// the browser were killed now.
func (k *kept) state(p *Panels) string {
	switch {
	case k.fault != "":
		return "not kept"
	case k.edited(p) || k.copying.writing > 0:
		return "saving"
	case k.keeper.ID() == "":
		return "demo, not kept yet"
	}
	return "saved"
}

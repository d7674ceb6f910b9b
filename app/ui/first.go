package ui

import (
	"cmp"
	"time"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"toewright/app/demo"
	"toewright/app/model"
	"toewright/app/store"
	"toewright/internal/study"
)

// keepIn returns what keeps a study in a storage, which may have a copy.
func keepIn(storage store.Storage, copy store.Copy) *kept {
	k := new(kept)
	k.store = store.Open(k.copying.of(storage, copy), time.Now, browserRandom())
	k.store.InTab(browserTab())
	k.keeper = store.NewKeeper(k.store)
	return k
}

// first returns the study that is drawn first: the one that was open last, so that no
// other shows before it, or else the demo. What is to be said of it is said once the
// panels are there; see [kept.begin].
func (k *kept) first() *study.Document {
	if id := k.store.Current(); id != "" {
		if l, err := k.keeper.Open(id); err == nil {
			k.drawn = opened{id, l.Version, l.Notice}
			return l.Document
		}
	}
	d := demo.Document()
	k.keeper.Spare(d)
	return d
}

// goOn goes on with the study that was drawn first, or with what the copy on disk has
// brought back of it since.
func (k *kept) goOn(ctx app.Context, p *Panels) {
	if k.openLink(ctx, p) {
		return
	}
	if k.keeper.Overtaken() && !k.edited(p) {
		k.reopen(ctx, p)
	} else {
		k.theirs = k.keeper.Theirs()
		k.recall(p, k.drawn.at)
		p.resume()
		if k.drawn.notice != "" {
			p.say(ctx, k.drawn.notice, nil)
		}
	}
	k.backTo(ctx, p)
}

// recall makes the edits that led to a version of the open study ones that can be undone, as
// if the page had never been left.
func (k *kept) recall(p *Panels, v store.Version) {
	id := k.keeper.ID()
	steps, err := k.store.Steps(id, v)
	if err != nil {
		return // what was done stands in the history all the same
	}
	earlier := make([]model.Earlier, len(steps))
	for i, step := range steps {
		earlier[i] = model.Earlier{Label: cmp.Or(step.Label, "edit"), Read: func() (*study.Document, error) { return k.store.LoadRevision(id, step.Before) }}
	}
	p.Desk.Session.Recall(earlier)
}

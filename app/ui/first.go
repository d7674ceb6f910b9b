package ui

import (
	"time"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"toewright/app/demo"
	"toewright/app/store"
	"toewright/internal/study"
)

// keepIn returns what keeps a study in a storage, which may have a copy.
func keepIn(storage store.Storage, copy store.Copy) *kept {
	k := new(kept)
	k.store = store.Open(k.copying.of(storage, copy), time.Now, browserRandom())
	k.keeper = store.NewKeeper(k.store)
	return k
}

// first returns the study that is drawn first: the one that was open last, so that no
// other shows before it, or else the demo. What is to be said of it is said once the
// panels are there; see [kept.begin].
func (k *kept) first() *study.Document {
	id := k.store.Current()
	if id == "" {
		return demo.Document()
	}
	l, err := k.keeper.Open(id)
	if err != nil {
		k.keeper = store.NewKeeper(k.store)
		return demo.Document()
	}
	k.drawn, k.notice = id, l.Notice
	return l.Document
}

// goOn goes on with the study that was drawn first, or with what the copy on disk has
// brought back of it since.
func (k *kept) goOn(ctx app.Context, p *Panels) {
	switch {
	case k.openLink(ctx, p):
		return
	case k.keeper.Overtaken() && !k.edited(p):
		k.reopen(ctx, p)
	case k.keeper.Overtaken():
		k.theirs = k.keeper.Theirs()
	case k.notice != "":
		p.say(ctx, k.notice, nil)
	}
	k.backTo(ctx, p)
}

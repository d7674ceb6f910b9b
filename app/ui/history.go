package ui

import (
	"cmp"
	"fmt"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"toewright/app/store"
	"toewright/internal/number"
)

// history lists the revisions of the open study.
type history struct {
	app.Compo
	Bench  bench
	Panels *Panels
}

// Render shows the revisions, the latest first.
func (h *history) Render() app.UI {
	k := h.Panels.Kept
	if k.keeper.ID() == "" {
		return app.Div()
	}
	list, err := k.store.History(k.keeper.ID())
	if err != nil {
		return app.P().Class("problem").Text(plain(err))
	}
	return app.Details().Class("block").Body(
		app.Summary().ID("history").Text("History ("+number.Count(len(list), "revision")+")"),
		app.P().Class("note").Text(fmt.Sprintf("The last %d saves. Going back is a step of its own, which can be undone.", store.History)),
		app.Ol().Class("plain").Body(app.Range(list).Slice(func(i int) app.UI { return h.row(list[i]) })),
	)
}

func (h *history) row(r *store.Revision) app.UI {
	id := h.Panels.Kept.keeper.ID()
	if r.Problem != nil {
		return app.Li().Class("problem").Text(fmt.Sprintf("Revision %d: %s", r.Version.Number, plain(r.Problem)))
	}
	return app.Li().Class("study").Body(
		app.Span().Text(fmt.Sprintf("%d, %s: %s", r.Version.Number, r.Saved.Local().Format("2 Jan 15:04:05"), cmp.Or(r.Label, "opened"))),
		button("Go back to it", func(ctx app.Context, _ app.Event) { h.back(ctx, id, r.Version) }, r.Version.String()).
			Disabled(r.Version == h.Panels.Kept.keeper.Version()),
	)
}

// back makes an earlier revision the open study, as an edit.
func (h *history) back(ctx app.Context, id store.ID, v store.Version) {
	d, err := h.Panels.Kept.store.LoadRevision(id, v)
	if err != nil {
		h.Bench.Say(ctx, plain(err), nil)
		return
	}
	h.Bench.undoable(ctx, fmt.Sprintf("The study is as it was in revision %d.", v.Number), func() error {
		takenOver++
		h.Bench.session().Replace(fmt.Sprintf("go back to revision %d", v.Number), d)
		return nil
	})
}

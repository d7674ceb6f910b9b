package ui

import (
	"strings"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"toewright/internal/study"
)

// slip shows one finding with what it is about, where that does not stand beside it, the way
// there, and the repairs that one press makes.
func (b bench) slip(f study.Finding, place bool, way app.UI) app.UI {
	mends := study.MendsOf(b.document(), f)
	return app.Li().Class(string(f.Severity)).Body(
		app.Text(slipText(f, place)+" "),
		way,
		app.Range(mends).Slice(func(i int) app.UI { return b.mend(f, &mends[i], i) }),
	)
}

// slipText says what a finding is in the words of the page.
func slipText(f study.Finding, place bool) string {
	text := study.Spoken(f.Message)
	if place {
		text = sentence(study.SpokenPath(f.Path)) // begins with a capital
		text = strings.TrimSuffix(text, ".") + ": " + study.Spoken(f.Message)
	}
	if f.Suggestion != "" {
		text += "; " + study.Spoken(f.Suggestion)
	}
	return text
}

// mend is the button of a repair.
func (b bench) mend(f study.Finding, m *study.Mend, i int) app.UI {
	place := study.SpokenPath(f.Path)
	return button(m.Label, func(ctx app.Context, _ app.Event) {
		b.undoable(ctx, sentence("mended, "+place+": "+strings.ToLower(m.Label[:1])+m.Label[1:]), func() error {
			return b.session().Edit("mend "+place, "", m.Apply)
		})
	}, f.Path, i).Class("mend")
}

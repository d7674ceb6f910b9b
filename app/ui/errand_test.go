package ui

import (
	"errors"
	"testing"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"toewright/app/store"
	"toewright/internal/calls"
	"toewright/internal/study"
)

// TestAnswerIsOfTheStudyAsSent changes the search while designs are weighed: the answer
// is of the study before, and says so.
func TestAnswerIsOfTheStudyAsSent(t *testing.T) {
	s := onStage(t, store.Memory{}, "tradeoff")
	p := s.panels
	f := &trade{Bench: p.bench(), State: &p.trading, Asked: p.question(p.bench(), false)}
	s.do(func(ctx app.Context) {
		f.start(ctx, app.Event{})
		if err := s.desk.Session.EditSearch("step", "", func(f *study.Search) { f.Window.Step *= 2 }); err != nil {
			t.Error(err)
		}
	})
	if e := &p.trading; e.result == nil || e.of.Search == s.desk.Session.Document().Search {
		t.Fatalf("the answer %v is of the study as changed; %s", e.result, e.fault)
	}
	s.do(func(ctx app.Context) { p.show(ctx, "tradeoff") })
	s.shows(t, "Weighed before the last changes")
}

// TestErrandTellsWhatWentWrong starts errands that fail, each after one that left a
// result: the result goes, and what went wrong is told.
func TestErrandTellsWhatWentWrong(t *testing.T) {
	s := onStage(t, store.Memory{}, "series")
	type answer struct{ Cars string } // the result's cars are a number
	old := &answer{"old"}
	for what, fail := range map[string]func(*errand[answer]){
		"a method that there is not": func(e *errand[answer]) { e.start(s.panels.bench(), "nothing", nil, nil, nil) },
		"an answer of another shape": func(e *errand[answer]) {
			e.start(s.panels.bench(), calls.Tolerance, s.desk.Session.Document(), nil, nil)
		},
		"a refusal": func(e *errand[answer]) { e.refuse(errors.New("not yet")) },
	} {
		e := errand[answer]{result: old}
		s.do(func(app.Context) { fail(&e) })
		if e.result != nil || e.fault == "" || e.job.running() {
			t.Errorf("%s: result %v, %q is told", what, e.result, e.fault)
		}
	}
}

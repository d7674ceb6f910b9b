package ui

import (
	"strings"
	"testing"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"toewright/app/model"
	"toewright/app/worker"
	"toewright/internal/study"
	"toewright/wasm"
)

// whyStage shows why a car's toe changes, without a browser.
type whyStage struct {
	app.Compo
	why    *why
	ctx    app.Context
	engine app.TestEngine
	said   string
}

func (s *whyStage) OnPreRender(ctx app.Context) { s.ctx, s.why.Bench.Lasting = ctx, ctx }

func (s *whyStage) Render() app.UI { return app.Div().Body(s.why) }

// onWhyStage explains the car of a study that is selected at first.
func onWhyStage(t *testing.T, doc *study.Document) *whyStage {
	t.Helper()
	pool := wasm.NewLocalPool(1, worker.Handlers())
	t.Cleanup(pool.Close)
	s := &whyStage{engine: app.NewTestEngine()}
	s.why = &why{State: &whying{}, Bench: bench{Desk: model.NewDesk(doc), Caller: worker.Team{Pool: pool}, Changed: func(app.Context) {},
		Say: func(_ app.Context, text string, _ func(app.Context)) { s.said = text }}}
	s.why.Bench.Desk.Select(0)
	if err := s.engine.Load(s); err != nil {
		t.Fatal(err)
	}
	s.do(func(app.Context) {})
	return s
}

// do does something on the page's goroutine, has the car explained and lets all that
// follows happen.
func (s *whyStage) do(f func(app.Context)) {
	s.engine.ConsumeAll()
	s.ctx.Dispatch(f)
	s.ctx.Dispatch(s.why.refresh)
	s.engine.ConsumeAll()
}

func (s *whyStage) shows(t *testing.T, texts ...string) {
	t.Helper()
	html := app.HTMLString(s.why.Render())
	for _, text := range texts {
		if !strings.Contains(html, text) {
			t.Errorf("%q is not shown in %s", text, html)
		}
	}
}

// TestTryIt reads why the demo's base car toes as it does, and makes a candidate of the move.
func TestTryIt(t *testing.T) {
	s := onWhyStage(t, study.Template{Key: "double-wishbone-rack"}.Document())
	s.shows(t, "Why toe changes", "Slope, 99.1 %.", "Outer ball too high by 12.01 mm.", "0.901 → ", "0.031", "A stack of 12 mm", "mean square", "each wheel", "Try it")
	cars := len(s.why.Bench.Desk.Session.Cars().List)
	e := s.why.Bench.Desk.Explained(s.why.State.result)
	s.do(func(ctx app.Context) { s.why.try(ctx, &e.Sides[0].Causes[0]) })
	car := s.why.Bench.Desk.Selected()
	if car.Index != cars || car.Name != "Outer ball 12 mm lower" || car.Changes["tieRodOuterHeight"] != -12 {
		t.Errorf("selected %q, car %d, with %v; want a new one with the ball 12 mm lower", car.Name, car.Index, car.Changes)
	}
	if s.said != "Made and selected: Outer ball 12 mm lower." {
		t.Errorf("said %q, want the candidate's name", s.said)
	}
	s.shows(t, "peak 0.031, band ± 0.100.", "What is left: curvature.", "Tie rod too long: inner ball belongs 5.82 mm outboard")
}

// TestWhyWaitsForTheHand explains nothing while a hand moves the car, and at once when it
// rests.
func TestWhyWaitsForTheHand(t *testing.T) {
	s := onWhyStage(t, study.Template{Key: "double-wishbone-rack"}.Document())
	was := s.why.State.result
	s.do(func(app.Context) {
		s.why.Bench.Desk.Moving = true
		if err := s.why.Bench.Desk.Set("tieRodOuterHeight", -3, "drag"); err != nil {
			t.Error(err)
		}
	})
	if s.why.State.result != was {
		t.Error("the car was explained while a hand moved it")
	}
	s.shows(t, "stale")
	s.do(func(app.Context) { s.why.Bench.Desk.Moving = false })
	if s.why.State.result == was || s.why.State.result.Candidate != "candidate" {
		t.Errorf("%+v, want the moved car explained once the hand rests", s.why.State.result)
	}
}

// TestTryItWithoutRoom tells that there are as many candidates as there can be.
func TestTryItWithoutRoom(t *testing.T) {
	s := onWhyStage(t, study.Template{Key: "double-wishbone-rack"}.Document())
	e := s.why.Bench.Desk.Explained(s.why.State.result)
	for range model.MaxCandidates + 1 {
		s.do(func(ctx app.Context) { s.why.try(ctx, &e.Sides[0].Causes[0]) })
	}
	if !strings.Contains(s.said, "delete one") {
		t.Errorf("said %q, want that there is no room", s.said)
	}
}

package ui

import (
	"html"
	"strings"
	"testing"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"toewright/app/model"
	"toewright/app/store"
	"toewright/internal/study"
)

// TestEveryPanelShows opens each panel on the demo and on a car that cannot be solved.
func TestEveryPanelShows(t *testing.T) {
	for _, key := range []string{"car", "tape", "readings", "search", "map", "tradeoff", "parts", "compare", "sheet", "series", "study"} {
		t.Run(key, func(t *testing.T) {
			s := onStage(t, store.Memory{}, key)
			if len(s.text()) < 1000 {
				t.Errorf("the panel shows no more than %s", s.text())
			}
			s.do(func(ctx app.Context) {
				s.desk.Session.Edit("break", "", func(d *study.Document) {
					d.Suspension.Left.Points["upperBallJoint"] = d.Suspension.Left.Points["lowerBallJoint"]
				})
			})
			if s.desk.Session.Cars().Err == nil && s.desk.Session.Cars().Base().Err == nil {
				t.Fatal("the car can still be solved")
			}
			s.shows(t, "Undo break")
		})
	}
}

// TestPointsAreExplained picks each point of each template and reads what it is.
func TestPointsAreExplained(t *testing.T) {
	for _, template := range study.Templates() {
		desk := model.NewDesk(template.Document())
		g := pointGrid{Bench: bench{Desk: desk}, State: &pointing{}}
		for _, p := range g.rows() {
			about := model.AboutPoint(p.Name)
			if text := html.UnescapeString(app.HTMLString(g.about(&p))); about == "" || !strings.Contains(text, about) {
				t.Errorf("%s: what %s is is not shown", template.Key, p.Name)
			}
		}
	}
}

// TestFindOnStage runs the search of the demo and finds its numbers in the panel.
func TestFindOnStage(t *testing.T) {
	s := onStage(t, store.Memory{}, "search")
	f := &find{Bench: s.panels.bench(), State: &s.panels.finding, Asked: s.panels.question(s.panels.bench(), true)}
	s.do(func(ctx app.Context) { f.start(ctx, app.Event{}) })
	if s.panels.finding.fault != "" {
		t.Fatal(s.panels.finding.fault)
	}
	s.shows(t, "found", "RMS toe change", "nothing better lies within them", `id="show-found"`, `id="compare-found"`, "Find again")
	car := s.desk.Selected()
	if car.Name != "found" || !(car.Figures[0].RMS < s.desk.Session.Cars().Base().Figures[0].RMS) {
		t.Errorf("selected %s with RMS %v, want the one found, better than the base car", car.Name, car.Figures[0].RMS)
	}
	s.do(s.panels.undo)
	if d := s.desk.Session.Document(); d.Candidate("found") != nil {
		t.Error("the candidate stays after undo")
	}
}

// TestStudyIsKeptAndOpenedAgain edits the demo, and opens the page anew.
func TestStudyIsKeptAndOpenedAgain(t *testing.T) {
	kept := store.Memory{}
	s := onStage(t, kept, "study")
	s.shows(t, "None yet")
	s.do(func(ctx app.Context) {
		s.desk.Session.Edit("rename", "", func(d *study.Document) { d.Name = "mine" })
		s.panels.Kept.save(ctx, s.panels)
	})
	again := onStage(t, kept, "study")
	again.shows(t, "mine", "revision 2") // the demo is the first
	if got := again.desk.Session.Document().Name; got != "mine" {
		t.Errorf("opened %q, want the study that was kept", got)
	}
}

// TestEmptyPanelsSayWhatToDo opens panels of a study that has nothing for them yet.
func TestEmptyPanelsSayWhatToDo(t *testing.T) {
	for tab, want := range map[string]string{
		"readings": "No readings yet. Begin a run", "study": "None yet. The demo is kept", "compare": "New candidate",
	} {
		s := onStage(t, store.Memory{}, tab)
		s.do(func(app.Context) {
			s.desk.Session.Edit("empty", "", func(d *study.Document) { d.Readings, d.Candidates, d.Catalogue = nil, nil, nil })
		})
		s.do(func(ctx app.Context) { s.panels.show(ctx, tab) })
		s.shows(t, want)
	}
}

// TestSheetOnStage finds the arm's dimensions on the sheet of the demo's candidate.
func TestSheetOnStage(t *testing.T) {
	s := onStage(t, store.Memory{}, "sheet")
	s.do(func(app.Context) {})
	s.shows(t, "from face A, rearward", "along the stud, upward", "−12.00")
}

// TestForgeOnStage builds the series of the demo's candidate.
func TestForgeOnStage(t *testing.T) {
	s := onStage(t, store.Memory{}, "series")
	f := &forge{Bench: s.panels.bench(), State: &s.panels.forging}
	s.do(func(ctx app.Context) { f.start(ctx, app.Event{}) })
	s.shows(t, "cars pass", "What decides", "outer tie rod ball height")
	if len(s.desk.View.Bands) == 0 {
		t.Error("the spread is not shown on the sheet")
	}
}

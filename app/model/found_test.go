package model_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"toewright/app/model"
	"toewright/internal/engine"
	"toewright/internal/study"
)

// answerOf returns the answer of a search that came to its end, with one value.
func answerOf(change func(*engine.SearchResult)) *engine.SearchResult {
	r := &engine.SearchResult{
		Units: study.Millimetre, Minimise: "rms", Side: "both", Window: engine.Window{Bump: 50, Droop: 50, Step: 5},
		Best:      engine.Best{Values: study.Changes{"tieRodOuterHeight": -11.5}, Scored: engine.Scored{ToeFigures: engine.ToeFigures{RMS: 0.012, Peak: 0.03}, Score: 0.012}},
		Start:     engine.Scored{ToeFigures: engine.ToeFigures{RMS: 0.486, Peak: 0.9}, Score: 0.486},
		Converged: true, Restarts: 8, Agreeing: 8,
		Optima: []engine.Optimum{{Values: study.Changes{"tieRodOuterHeight": -11.5}, Value: 0.012}},
	}
	if change != nil {
		change(r)
	}
	return r
}

// remarksOf returns what is said of an answer, a line for each remark.
func remarksOf(a *model.Answer) string {
	var b strings.Builder
	for _, r := range slices.Concat(a.Sure, a.Remarks) {
		b.WriteString(r.Class() + ": " + r.Text + "\n")
	}
	return b.String()
}

func TestFoundMakesACandidate(t *testing.T) {
	desk := deskWith(t)
	a, err := desk.Found(desk.Session.Document(), answerOf(nil))
	if err != nil {
		t.Fatal(err)
	}
	if car := desk.Selected(); car.Name != a.Name || car.Changes["tieRodOuterHeight"] != -11.5 {
		t.Errorf("selected %q with %v, want the answer %q", car.Name, car.Changes, a.Name)
	}
	want := []model.AnswerValue{{Label: "outer tie rod ball height", Text: "−11.50 mm"}}
	if len(a.Values) != 1 || a.Values[0] != want[0] {
		t.Errorf("values %v, want %v", a.Values, want)
	}
	if label := desk.Session.Undo(); label == "" || desk.Session.Document().Candidate(a.Name) != nil {
		t.Errorf("undo of %q leaves the candidate there", label)
	}
}

// TestFoundTakesWhatTheShopHas: where steps or sizes are stated the car that is made of an
// answer has those, in the study and in words.
func TestFoundTakesWhatTheShopHas(t *testing.T) {
	desk := deskWith(t)
	a, err := desk.Found(desk.Session.Document(), answerOf(func(r *engine.SearchResult) {
		r.Rounded = &engine.Rounded{Values: study.Changes{"tieRodOuterHeight": -12}, Held: true, Cost: 0.004, AtPercentile: engine.Number(math.NaN())}
	}))
	if err != nil {
		t.Fatal(err)
	}
	if car := desk.Selected(); car.Changes["tieRodOuterHeight"] != -12 || a.Values[0].Text != "−12.00 mm" {
		t.Errorf("the car has %v, said as %v, want -12", car.Changes, a.Values)
	}
	if a.Values[0].Exact != "−11.50 mm" || a.Figure != "0.016" || a.Exact != "0.012" || a.Start != "0.486" {
		t.Errorf("%+v, want 0.016 on the step beside the exact 0.012 of −11.50 mm, from 0.486", a)
	}
}

func TestFoundIsRefusedWithoutRoom(t *testing.T) {
	desk := deskWith(t)
	for len(desk.Session.Document().Candidates) < model.MaxCandidates {
		if err := desk.Duplicate(0); err != nil {
			t.Fatal(err)
		}
	}
	if _, err := desk.Found(desk.Session.Document(), answerOf(nil)); err == nil {
		t.Error("a ninth candidate was taken")
	}
}

func TestRemarks(t *testing.T) {
	for _, tt := range []struct {
		name   string
		change func(*engine.SearchResult)
		want   string
	}{
		{"good", nil, "RMS toe change less target: 0.012 deg, from 0.486, over 50 mm bump and 50 mm droop, worse wheel."},
		{"peak", func(r *engine.SearchResult) { r.Minimise, r.Best.Score, r.Start.Score = "peak", 0.03, 0.9 }, "Peak toe change less target: 0.030 deg, from 0.900"},
		{"alone", nil, "All 8 searches, started all over the bounds, ended here"},
		{"most agree", func(r *engine.SearchResult) { r.Agreeing = 6 }, "6 of 8 searches"},
		{"another as good", func(r *engine.SearchResult) {
			r.Optima = append(r.Optima, engine.Optimum{Values: study.Changes{"tieRodOuterHeight": 4}, Value: 0.0121})
		}, "warning: It is not the only one: outer tie rod ball height +4.00 mm do as well"},
		{"another, but worse", func(r *engine.SearchResult) {
			r.Optima = append(r.Optima, engine.Optimum{Values: study.Changes{"tieRodOuterHeight": 4}, Value: 0.2})
		}, "All 8 searches"},
		{"stopped", func(r *engine.SearchResult) { r.Converged = false }, "warning: The search did not come to its end"},
		{"no better", func(r *engine.SearchResult) {
			r.Converged, r.StartNote = false, "nothing better than the car as it stands was found"
		}, "warning: Against the base car: nothing better than the car as it stands was found."},
		{"at a bound", func(r *engine.SearchResult) {
			r.AtBound = []engine.AtBound{{Parameter: "tieRodOuterHeight", Bound: "min", Value: -25}}
		}, "warning: The outer tie rod ball height lies on its lower bound, −25.00 mm"},
		{"set-ups", func(r *engine.SearchResult) {
			r.Scenarios = []engine.ScenarioResult{
				{Name: "low", Score: 0.05, Binds: true}, {Name: "high", Score: 0.02},
			}
		}, `Set-up "low": 0.050 deg. This one decides.`},
	} {
		desk := deskWith(t)
		a, err := desk.Found(desk.Session.Document(), answerOf(tt.change))
		if err != nil {
			t.Fatal(err)
		}
		if got := remarksOf(a); !strings.Contains(got, tt.want) {
			t.Errorf("%s: remarks\n%swant %q among them", tt.name, got, tt.want)
		}
	}
}

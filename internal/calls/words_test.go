package calls

import (
	"context"
	"errors"
	"regexp"
	"testing"

	"toewright/internal/study"
)

// packages are the names that errors begin with inside.
var packages = regexp.MustCompile(`\b(solver|optimize|nlp|engine|study|strictjson|report|drawing|json|strconv): `)

// spoilt are studies that calls cannot do with.
func spoilt(d *study.Document) map[string]*study.Document {
	out := map[string]*study.Document{}
	add := func(name string, spoil func(d *study.Document)) {
		c := d.Clone()
		spoil(c)
		out[name] = c
	}
	add("readings out of reach", func(d *study.Document) {
		d.Readings = []study.Reading{{Side: study.Left, Base: 300, Values: [][2]float64{{0, 0}, {900, 1}}}}
		d.Measured = nil
	})
	add("priors of nothing", func(d *study.Document) {
		d.Priors = []study.Prior{{Parameter: "tieRodOuterHeight", SD: 1e-200}}
	})
	add("a ball out of reach", func(d *study.Document) {
		d.Suspension.Left.Points["tieRodOuter"] = study.Vec3{0, 5000, 0}
	})
	add("travel out of reach", func(d *study.Document) { d.Travel = &study.Travel{Bump: 2000, Droop: 2000, Step: 100} })
	add("a change out of reach", func(d *study.Document) {
		d.Candidates = []study.Candidate{{Name: "high", Changes: study.Changes{"lowerBallJointHeight": 900}}}
	})
	add("no car", func(d *study.Document) { d.Suspension.Left.Points = study.Points{} })
	add("variables without room", func(d *study.Document) {
		for i := range d.Search.Variables {
			d.Search.Variables[i].Min, d.Search.Variables[i].Max = 900, 901
		}
	})
	return out
}

// enough is how often a call may ask whether anybody waits: what is wrong is found before.
const enough = 30

// TestMessagesNameNoPackage: what a caller is told names what is wrong, not where in the
// program it was found.
func TestMessagesNameNoPackage(t *testing.T) {
	refused := 0
	for name, d := range spoilt(busy(t, "double-wishbone-rack")) {
		for call, ask := range jobs(t, d) {
			_, err := ask(newPolled(t.Context(), enough), nil)
			if err == nil || errors.Is(err, context.Canceled) {
				continue
			}
			refused++
			if packages.MatchString(err.Error()) {
				t.Errorf("%s, %s: %s", call, name, err)
			}
		}
	}
	if refused < 20 {
		t.Errorf("%d calls are refused, want 20 or more", refused)
	}
}

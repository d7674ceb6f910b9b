package engine

import (
	"math"
	"slices"
	"strings"
	"testing"

	"toewright/internal/study"
)

// stiffened states a stiffness for all that gives, N/mm.
func stiffened(t *testing.T, d *study.Document) *study.Document {
	t.Helper()
	design, err := d.Design()
	if err != nil {
		t.Fatal(err)
	}
	d.Stiffness = study.Stiffness{}
	for i, name := range design.Members() {
		d.Stiffness[name] = 4000 + 1500*float64(i)
	}
	return d
}

// TestComplianceOfEveryTemplate: each case, car and side has the toe by what gives, the sum
// of what each member does; both wheels of a mirrored car alike; twice the stiffness halves
// it; in inches, with the right side written out and on another datum it is the same.
func TestComplianceOfEveryTemplate(t *testing.T) {
	for _, template := range study.Templates() {
		t.Run(template.Key, func(t *testing.T) {
			d := stiffened(t, loaded(t, template))
			got := loadsOf(t, d)
			for i := range got {
				c := got[i].Compliance
				sum := 0.0
				for _, g := range c.By {
					sum += float64(g.Toe)
				}
				if len(c.By) != len(d.Stiffness) || !(math.Abs(sum-float64(*c.Toe)) < 1e-12) {
					t.Errorf("%s, %s, %s: %d members do %g deg, the sum says %g", got[i].Candidate, got[i].Case, got[i].Side, len(c.By), sum, *c.Toe)
				}
				if still := got[i].TieRod == 0 && d.Steering != nil && d.Steering.Type == study.NoGear; !still && got[i].Case == "parking" && *c.Toe == 0 {
					t.Errorf("%s, %s, %s: nothing gives", got[i].Candidate, got[i].Case, got[i].Side)
				}
			}
			sameToe(t, "in the other unit", got, loadsOf(t, inOtherUnits(t, d)), 1)
			sameToe(t, "on another datum", got, loadsOf(t, onAnotherDatum(d)), 1)
			if d.Suspension.Right == nil {
				out := d.Clone()
				right := d.Suspension.Left.Mirrored()
				out.Suspension.Right = &right
				sameToe(t, "right side written out", got, loadsOf(t, out), 1)
				// A centre link is not its own mirror image to the last digit.
				if l, r := float64(*got[0].Compliance.Toe), float64(*got[1].Compliance.Toe); !(math.Abs(l-r) < 1e-5*math.Abs(l)) {
					t.Errorf("%s: left %g, right %g deg", got[0].Case, l, r)
				}
			}
			for name := range d.Stiffness {
				d.Stiffness[name] *= 2
			}
			sameToe(t, "twice as stiff", got, loadsOf(t, d), 2)
		})
	}
}

func sameToe(t *testing.T, where string, a, b []Load, times float64) {
	t.Helper()
	for i := range a {
		if x, y := float64(*a[i].Compliance.Toe), times*float64(*b[i].Compliance.Toe); !(math.Abs(x-y) <= 1e-7*(1+math.Abs(x))) {
			t.Errorf("%s, %s, %s, %s: %g deg, want %g", where, a[i].Candidate, a[i].Case, a[i].Side, y, x)
		}
	}
}

// TestComplianceLacks: nothing is guessed. Without a stiffness there is no figure; where
// some are stated it is left out, and what is missing is said in the order of the members.
func TestComplianceLacks(t *testing.T) {
	d := loaded(t, study.Template{Key: "strut-rack"})
	if l := loadsOf(t, d); l[0].Compliance != nil {
		t.Errorf("without stiffness: %+v", l[0].Compliance)
	}
	stiffened(t, d)
	delete(d.Stiffness, "gear")
	delete(d.Stiffness, "strutTop")
	r, err := Loads(t.Context(), d, LoadsOptions{})
	if err != nil {
		t.Fatal(err)
	}
	if c := r.Loads[0].Compliance; c.Toe != nil || c.By != nil || !slices.Equal(c.Missing, []string{"strutTop", "gear"}) {
		t.Errorf("answer %+v", c)
	}
	if w := r.Words(); !strings.Contains(w[0], "left out, without a stiffness of strutTop, gear: ") {
		t.Errorf("words %q", w[0])
	}
	for _, f := range r.Figures() {
		if f.Label == "compliance steer" {
			t.Error("a column for a figure that is left out")
		}
	}
	if found := study.Check(d); !slices.ContainsFunc(found, func(f study.Finding) bool {
		return f.Path == "stiffness" && strings.Contains(f.Message, "strutTop, gear missing")
	}) {
		t.Errorf("findings %v", found)
	}
}

package study

import (
	"testing"

	"github.com/google/go-cmp/cmp"
)

func TestClone(t *testing.T) {
	for name, data := range studyFiles(t) {
		t.Run(name, func(t *testing.T) {
			d := decode(t, data)
			if diff := cmp.Diff(d, d.Clone()); diff != "" {
				t.Errorf("Clone (-original +copy):\n%s", diff)
			}
		})
	}
}

// TestCloneSharesNothing changes a copy in every kind of place and checks that
// the original stays as it was.
func TestCloneSharesNothing(t *testing.T) {
	full := func() *Document {
		d, half := templateDoc(t, "double-wishbone-rack"), 0.5
		d.Search.Scenarios = []Scenario{{Name: "lower", Changes: Changes{"rideHeight": -25}, Weight: &half}}
		return d
	}
	d, want := full(), full()
	c := d.Clone()
	c.Suspension.Left.Points["tieRodOuter"] = Vec3{}
	c.Suspension.Left.StudAxis[0] = 9
	c.Suspension.Left.ArmFace.Bolts[0][1] = 9
	c.Candidates[0].Changes["toe"] = 9
	c.Search.Variables[0].Min = 9
	*c.Search.Scenarios[0].Weight = 9
	c.Readings[0].Values[0][0] = 9
	c.Catalogue[2].Excludes[0] = "x"
	c.TieRod.OuterBall.Cone = 9
	if diff := cmp.Diff(want, d); diff != "" {
		t.Errorf("original after changes of the copy (-want +got):\n%s", diff)
	}
}

func TestCloneKeepsEmptyApartFromNil(t *testing.T) {
	d := &Document{Candidates: []Candidate{{Hold: []string{}}, {Hold: nil}}}
	c := d.Clone()
	if c.Candidates[0].Hold == nil || c.Candidates[1].Hold != nil {
		t.Errorf("Hold = %#v and %#v, want an empty list and nil: they mean none and all", c.Candidates[0].Hold, c.Candidates[1].Hold)
	}
}

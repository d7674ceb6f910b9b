package engine

import (
	"math"
	"strings"
	"testing"

	"toewright/internal/study"
)

// TestDemoTellsWhatADropCosts: of the demo a designer reads by how much its 12 mm of
// spacers twist the arm at its face in a kerb strike, by what ratio to the stock arm, from
// where the load comes, and which stack of the shelf bends the stud least for the same toe.
func TestDemoTellsWhatADropCosts(t *testing.T) {
	d := study.Template{Key: "double-wishbone-rack"}.Document()
	r, err := Loads(t.Context(), d, LoadsOptions{})
	if err != nil {
		t.Fatal(err)
	}
	of := func(car string) *Load {
		for i := range r.Loads {
			if l := &r.Loads[i]; l.Candidate == car && l.Case == "Kerb strike" && l.Side == "left" {
				return l
			}
		}
		t.Fatalf("no kerb strike of %s", car)
		return nil
	}
	stock, drop := of(study.BaseName), of("Spacers 12 mm")
	// A rod that is 12 mm farther from the bolts has so much more lever: force in the face
	// times the drop, by hand.
	added := math.Abs(float64(drop.Arm.Twist)) - math.Abs(float64(stock.Arm.Twist))
	if want := float64(drop.Arm.Shear) * 0.012; math.Abs(added-want) > 0.02*want {
		t.Errorf("the drop adds %.2f N m of twist, want about %.2f", added, want)
	}
	if by := float64(drop.Arm.Twist / stock.Arm.Twist); by < 2 || by > 2.1 {
		t.Errorf("%.3f times the stock arm's twist, want about twice", by)
	}
	if by := float64(*drop.Ratio); math.Abs(by-1) > 0.01 {
		t.Errorf("the rod itself bears %.3f of the stock one's, want about as much", by)
	}
	if len(r.Sources) != 3 || !strings.HasPrefix(r.Sources[0], "Kerb strike: published: step load, ") {
		t.Errorf("sources %q", r.Sources)
	}
	shelf, err := Choose(t.Context(), d, ChooseOptions{})
	if err != nil {
		t.Fatal(err)
	}
	best := ""
	least := math.Inf(1)
	for i := range shelf.Best {
		c := &shelf.Best[i]
		if p := PeakOf(c.Loads); float64(c.RMS) < 1.1*float64(shelf.Best[0].RMS) && float64(p.Value) < least {
			least, best = float64(p.Value), ""
			for _, part := range c.Parts {
				best += part.Name + ", "
			}
			if p.Figure != "studBending" {
				t.Errorf("stacks are told apart by %s, want the stud", p.Figure)
			}
		}
	}
	if best != "Spacers 10 mm, Long arms, Tall pins 10 mm, " || !(least < 0.9*float64(drop.Stud.Bending)) {
		t.Errorf("the stud is bent least by %s%.1f MPa; the stack of 12 mm has %.1f MPa", best, least, drop.Stud.Bending)
	}
}

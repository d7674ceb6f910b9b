package solver_test

import (
	"slices"
	"testing"

	"toewright/solver"
)

// TestAxleKeepsWhatItWasMadeOf asks a candidate for its changes, its setpoints held,
// its wheels and its gear.
func TestAxleKeepsWhatItWasMadeOf(t *testing.T) {
	for i := range specimens {
		d := specimens[i].design(t)
		cs := []solver.Change{change(t, d, "tyreRadius", 12), change(t, d, "toe", 0.2)}
		x, err := solver.Assemble(d, cs, solver.HoldToe)
		if err != nil {
			t.Fatal(err)
		}
		same := func(a, b solver.Change) bool { return a.Key() == b.Key() && a.Value == b.Value }
		if got := x.Changes(); !slices.EqualFunc(got, cs, same) {
			t.Errorf("%s: changes %v, want %v", d.Kind.Name, got, cs)
		}
		if got := x.Hold(); got != solver.HoldToe {
			t.Errorf("%s: holds %v, want toe", d.Kind.Name, got)
		}
		near(t, d.Kind.Name+" tyre radius", x.TyreRadius(), d.TyreRadius+12, 0)
		if got := x.Gear().Kind; got != specimens[i].gear.Kind {
			t.Errorf("%s: gear %v, want %v", d.Kind.Name, got, specimens[i].gear.Kind)
		}
		if got, want := x.Solid(), len(d.Common) > 0; got != want {
			t.Errorf("%s: solid %t, want %t", d.Kind.Name, got, want)
		}
	}
}

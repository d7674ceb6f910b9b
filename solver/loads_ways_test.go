package solver_test

import (
	"math"
	"testing"

	"toewright/solver"
)

// TestForcesDoWork holds rod, drag link and spring against virtual work, on every kind
// and gear with springs wherever they can stand: random cars, the sides unlike, with
// parts and setpoints changed, under random loads, travels and steers.
func TestForcesDoWork(t *testing.T) {
	r := seeded(62)
	seen := map[string]int{}
	for _, on := range springPlaces {
		eachCar(t, 62, func(t *testing.T, d *solver.Design, steer float64) {
			parts, ok := springsOn(d, on)
			if !ok {
				return
			}
			seen[d.Kind.Name]++
			caster := home(t, assembled(t, d, nil)).Caster.Degrees()
			x := assembled(t, d, map[string]float64{
				"tieRodOuterHeight": 24*r.Float64() - 12, "rideHeight": 30*r.Float64() - 15, "caster": caster + 2*r.Float64()})
			k, err := x.Statics(parts)
			if err != nil {
				t.Fatal(err)
			}
			in := randomLoads(r, steer)
			var got [2]solver.Forces
			if err := k.Forces(solver.NewWorkspace(), &in, &got); err != nil {
				t.Fatal(err)
			}
			want := solver.ForcesByWork(t, k, &in)
			size := 0.0
			for s := range want {
				size = max(size, math.Abs(want[s].TieRod), math.Abs(want[s].Spring), math.Abs(want[s].DragLink))
			}
			for s, w := range want {
				where := solver.Side(s).String() + ", spring on " + on + ", "
				near(t, where+"tie rod", got[s].TieRod, w.TieRod, loadAgrees*size)
				near(t, where+"spring", got[s].Spring, w.Spring, loadAgrees*size)
				near(t, where+"drag link", got[s].DragLink, w.DragLink, loadAgrees*size)
			}
		})
	}
	for _, k := range solver.Kinds() {
		if seen[k.Name] == 0 {
			t.Errorf("no %s was looked at", k.Name)
		}
	}
}

package solver

import "testing"

// bushing is the stiffness of each pivot, N/mm: usual for rubber of a road car (common
// practice), of the tie rod's balls ten times that.
const bushing, rodStiffness = 8000.0, 80000.0

// TestWorkshopAgainstRoad: what the bushings of a wishbone model add to its toe curve, with
// the spring out and a jack under the hub, and on its wheels. docs/theory.md states it.
func TestWorkshopAgainstRoad(t *testing.T) {
	x := testWishbone(t)
	const unsprung, wheelLoad, rate = 350.0, 3300.0, 25.0 // N, N and N/mm at the wheel: usual, from memory
	at := func(spring *Spring, load func(travel float64) WheelLoad, travel float64) float64 {
		p := &LoadParts{Stiffness: map[string]float64{}}
		for _, name := range x.Design().Members() {
			p.Stiffness[name] = bushing
		}
		p.Stiffness[tieRodMember], p.Stiffness[gearMember] = rodStiffness, 1e12
		p.Springs[Left] = spring
		k, err := x.Statics(p)
		if err != nil {
			t.Fatal(err)
		}
		in := LoadCase{Attitude: Attitude{Heave: travel}}
		in.Wheels[Left] = load(travel)
		var f [2]Forces
		if err := k.Forces(NewWorkspace(), &in, &f); err != nil {
			t.Fatal(err)
		}
		sum := 0.0
		for _, v := range f[Left].Give {
			sum += v
		}
		return Angle(sum).Degrees()
	}
	// The jack's push stands for the spring, straight up from far below the hub, 20 mm
	// inboard of what weighs.
	jack := &Spring{Body: Vec{Y: 745, Z: -1e6}, Wheel: Vec{Y: 745, Z: 310}}
	spring := &Spring{Body: Vec{X: 5, Y: 560, Z: 640}, Wheel: Vec{X: 10, Y: 640, Z: 240}}
	hung := func(float64) WheelLoad { return WheelLoad{Force: Vec{Z: -unsprung}, AtCentre: true} }
	stood := func(travel float64) WheelLoad { return WheelLoad{Force: Vec{Z: wheelLoad + rate*travel}} }
	var curve [2]Curve
	if err := x.Sweep(NewWorkspace(), &SweepInput{Travels: []float64{-40, 0, 40}}, &curve); err != nil {
		t.Fatal(err)
	}
	for i, travel := range []float64{-40, 40} {
		own := (curve[0].Positions[2*i].Toe - curve[0].Positions[1].Toe).Degrees()
		stands, road := at(jack, hung, travel)-at(jack, hung, 0), at(spring, stood, travel)-at(spring, stood, 0)
		t.Logf("travel %g mm: toe change %.4f deg, bushings add %.6f on stands and %.4f on the road", travel, own, stands, road)
		if !(abs(stands) < 1e-4) {
			t.Errorf("travel %g: bushings add %g deg on stands, want less than 0.0001", travel, stands)
		}
		if !(abs(road) > 0.01 && abs(road) < 0.02) {
			t.Errorf("travel %g: bushings add %g deg on the road, the document says 0.014 and 0.016", travel, road)
		}
	}
}

package engine

import (
	"context"
	"math"
	"testing"

	"toewright/internal/study"
	"toewright/solver"
)

// partsFitted are sets of parts and settings that stand at a reading.
var partsFitted = []study.Changes{
	nil,
	{"lowerBallJointHeight": 12},
	{"lowerBallJointHeight": -8, "tieRodOuterHeight": -3, "caster": 6},
	{"rideHeight": -20, "upperBallJointHeight": 5, "steeringArmLength": 4},
	{"lowerBallJoint.z": 3, "wheelCentre.y": -2, "camber": -1.5},
}

// TestTravelsAsRead reads the travel of every wheel in every way, with every part, and
// wants that of the wheel centre back; in millimetres and in inches.
func TestTravelsAsRead(t *testing.T) {
	for _, template := range study.Templates() {
		for _, as := range []string{"wheel-centre", "contact", "block", "damper", "lower-ball-joint"} {
			for _, changes := range partsFitted {
				for _, side := range []study.Side{study.Left, study.Right} {
					d := template.Document()
					name := template.Key + " " + as + " " + string(side)
					r := study.Reading{Side: side, Base: d.Units.FromMillimetres(300), TravelAs: as, Changes: fittable(t, d, changes)}
					if !readable(d, &r) {
						continue
					}
					checkTravels(t, name, d, r)
				}
			}
		}
	}
}

// fittable returns the changes in file units that the car has a parameter for.
func fittable(t *testing.T, d *study.Document, changes study.Changes) study.Changes {
	t.Helper()
	design, err := d.Design()
	if err != nil {
		t.Fatal(err)
	}
	out := study.Changes{}
	for key, v := range changes {
		p, _, err := solver.FindParameter(design, key)
		if err != nil || p.Key == "camber" && design.Kind.Name == "solid-axle" {
			continue
		}
		if p.Quantity != solver.AngleQuantity {
			v = d.Units.FromMillimetres(v)
		}
		out[key] = v
	}
	return out
}

// readable gives the study a damper on its knuckle where the reading needs one, and
// reports whether the car has what is read.
func readable(d *study.Document, r *study.Reading) bool {
	corner := d.Suspension.Corner(r.Side)
	if r.TravelAs == "damper" && corner.Damper == nil {
		return false
	}
	design, err := d.Design()
	if err != nil {
		return false
	}
	_, _, err = solver.FindParameter(design, "lowerBallJointHeight")
	return r.TravelAs != "lower-ball-joint" || err == nil
}

func checkTravels(t *testing.T, name string, d *study.Document, r study.Reading) {
	t.Helper()
	c, err := newCars(d)
	if err != nil {
		t.Fatal(err)
	}
	parts, err := d.SolverChanges(c.design, r.Changes)
	if err != nil {
		t.Fatal(name, err)
	}
	car, err := c.base.Assemble(parts, solver.HoldAll)
	if err != nil {
		t.Fatal(name, r.Changes, err)
	}
	gauge, err := TravelGauge(d, &r)
	if err != nil {
		t.Fatal(name, err)
	}
	side := solver.Left
	if r.Side == study.Right {
		side = solver.Right
	}
	travels := []float64{-25, -7, 0, 13, 25}
	for _, mm := range travels {
		read := mm
		if gauge != nil {
			if read, err = car.ReadTravel(solver.NewWorkspace(), side, gauge, mm); err != nil {
				t.Fatal(name, err)
			}
		}
		if mm == 0 && r.TravelAs != "damper" && math.Abs(read) > 1e-9 {
			t.Errorf("%s with %v reads %g mm at the static height, want 0", name, r.Changes, read)
		}
		r.Values = append(r.Values, [2]float64{d.Units.FromMillimetres(read), 0})
	}
	d.Readings = []study.Reading{r}
	f, err := newFitter(t.Context(), d)
	if err != nil {
		t.Fatal(name, err)
	}
	for i, got := range f.problem.Sets[0].Readings {
		near(t, name+": travel", got.Travel, travels[i], 1e-6)
	}
}

// TestSweepAtContact says so, keeps the travel asked for, and refuses another place.
func TestSweepAtContact(t *testing.T) {
	d := document(t, "")
	contact, centre := sweepOf(t, d, SweepOptions{TravelAt: "contact"}), sweepOf(t, d, SweepOptions{TravelAt: "wheel-centre"})
	radius := d.TyreRadius()
	for i, s := range contact.Sweeps {
		if s.TravelAt != "contact" || centre.Sweeps[i].TravelAt != "" {
			t.Errorf("travel counts at %q and %q", s.TravelAt, centre.Sweeps[i].TravelAt)
		}
		home := contact.Sweeps[i].Positions[4] // at travel 0
		low := func(p Position) float64 {
			return p.WheelCentre[2] - radius*math.Cos(p.Camber*math.Pi/180)
		}
		for k, p := range s.Positions {
			near(t, "travel", p.Travel, centre.Sweeps[i].Positions[k].Travel, 0)
			near(t, "contact", low(p)-low(home), p.Travel, 1e-9)
		}
	}
	_, err := Sweep(context.Background(), d, SweepOptions{TravelAt: "hub"})
	wantError(t, err, Wrong, "travelAt", "wheel-centre or contact")
}

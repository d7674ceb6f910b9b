package study

import (
	"testing"

	"toewright/solver"
)

func TestSolverChanges(t *testing.T) {
	d := decode(t, []byte(inchText))
	design, err := d.Design()
	if err != nil {
		t.Fatal(err)
	}
	got, err := d.SolverChanges(design, Changes{"tieRodOuterHeight@left": -0.5, "caster": 6, "lowerBallJoint.z": 1})
	if err != nil {
		t.Fatal(err)
	}
	want := []struct {
		key   string
		value float64
	}{
		{"caster", solver.Deg(6).Radians()},
		{"lowerBallJoint.z", 25.4},
		{"tieRodOuterHeight@left", -12.7},
	}
	if len(got) != len(want) {
		t.Fatalf("%d changes, want %d", len(got), len(want))
	}
	for i, w := range want {
		if got[i].Key() != w.key || got[i].Value != w.value {
			t.Errorf("change %d is %s by %v, want %s by %v", i, got[i].Key(), got[i].Value, w.key, w.value)
		}
	}
}

func TestSolverChangesErrors(t *testing.T) {
	tests := []struct {
		name    string
		changes Changes
		want    string
	}{
		{"unknown key", Changes{"tieRodOuterHieght": 1}, "solver: tieRodOuterHieght is not a parameter of a double-wishbone; the nearest is tieRodOuterHeight"},
		{"out of all proportion", Changes{"caster": 200}, "solver: caster is 200 deg, must lie within 45 deg of 0"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			d := decode(t, []byte(inchText))
			design, err := d.Design()
			if err != nil {
				t.Fatal(err)
			}
			if _, err := d.SolverChanges(design, tt.changes); err == nil || err.Error() != tt.want {
				t.Errorf("SolverChanges = %v, want %s", err, tt.want)
			}
		})
	}
}

func TestSolverValues(t *testing.T) {
	d := decode(t, []byte(inchText))
	design, err := d.Design()
	if err != nil {
		t.Fatal(err)
	}
	tests := []struct {
		key          string
		file, solver float64
	}{
		{"tieRodOuterHeight", 0.5, 12.7},
		{"camber", -1, solver.Deg(-1).Radians()},
	}
	for _, tt := range tests {
		p, _, err := solver.FindParameter(design, tt.key)
		if err != nil {
			t.Fatal(err)
		}
		if got := d.ToSolver(p, tt.file); got != tt.solver {
			t.Errorf("ToSolver(%s, %v) = %v, want %v", tt.key, tt.file, got, tt.solver)
		}
		if got := d.FromSolver(p, tt.solver); got != tt.file {
			t.Errorf("FromSolver(%s, %v) = %v, want %v", tt.key, tt.solver, got, tt.file)
		}
	}
}

func TestHold(t *testing.T) {
	tests := []struct {
		name  string
		names []string
		want  solver.Hold
	}{
		{"absent", nil, solver.HoldAll},
		{"none", []string{}, solver.HoldNone},
		{"toe", []string{"toe"}, solver.HoldToe},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			if got, err := Hold(tt.names); err != nil || got != tt.want {
				t.Errorf("Hold(%v) = %v, %v, want %v", tt.names, got, err, tt.want)
			}
		})
	}
	if _, err := Hold([]string{"tow"}); err == nil {
		t.Error("Hold(tow) = nil, want an error")
	}
}

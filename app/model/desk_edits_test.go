package model_test

import (
	"math"
	"slices"
	"testing"

	"toewright/app/model"
)

// deskWith returns a desk with the demo, whose cars have indices 0 to 4.
func deskWith(t *testing.T) *model.Desk {
	t.Helper()
	return model.NewDesk(template(t, "double-wishbone-rack").Document())
}

// arrange puts cars into the order of their indices.
func arrange(d *model.Desk, order ...int) error {
	var list []*model.Car
	for _, i := range order {
		list = append(list, d.Session.Cars().At(i))
	}
	return d.Arrange(list)
}

// TestSelectionFollowsItsCar deletes and moves candidates: what was selected, and the
// yardstick, stay the same cars.
func TestSelectionFollowsItsCar(t *testing.T) {
	tests := []struct {
		name      string
		edit      func(*model.Desk) error
		car, yard int // selected and yardstick, of 2 and 4 before
	}{
		{"delete one before", func(d *model.Desk) error { return d.Delete(1) }, 1, 3},
		{"delete one between", func(d *model.Desk) error { return d.Delete(3) }, 2, 3},
		{"delete the selected", func(d *model.Desk) error { return d.Delete(2) }, 0, 3},
		{"move the selected down", func(d *model.Desk) error { return arrange(d, 1, 3, 4, 2) }, 4, 3},
		{"move the yardstick up", func(d *model.Desk) error { return arrange(d, 4, 1, 2, 3) }, 3, 1},
		{"move one past both", func(d *model.Desk) error { return arrange(d, 2, 3, 4, 1) }, 1, 3},
		{"arrange but the yardstick", func(d *model.Desk) error { return arrange(d, 3, 0, 2, 1) }, 2, 4},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			d := deskWith(t)
			d.View.Car, d.View.Yardstick = 2, 4
			names := []string{d.Session.Cars().At(2).Name, d.Session.Cars().At(4).Name}
			if err := tt.edit(d); err != nil {
				t.Fatal(err)
			}
			if d.View.Car != tt.car || d.View.Yardstick != tt.yard {
				t.Errorf("selected %d, yardstick %d, want %d, %d", d.View.Car, d.View.Yardstick, tt.car, tt.yard)
			}
			for i, index := range []int{d.View.Car, d.View.Yardstick} {
				if got := d.Session.Cars().At(index).Name; index != 0 && got != names[i] {
					t.Errorf("index %d is now %q, want %q", index, got, names[i])
				}
			}
		})
	}
}

func TestSetHeld(t *testing.T) {
	d := deskWith(t)
	hold := func() []string { return d.Session.Document().Candidates[0].Hold }
	for _, step := range []struct {
		name string
		held bool
		want []string
	}{
		{"camber", false, []string{"toe", "caster"}},
		{"toe", false, []string{"caster"}},
		{"caster", false, []string{}},
		{"toe", true, []string{"toe"}},
		{"caster", true, []string{"toe", "caster"}},
		{"camber", true, nil},
	} {
		if err := d.Session.SetHeld(1, step.name, step.held); err != nil {
			t.Fatal(err)
		}
		if got := hold(); !slices.Equal(got, step.want) || (got == nil) != (step.want == nil) {
			t.Errorf("%s held %t gives %#v, want %#v", step.name, step.held, got, step.want)
		}
	}
}

// TestUsualValueChangesNothing sets each setpoint of a candidate to its usual value: the
// curve stays that of the base car.
func TestUsualValueChangesNothing(t *testing.T) {
	const tolerance = 1e-4 // rad: a setpoint is rounded to a hundredth of a degree
	for _, key := range []string{"toe", "camber", "caster", "tieRodOuterHeight"} {
		d := deskWith(t)
		if err := d.Duplicate(0); err != nil {
			t.Fatal(err)
		}
		if err := d.Set(key, d.Usual(key), ""); err != nil {
			t.Fatal(err)
		}
		got, want := d.Selected().Figures[0].RMS.Radians(), d.Session.Cars().Base().Figures[0].RMS.Radians()
		if !(math.Abs(got-want) <= tolerance) {
			t.Errorf("%s at its usual %g gives RMS %g, want that of the base car, %g", key, d.Usual(key), got, want)
		}
	}
}

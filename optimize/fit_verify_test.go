package optimize_test

import (
	"math"
	"testing"

	"toewright/optimize"
	"toewright/solver"
)

// TestVerify reads cars again after parts were fitted: as advised, and with
// something wrong.
func TestVerify(t *testing.T) {
	c := newTruth(t, 37, 2.5)
	f := fitCar(t, c.twoStacks(t, noise))
	stated := []solver.Change{changeOf(t, c.base, "tieRodOuterHeight", 4.5)}
	for _, tt := range []struct {
		name, key string
		value     float64
	}{
		{"as advised", "", 0},
		{"a spacer left out", "tieRodOuterHeight", -1.5},
		{"rack loose", "tieRodInnerHeight", 3},
		{"subframe bent", "lowerRearPivot.z", -4},
	} {
		t.Run(tt.name, func(t *testing.T) {
			fitted := stated
			if tt.key != "" {
				fitted = append(fitted[:1:1], changeOf(t, c.base, tt.key, tt.value))
			}
			s := c.read(t, noise, fitted, grid...)
			s.Changes = stated
			v, err := f.Verify(t.Context(), []optimize.ReadingSet{s})
			if err != nil {
				t.Fatal(err)
			}
			if want := tt.key == ""; v.Passed != want || v.Sets[0].Passed != want || (len(v.Causes) == 0) != want {
				t.Fatalf("passed = %t with chance %.2g and %d causes, want %t", v.Passed, v.Chance, len(v.Causes), want)
			}
			if v.Passed {
				return
			}
			for _, cause := range v.Causes {
				if cause.Parameter.Key == tt.key {
					if v.Causes[0].Gain-cause.Gain > 10 {
						t.Errorf("%s explains %.1f less than %s", tt.key, v.Causes[0].Gain-cause.Gain, v.Causes[0].Key())
					}
					if !(math.Abs(cause.Value-tt.value) <= 0.25*math.Abs(tt.value)) {
						t.Errorf("%s = %.3f, want %g", tt.key, cause.Value, tt.value)
					}
				}
			}
			if best := v.Causes[0]; !(best.Left > 0.01) {
				t.Errorf("the likeliest cause, %s by %.3f, leaves a chance of %.2g", best.Key(), best.Value, best.Left)
			}
		})
	}
}

// TestVerifyChance passes readings of sound cars about as often as it says, which
// it can only with the spread that the fit leaves in its predictions.
func TestVerifyChance(t *testing.T) {
	const cars = 60
	low := 0
	for seed := range uint64(cars) {
		c := newTruth(t, 100+seed, 2.5)
		f := fitCar(t, &optimize.GaugeFit{Base: c.base, Sets: []optimize.ReadingSet{c.read(t, noise, nil, grid...)}})
		v, err := f.Verify(t.Context(), []optimize.ReadingSet{c.read(t, noise, []solver.Change{changeOf(t, c.base, "tieRodOuterHeight", -6)}, grid...)})
		if err != nil {
			t.Fatal(err)
		}
		if v.Chance < 0.5 {
			low++
		}
	}
	// 30 expected, standard deviation 3.9.
	if low < 15 || low > 45 {
		t.Errorf("%d of %d sound cars have a chance below one half, want about half", low, cars)
	}
}

// TestVerifySet says where and by how much a reading lies outside.
func TestVerifySet(t *testing.T) {
	c := newTruth(t, 41, 2.5)
	f := fitCar(t, c.twoStacks(t, noise))
	s := c.read(t, noise, nil, grid...)
	s.Readings[8].Value += 0.8
	v, err := f.Verify(t.Context(), []optimize.ReadingSet{s})
	if err != nil {
		t.Fatal(err)
	}
	k := v.Sets[0]
	if k.Passed || k.Worst != 8 || !(math.Abs(k.Off[8]-0.8) <= 0.2) {
		t.Errorf("passed %t, worst %d off by %.3f mm; want reading 8 by 0.8", k.Passed, k.Worst, k.Off[k.Worst])
	}
	for i, r := range s.Readings {
		if !(math.Abs(k.Predicted[i]+k.Off[i]-r.Value) <= 1e-12) || !(k.SD[i] > 0.5*noise && k.SD[i] < 2*noise) {
			t.Errorf("reading %d: predicted %.3f, off %.3f ± %.3f of %.3f", i, k.Predicted[i], k.Off[i], k.SD[i], r.Value)
		}
	}
}

// TestVerifySetNamesTheWorst however little it is off.
func TestVerifySetNamesTheWorst(t *testing.T) {
	c := newTruth(t, 41, 2.5)
	f := fitCar(t, c.twoStacks(t, noise))
	s := c.read(t, noise, nil, grid...)
	for off := range 2 {
		v, err := f.Verify(t.Context(), []optimize.ReadingSet{s})
		if err != nil {
			t.Fatal(err)
		}
		k := v.Sets[0]
		if off == 1 && (k.Worst != 8 || !(math.Abs(k.Off[8]) < 1e-5)) {
			t.Errorf("worst is reading %d, want 8, off by %g mm", k.Worst, k.Off[8])
		}
		for i := range s.Readings {
			s.Readings[i].Value = k.Predicted[i]
		}
		s.Readings[8].Value += 1e-5
	}
}

func TestVerifyErrors(t *testing.T) {
	c := newTruth(t, 41, 2.5)
	f := fitCar(t, c.twoStacks(t, noise))
	if _, err := f.Verify(t.Context(), nil); err == nil {
		t.Error("no readings to verify: want an error")
	}
	s := c.read(t, noise, nil, grid...)
	s.Readings[0].Travel = -900
	if _, err := f.Verify(t.Context(), []optimize.ReadingSet{s}); err == nil {
		t.Error("readings out of reach: want an error")
	}
}

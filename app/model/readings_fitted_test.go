package model_test

import (
	"context"
	"math"
	"testing"

	"toewright/app/model"
	"toewright/internal/engine"
	"toewright/internal/study"
)

// TestResiduals fits a study with an empty run before those that were read: each reading less
// the gauge's zero and what the fitted car predicts is what stands beside it.
func TestResiduals(t *testing.T) {
	s := template(t, "double-wishbone-rack")
	err := s.Edit("readings", "", func(d *study.Document) {
		d.Travel = &study.Travel{Bump: 40, Droop: 40, Step: 40}
		d.Readings = []study.Reading{
			{Side: study.Left, Base: 300, Values: [][2]float64{}},
			{Side: study.Right, Base: 300, Repeatability: 0.05, Values: [][2]float64{{-40, 1}, {-20, 0.5}, {0, 0}, {20, -0.5}, {40, -1.1}}},
		}
	})
	if err != nil {
		t.Fatal(err)
	}
	doc := model.WithReadings(s.Document(), s.Cars().Design)
	r, err := engine.Fit(context.Background(), doc, engine.FitOptions{})
	if err != nil {
		t.Fatal(err)
	}
	if got := model.Residuals(s.Document(), r, 0); got != nil {
		t.Errorf("of the empty run: %v", got)
	}
	got := model.Residuals(s.Document(), r, 1)
	if len(got) != 5 {
		t.Fatalf("%d residuals, want 5", len(got))
	}
	for i, v := range s.Document().Readings[1].Values {
		toe := float64(r.Sets[0].Toe[i]) * math.Pi / 180
		predicted := v[1] - got[i].Off - r.Sets[0].Zero // B tan of the fitted car's toe
		if read := 300 * math.Tan(toe); math.Abs(read-got[i].Off-predicted) > 1e-6 {
			t.Errorf("reading %d: %g less %g is not %g", i, read, got[i].Off, predicted)
		}
	}
	if used, of := model.FitCount(s.Document(), r); used != 5-len(r.Outliers) || of != 5 {
		t.Errorf("%d of %d readings used", used, of)
	}
}

func TestSpacersText(t *testing.T) {
	tests := []struct {
		parameter string
		step      float64 // mm
		count     int
		units     study.Units
		want      string
	}{
		{"tieRodOuterHeight", 25.4 / 16, -11, study.Inch, "11 spacers of 1/16 in, the ball below"},
		{"tieRodOuterHeight", 25.4 / 16, 1, study.Inch, "1 spacer of 1/16 in, the ball above"},
		{"tieRodOuterHeight", 1, 2, study.Inch, "2 spacers of 0.039 in, the ball above"},
		{"tieRodOuterHeight", 1, -12, "", "12 spacers of 1 mm, the ball below"},
		{"tieRodInnerHeight", 1, -12, "", "−12 steps of 1 mm"},
		{"tieRodOuterHeight", 1, 0, "", "as measured"},
	}
	for _, tt := range tests {
		d := &study.Document{Display: &study.Display{Units: tt.units}}
		s := &model.Spacers{Parameter: tt.parameter, Step: tt.step, Count: tt.count}
		if got := model.SpacersText(d, s); got != tt.want {
			t.Errorf("%d of %g mm: %q, want %q", tt.count, tt.step, got, tt.want)
		}
	}
}

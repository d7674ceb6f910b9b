package model_test

import (
	"testing"

	"github.com/google/go-cmp/cmp"

	"toewright/app/model"
	"toewright/internal/study"
	"toewright/solver"
)

// TestJudgedWindow holds the figures over a part of the curves against those of a study
// whose curves are no longer than that part, to the last bit.
func TestJudgedWindow(t *testing.T) {
	short := study.Travel{Bump: 35, Droop: 40, Step: 5}
	for _, tt := range []struct {
		name string
		long study.Travel
	}{
		{"part of the curves", study.Travel{Bump: 60, Droop: 60, Step: 5}},
		{"of another step", study.Travel{Bump: 60, Droop: 60, Step: 4}},
		{"longer than the curves", study.Travel{Bump: 20, Droop: 20, Step: 5}},
		{"beyond a lock", study.Travel{Bump: 400, Droop: 400, Step: 5}},
	} {
		t.Run(tt.name, func(t *testing.T) {
			d := open(t).Document()
			part, whole := *d, *d
			part.Travel, part.Search = &tt.long, &study.Search{Window: &short}
			whole.Travel, whole.Search = &short, nil
			got, want := model.Solve(&part).Base(), model.Solve(&whole).Base()
			for _, s := range solver.Sides {
				if diff := cmp.Diff(want.Figures[s], got.Figures[s]); diff != "" {
					t.Errorf("%s side: figures differ from those of the short window: %s", s, diff)
				}
			}
		})
	}
}

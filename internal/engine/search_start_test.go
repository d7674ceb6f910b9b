package engine

import (
	"context"
	"math"
	"strings"
	"testing"

	"toewright/internal/study"
)

// TestStartNote: an answer whose values are no better than the car as it stands says so,
// and why; one that is better says nothing.
func TestStartNote(t *testing.T) {
	d := limitedStudy(t, "")
	for i := range d.Search.Variables {
		d.Search.Variables[i].Grid, d.Search.Variables[i].Sizes = 0, nil
	}
	best := searchOf(t, d, SearchOptions{})
	for _, tt := range []struct {
		name, want string
		change     func(*study.Search)
	}{
		{"better", "", func(*study.Search) {}},
		{"bounds that leave the car out", "beyond the bounds", func(s *study.Search) {
			s.Variables = s.Variables[:1]
			s.Variables[0].Min, s.Variables[0].Max = 20, 25
		}},
		{"sizes that leave the car out", "not on the grids", func(s *study.Search) {
			s.Variables = s.Variables[:1]
			s.Variables[0].Sizes = []float64{-25, 25}
		}},
		{"a limit that only worse cars come near", "breaks a limit by more", func(s *study.Search) {
			s.Limits = []study.Limit{{Result: "tieRodLength", Min: new(1e4)}}
		}},
	} {
		t.Run(tt.name, func(t *testing.T) {
			k := d.Clone()
			tt.change(k.Search)
			if note := searchOf(t, k, SearchOptions{}).StartNote; (note == "") != (tt.want == "") || !strings.Contains(note, tt.want) {
				t.Errorf("note %q, want one of %q", note, tt.want)
			}
		})
	}
	t.Run("at the best already", func(t *testing.T) {
		k := d.Clone()
		k.Search.Variables = k.Search.Variables[:1]
		v := &k.Search.Variables[0]
		v.Min, v.Max = 0, 1e-9 // nothing to gain
		if note := searchOf(t, k, SearchOptions{}).StartNote; !strings.Contains(note, "nothing better") {
			t.Errorf("note %q of a search that leaves no room", note)
		}
	})
	if math.IsNaN(float64(best.Start.Score)) {
		t.Error("the car as it stands has no score")
	}
}

// TestStoppedCallSaysWhatItHas: whenever a call is cancelled its answer is better than the
// car as it stands, or says that it is not.
func TestStoppedCallSaysWhatItHas(t *testing.T) {
	for name, d := range demoStudies(t) {
		limited := d.Clone()
		limited.Search.Limits = []study.Limit{{Result: "outerBallAngle", Max: new(0.2)}}
		for _, k := range []*study.Document{d, limited} {
			for _, steps := range []int{1, 5} {
				ctx, stop := context.WithCancel(t.Context())
				r, err := Search(ctx, k, SearchOptions{Progress: func(Progress) {
					if steps--; steps == 0 {
						stop()
					}
				}})
				if stop(); err != nil {
					t.Fatal(name, err)
				}
				score := Number(0)
				if s, err := newSearcher(k, &SearchOptions{}); err == nil {
					score = degrees(s.problem.Score(s.point(r.Taken())))
				}
				if better := score < r.Start.Score*(1-1e-9); better != (r.StartNote == "") {
					t.Errorf("%s: score %g, the car as it stands %g, note %q", name, score, r.Start.Score, r.StartNote)
				}
			}
		}
	}
}

package optimize_test

import (
	"context"
	"math"
	"reflect"
	"strings"
	"testing"

	"toewright/optimize"
)

// inch64 is a sixty-fourth of an inch, mm.
const inch64 = 25.4 / 64

// TestRoundToShopGrids rounds one and the same answer to what different shops hold.
func TestRoundToShopGrids(t *testing.T) {
	p := limitedSearch(t)
	p.Free = p.Free[:1] // inner height; best at -2.0789 mm
	a, err := optimize.SearchToe(context.Background(), p, nil)
	if err != nil {
		t.Fatal(err)
	}
	if !(math.Abs(a.Values[0]+2.0789) <= 0.01) {
		t.Fatalf("exact answer %.4f mm, want -2.0789", a.Values[0])
	}
	for _, tt := range []struct {
		name string
		grid optimize.Grid
		want float64
	}{
		{"anything", optimize.Grid{}, a.Values[0]},
		{"0.1 mm", optimize.Grid{Step: 0.1}, -2.1},
		{"1/64 in", optimize.Grid{Step: inch64}, -5 * inch64}, // -1.984; -6 are -2.381
		{"1 mm", optimize.Grid{Step: 1}, -2},
		{"drills", optimize.Grid{Sizes: []float64{3, -2.5, -1.5, 0}}, -2.5},
		{"one taper", optimize.Grid{Sizes: []float64{7}}, 7},
		{"sizes before step", optimize.Grid{Step: 0.1, Sizes: []float64{-3, 3}}, -3},
		{"sizes beyond the bounds", optimize.Grid{Sizes: []float64{-25, 10}}, 10},
	} {
		t.Run(tt.name, func(t *testing.T) {
			r, err := p.Round(context.Background(), a.Values, []optimize.Grid{tt.grid}, nil)
			if err != nil {
				t.Fatal(err)
			}
			if !(math.Abs(r.Values[0]-tt.want) <= 1e-9) {
				t.Errorf("rounded to %.6g mm, want %.6g", r.Values[0], tt.want)
			}
			if !(r.Cost >= 0) || (r.Cost == 0) != (r.Values[0] == a.Values[0]) {
				t.Errorf("cost %g rad at %g mm", float64(r.Cost), r.Values[0])
			}
		})
	}
}

// TestRoundOfTriedGrids: points that were tried in parts round an answer as all of them do, on
// a grid that is tried point by point and on one that is not; and where a part is missing.
func TestRoundOfTriedGrids(t *testing.T) {
	p := limitedSearch(t)
	x := []float64{-2.0789, 4}
	for _, grids := range [][]optimize.Grid{{{Step: 0.5}, {Step: 1}}, {{Step: 0.1}, {Step: 0.05}}, {{Step: 0.5}, {}}} {
		p.Tried = nil
		want, err := p.Round(t.Context(), x, grids, nil)
		if err != nil {
			t.Fatal(err)
		}
		for _, n := range []int{1, 3} {
			var parts []optimize.GridTried
			for i := range n {
				list, err := p.TryGrids(t.Context(), grids, nil, i, n)
				if err != nil {
					t.Fatal(err)
				}
				parts = append(parts, list...)
			}
			if gridded := grids[1].Step > 0; gridded != (len(parts) > 0) {
				t.Errorf("%v: %d parts", grids, len(parts))
			}
			for _, tried := range [][]optimize.GridTried{parts, parts[min(1, len(parts)):]} {
				p.Tried = tried
				got, err := p.Round(t.Context(), x, grids, nil)
				if err != nil || !reflect.DeepEqual(got, want) {
					t.Errorf("%v in %d parts: %+v, %v, want %+v", grids, n, got, err, want)
				}
			}
		}
	}
}

func TestRoundRefuses(t *testing.T) {
	p := limitedSearch(t)
	p.Free[0].Min, p.Free[0].Max = 0.1, 0.9
	for _, tt := range []struct {
		name  string
		grids []optimize.Grid
		part  string
	}{
		{"too few", []optimize.Grid{{}}, "1 grids for 2"},
		{"no step within", []optimize.Grid{{Step: 1}, {}}, "no step of the grid of tieRodInnerHeight"},
		{"no size within", []optimize.Grid{{Sizes: []float64{0, 1}}, {}}, "none of the 2 sizes of tieRodInnerHeight"},
	} {
		if _, err := p.Round(context.Background(), []float64{0.5, 0}, tt.grids, nil); err == nil || !strings.Contains(err.Error(), tt.part) {
			t.Errorf("%s: %v, want an error with %q", tt.name, err, tt.part)
		}
	}
}

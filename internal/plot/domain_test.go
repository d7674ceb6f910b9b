package plot

import (
	"math"
	"testing"
)

func TestDomainOf(t *testing.T) {
	nan := math.NaN()
	tests := []struct {
		name  string
		lists [][]float64
		want  Domain
		ok    bool
	}{
		{"two lists", [][]float64{{1, -2}, {5}}, Domain{-2, 5}, true},
		{"gaps passed over", [][]float64{{nan, 3, math.Inf(1)}}, Domain{3, 3}, true},
		{"all above zero", [][]float64{{2, 3}}, Domain{2, 3}, true},
		{"gaps only", [][]float64{{nan}}, Domain{}, false},
		{"nothing", nil, Domain{}, false},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			if got, ok := DomainOf(tt.lists...); got != tt.want || ok != tt.ok {
				t.Errorf("DomainOf(%v) = %v, %v, want %v, %v", tt.lists, got, ok, tt.want, tt.ok)
			}
		})
	}
}

func TestDomainChanges(t *testing.T) {
	d := Domain{-20, 30}
	tests := []struct {
		name      string
		got, want Domain
	}{
		{"wide enough already", d.Widen(50), d},
		{"widened about the middle", d.Widen(100), Domain{-45, 55}},
		{"single value widened", Domain{4, 4}.Widen(1), Domain{3.5, 4.5}},
		{"symmetric", d.Symmetric(), Domain{-30, 30}},
		{"symmetric below zero", Domain{-7, -3}.Symmetric(), Domain{-7, 7}},
		{"zoomed about an end", d.Zoom(-20, 2), Domain{-20, 5}},
		{"zoomed out again", d.Zoom(-20, 2).Zoom(-20, 0.5), d},
		{"shifted", d.Shift(5), Domain{-15, 35}},
		{"within already", d.Within(Domain{-50, 50}), d},
		{"back from below", d.Within(Domain{0, 100}), Domain{0, 50}},
		{"back from above", d.Within(Domain{-100, 10}), Domain{-40, 10}},
		{"too wide", d.Within(Domain{0, 10}), Domain{0, 10}},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			if tt.got != tt.want {
				t.Errorf("got %v, want %v", tt.got, tt.want)
			}
		})
	}
}

func TestDomainContains(t *testing.T) {
	d := Domain{-1, 2}
	for v, want := range map[float64]bool{-1: true, 2: true, 0: true, -1.1: false, 2.1: false} {
		if got := d.Contains(v); got != want {
			t.Errorf("%v.Contains(%v) = %v, want %v", d, v, got, want)
		}
	}
	if d.Contains(math.NaN()) {
		t.Errorf("%v contains NaN", d)
	}
}

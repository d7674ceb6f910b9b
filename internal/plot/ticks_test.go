package plot

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

func labels(ticks []Tick) string {
	var list []string
	for _, tick := range ticks {
		list = append(list, tick.Label)
	}
	return strings.Join(list, " | ")
}

func TestTicks(t *testing.T) {
	tests := []struct {
		name string
		d    Domain
		most int
		want string
	}{
		{"tens", Domain{-50, 50}, 6, "−40 | −20 | 0 | 20 | 40"},
		{"ends included", Domain{0, 1}, 6, "0.0 | 0.2 | 0.4 | 0.6 | 0.8 | 1.0"},
		{"end lost by rounding", Domain{0, 0.1 + 0.2}, 4, "0.0 | 0.1 | 0.2 | 0.3"},
		{"fixed decimals", Domain{-0.011, 0.011}, 5, "−0.01 | 0.00 | 0.01"},
		{"hundreds", Domain{0, 1000}, 3, "0 | 500 | 1000"},
		{"no scale of one figure", Domain{-0.31, 0.31}, 4, "−0.2 | 0.0 | 0.2"},
		{"twice the finer step", Domain{-0.45, 0.45}, 4, "−0.4 | 0.0 | 0.4"},
		{"turned round", Domain{1, 0}, 5, ""},
		{"no span", Domain{1, 1}, 5, ""},
		{"not a number", Domain{math.NaN(), 1}, 5, ""},
		{"infinite", Domain{0, math.Inf(1)}, 5, ""},
		{"one tick is no scale", Domain{0, 1}, 1, ""},
		{"finer than its place", Domain{1e6, 1e6 + 1e-11}, 5, ""},
		{"finer than a float64", Domain{-5e-324, 5e-324}, 5, ""},
		{"coarser than a car", Domain{0, 1e300}, 5, ""},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			if got := labels(Ticks(nil, tt.d, tt.most)); got != tt.want {
				t.Errorf("Ticks(%v, %d) = %q, want %q", tt.d, tt.most, got, tt.want)
			}
		})
	}
}

func TestFractionTicks(t *testing.T) {
	tests := []struct {
		name string
		d    Domain
		most int
		want string
	}{
		{"eighths", Domain{-0.25, 0.25}, 5, "−1/4 | −1/8 | 0 | 1/8 | 1/4"},
		{"sixteenths", Domain{0, 0.25}, 5, "0 | 1/16 | 1/8 | 3/16 | 1/4"},
		{"thirty-seconds", Domain{-1.0 / 16, 1.0 / 16}, 6, "−1/16 | −1/32 | 0 | 1/32 | 1/16"},
		{"mixed numbers", Domain{1, 2}, 5, "1 | 1 1/4 | 1 1/2 | 1 3/4 | 2"},
		{"whole inches", Domain{-2, 2}, 5, "−2 | −1 | 0 | 1 | 2"},
		{"many inches", Domain{0, 60}, 5, "0 | 20 | 40 | 60"},
		{"decimals below a sixty-fourth", Domain{0, 0.02}, 6, "0.000 | 0.005 | 0.010 | 0.015 | 0.020"},
		{"no span", Domain{1, 1}, 5, ""},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			if got := labels(FractionTicks(nil, tt.d, tt.most)); got != tt.want {
				t.Errorf("FractionTicks(%v, %d) = %q, want %q", tt.d, tt.most, got, tt.want)
			}
		})
	}
}

// domains draws domains from a thousandth to a thousand wide.
func domains(t *rapid.T) Domain {
	low := rapid.Float64Range(-1000, 1000).Draw(t, "low")
	return Domain{low, low + math.Exp(rapid.Float64Range(-7, 7).Draw(t, "log span"))}
}

func TestTicksAreWithinAndFewAndEnough(t *testing.T) {
	kinds := map[string]func([]Tick, Domain, int) []Tick{"decimal": Ticks, "fraction": FractionTicks}
	for name, ticks := range kinds {
		t.Run(name, func(t *testing.T) {
			rapid.Check(t, func(t *rapid.T) {
				d, most := domains(t), rapid.IntRange(4, 20).Draw(t, "most")
				got := ticks(nil, d, most)
				if len(got) > most || len(got) < most/3 {
					t.Fatalf("%v, %d: %d ticks", d, most, len(got))
				}
				edge := d.Widen(d.Span() * (1 + 2*slack))
				for _, tick := range got {
					if !edge.Contains(tick.Value) {
						t.Fatalf("%v: tick %v is outside", d, tick.Value)
					}
				}
			})
		})
	}
}

func TestNice(t *testing.T) {
	tests := []struct {
		name string
		d    Domain
		most int
		want Domain
	}{
		{"grown at both ends", Domain{-47, 52}, 6, Domain{-50, 100}},
		{"nice already", Domain{0, 1}, 6, Domain{0, 1}},
		{"small", Domain{-0.013, 0.021}, 6, Domain{-0.02, 0.03}},
		{"no span", Domain{2, 2}, 6, Domain{2, 2}},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			if got := tt.d.Nice(tt.most); got != tt.want {
				t.Errorf("%v.Nice(%d) = %v, want %v", tt.d, tt.most, got, tt.want)
			}
		})
	}
}

func TestNiceEndsAreTicks(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d, most := domains(t), rapid.IntRange(4, 20).Draw(t, "most")
		nice := d.Nice(most)
		ticks := Ticks(nil, nice, most)
		if len(ticks) == 0 || ticks[0].Value != nice.Low || ticks[len(ticks)-1].Value != nice.High {
			t.Fatalf("%v.Nice(%d) = %v, with ticks %v", d, most, nice, ticks)
		}
		if edge := slack * nice.Span(); !(nice.Low <= d.Low+edge && nice.High >= d.High-edge) {
			t.Fatalf("%v.Nice(%d) = %v does not hold it", d, most, nice)
		}
	})
}

// TestTwoTicksAtLeast looks at domains of any place and span, in decimals and in fractions.
func TestTwoTicksAtLeast(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		low, span := rapid.Float64Range(-20, 20).Draw(t, "low"), rapid.Float64Range(0.05, 50).Draw(t, "span")
		d, most := Domain{low, low + span}, rapid.IntRange(3, 9).Draw(t, "most")
		if rapid.Bool().Draw(t, "even") {
			d = Domain{-span / 2, span / 2}
		}
		for name, ticks := range map[string][]Tick{"decimals": Ticks(nil, d, most), "fractions": FractionTicks(nil, d, most)} {
			if len(ticks) < 2 || len(ticks) > most {
				t.Errorf("%s, %v: %q, want 2 to %d ticks", name, d, labels(ticks), most)
			}
		}
	})
}

package main

import (
	"strings"
	"testing"
)

// few returns findings of ten cars of which some went as given.
func few(covered, within int, width float64) findings {
	f := findings{name: "strut"}
	for i := range 10 {
		o := outcome{Covered: i < covered, Miss: 5, Width: width, Curve: 0.01}
		if i < within {
			o.Miss = -0.5
		}
		s := &stacks{One: o, Two: o, Spoilt: o, Named: true}
		f.addTaped(s)
		f.addRough(s)
		f.addZeros(&zeros{Held: o, Freed: o})
		r := make(faulty, len(faults))
		for k := range r {
			r[k] = [2]outcome{o, o}
		}
		f.addFaults(r)
	}
	return f
}

func TestPromises(t *testing.T) {
	for _, tt := range []struct {
		name     string
		findings findings
		broken   string // part of the first promise that is not kept; none if empty
	}{
		{"as promised", few(9, 10, 0.5), ""},
		{"bands too narrow", few(8, 10, 0.5), "hold the true best"},
		{"bands too wide", few(10, 10, 0.5), "hold the true best"},
		{"advice off", few(9, 9, 0.5), "within 0.75 mm"},
		{"bands wide", few(9, 10, 0.7), "mean width"},
	} {
		first := ""
		for _, p := range promises(&tt.findings) {
			if !p.kept() {
				first = p.what
				break
			}
		}
		if (tt.broken == "") != (first == "") || !strings.Contains(first, tt.broken) {
			t.Errorf("%s: first broken promise is %q, want %q", tt.name, first, tt.broken)
		}
	}
}

func TestWrite(t *testing.T) {
	var b strings.Builder
	kept, err := write(&b, experiment{Cars: 10, Seed: 3}, []findings{few(9, 10, 0.5), few(8, 9, 0.5)})
	if err != nil || kept {
		t.Errorf("write() = %t, %v; want promises broken and no error", kept, err)
	}
	for _, want := range []string{
		"10 cars of each template and part, seed 3.",
		"| 90 % bands that hold the true best, two stacks | 88 to 92 % | 85 % | **not kept** |",
		"| mean width of the 90 % band after two stacks | at most 0.6 mm | 0.5 mm | kept |",
		"| strut | 10 | 90.0 % | 100.0 % | 0.50 mm | 90.0 % | 100.0 % | 0.50 mm | 0.50 mm | 0.010 mm |",
		"| **all** | 20 | 85.0 % | 95.0 % | 0.50 mm | 85.0 % | 95.0 % | 5.00 mm | 0.50 mm | 0.010 mm |",
		"| one reading 1 mm off | 20 | 85.0 % | 0.0 % | 5.00 mm | left out by itself | 85.0 % | 95.0 % | 0.50 mm | yes |",
		"| scale off by 1 % | 20 | 85.0 % | 0.0 % | 5.00 mm | nothing | | | | yes |",
	} {
		if !strings.Contains(b.String(), want) {
			t.Errorf("page lacks %q:\n%s", want, b.String())
		}
	}
}

func TestTallyFailed(t *testing.T) {
	var a, b tally
	a.add(outcome{Covered: true, Width: 0.4})
	a.add(outcome{Failed: true, Covered: true})
	b.join(&a)
	if b.cars != 2 || b.failed != 1 || b.coverage() != 50 || b.meanWidth() != 0.4 || b.withinPercent(1) != 50 {
		t.Errorf("tally is %+v, want a car without advice counted as missed", b)
	}
}

package engine

import (
	"math"
	"reflect"
	"slices"
	"strings"
	"testing"

	"toewright/internal/study"
)

// TestKerbPreset: of a wheel against a kerb, sin θ = 1 - H/R and horizontal by vertical is
// 1/tan θ (Brown, Robertson and Serpento, Motor Vehicle Structures, p. 22): the ratios
// there, recomputed to two digits.
func TestKerbPreset(t *testing.T) {
	for share, want := range map[float64]float64{0.1: 0.48, 0.25: 0.88, 0.293: 1.00, 0.5: 1.73, 0.75: 3.87} {
		d := &study.Document{Units: study.Millimetre, Vehicle: study.Vehicle{TyreRadius: 300, WheelLoad: 10000}}
		p := presetOf("kerb")
		c, err := p.of(d, []LoadFactor{{"kerb's height H", "mm", share * 300}})
		if err != nil {
			t.Fatal(err)
		}
		if f := c.Left.Force; math.Abs(-f[0]/f[2]-want) > 0.006 || f[2] != 10000 || c.Left.At != "wheel-centre" {
			t.Errorf("kerb of %g of the radius: force %v, want %g of the vertical rearward", share, f, want)
		}
	}
}

// TestParkingPreset: Gough's formula (μ/3)√(F³/p), from memory; the number by hand.
func TestParkingPreset(t *testing.T) {
	d := &study.Document{Units: study.Millimetre, Vehicle: study.Vehicle{WheelLoad: 4000}}
	cases, err := presetCases(d, "parking=0.6=250")
	if err != nil {
		t.Fatal(err)
	}
	// √(4000³ N³ / 0.25 N/mm²) = 505964 N mm; a fifth of it.
	if got := cases[0].Right.Moment[2]; math.Abs(got-101.2) > 0.05 || cases[0].Left.Moment[2] != got {
		t.Errorf("moment %g N m, want 101.2 on both wheels the same way", got)
	}
}

// TestPresets: each is scaled by the wheel's load, says where it comes from and gives a
// case that the study takes; the same car in inches has the same forces; of one that hits a
// wheel at a time a solid axle's other wheel bears nothing.
func TestPresets(t *testing.T) {
	for _, tpl := range study.Templates() {
		d := loaded(t, tpl)
		d.Vehicle.WheelLoad = 3000
		once := LoadPresets(d)
		d.Vehicle.WheelLoad = 6000
		for i, p := range LoadPresets(d) {
			if p.Case == nil || p.Lacks != "" {
				t.Fatalf("%s: %s lacks %q", tpl.Key, p.Key, p.Lacks)
			}
			if known := slices.ContainsFunc([]string{"published: ", "from memory: ", "usual magnitude, from memory"}, func(s string) bool { return strings.HasPrefix(p.Source, s) }); !known {
				t.Errorf("%s: source %q says not whether it is published", p.Key, p.Source)
			}
			if !strings.HasPrefix(p.Case.Source, p.Source) {
				t.Errorf("%s: its case's source is %q", p.Key, p.Case.Source)
			}
			for k, f := range p.Case.Left.Force {
				if half := once[i].Case.Left.Force[k]; math.Abs(f-2*half) > 0.2 {
					t.Errorf("%s: %g N under twice the load, %g under it", p.Key, f, half)
				}
			}
			hit := p.Key != "parking" && p.Key != "braking" && p.Key != "cornering"
			if alone := p.Case.Right == nil; alone != (hit && d.HasDragLink()) {
				t.Errorf("%s, %s: right wheel alone idle: %t", tpl.Key, p.Key, alone)
			}
			e := d.Clone()
			e.Loads = []study.LoadCase{*p.Case}
			loadsOf(t, e)
		}
	}
}

// TestDemoLoads: those of the demo are presets, by whose sources its forces are told.
func TestDemoLoads(t *testing.T) {
	d := study.Template{Key: "double-wishbone-rack"}.Document()
	cases, err := presetCases(d, "kerb,parking,braking")
	if err != nil {
		t.Fatal(err)
	}
	if !reflect.DeepEqual(d.Loads, cases) {
		t.Errorf("loads\n%+v, want\n%+v", d.Loads, cases)
	}
}

// TestPresetsAreLeftOut: what is lacking is named, and the study is not changed.
func TestPresetsAreLeftOut(t *testing.T) {
	d := study.Template{Key: "strut-rack"}.Document()
	d.Vehicle.WheelLoad, d.Loads = 0, nil
	for _, p := range LoadPresets(d) {
		if p.Case != nil || !strings.HasPrefix(p.Lacks, "vehicle.wheelLoad: is missing") {
			t.Errorf("%s: case %v, lacks %q", p.Key, p.Case, p.Lacks)
		}
	}
	d.Vehicle.WheelLoad = 3000
	r, err := Loads(t.Context(), d, LoadsOptions{Preset: "kerb, bump=3", Candidate: study.BaseName})
	if err != nil || len(r.Loads) != 4 || len(r.Cases) != 2 || r.Cases[1].Left.Force[2] != 9000 || d.Loads != nil {
		t.Errorf("answer %+v, %v; study has %v", r, err, d.Loads)
	}
}

package engine

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"toewright/internal/study"
)

// LoadPreset is a usual load case, scaled by the static load of one wheel. It goes into a
// study as a case like any other, whose numbers may then be edited.
type LoadPreset struct {
	Key     string       `json:"key"`
	Name    string       `json:"name"`
	Formula string       `json:"formula"` // W is vehicle.wheelLoad, R the tyre's radius
	Source  string       `json:"source"`  // says first whether it is published or from memory
	Factors []LoadFactor `json:"factors"` // what may be stated otherwise, in order
	// Lacks says what the study has to state for it, empty where it is all there.
	Lacks string `json:"lacks,omitzero"`
	// Case is the preset for the study; nil where something is lacking.
	Case *study.LoadCase `json:"case,omitzero"`
}

// LoadFactor is a number that a preset starts from.
type LoadFactor struct {
	Name  string  `json:"name"`
	Unit  string  `json:"unit"` // that of the file for a length
	Value float64 `json:"value"`
}

// loadPreset is how a preset is made.
type loadPreset struct {
	LoadPreset
	one  bool // of one wheel at a time, so that the other of a solid axle bears nothing
	load func(p *presetLoad, v []float64) error
}

// presetLoad is what a preset puts on the left wheel, and on the right one where unlike:
// the mirror image.
type presetLoad struct {
	wheel, radius float64 // N, mm
	left          study.WheelLoad
	right         *study.WheelLoad
}

const carStructures = "Brown, Robertson and Serpento, Motor Vehicle Structures"

// loadPresets are the presets, in the order of lists. The figures called usual differ from
// book to book.
var loadPresets = []loadPreset{
	{LoadPreset{Key: "kerb", Name: "Kerb strike", Formula: "up W, rearward W/tan θ at the wheel centre; sin θ = 1 - H/R",
		Source: "published: step load, " + carStructures + ", p. 22", Factors: []LoadFactor{{"kerb's height H", "mm", 100}}}, true,
		func(p *presetLoad, v []float64) error {
			sine := 1 - v[0]/p.radius
			if !(sine > 0 && sine < 1) {
				return wrongf("preset", "kerb's height must lie between 0 and the tyre's radius")
			}
			p.left = study.WheelLoad{At: "wheel-centre", Force: study.Vec3{-p.wheel * math.Sqrt(1-sine*sine) / sine, 0, p.wheel}}
			return nil
		}},
	{LoadPreset{Key: "bump", Name: "Bump", Formula: "up n W at the contact",
		Source: "published: after Garrett 1953, " + carStructures, Factors: []LoadFactor{{"factor n", "", 4.5}}}, true,
		func(p *presetLoad, v []float64) error {
			p.left.Force = study.Vec3{0, 0, v[0] * p.wheel}
			return nil
		}},
	{LoadPreset{Key: "nudge", Name: "Kerb from the side", Formula: "inboard n W and up W at the contact",
		Source: "published: " + carStructures + ", p. 24 (1.75, or 1.4)", Factors: []LoadFactor{{"factor n", "", 1.75}}}, true,
		func(p *presetLoad, v []float64) error {
			p.left.Force = study.Vec3{0, -v[0] * p.wheel, p.wheel}
			return nil
		}},
	{LoadPreset{Key: "parking", Name: "Parking", Formula: "up W and the moment μ/3 √(W³/p) against the turn at the contact",
		Source: "from memory: Gough's formula for a standing tyre", Factors: []LoadFactor{{"friction μ", "", 0.8}, {"pressure p", "kPa", 220}}}, false,
		func(p *presetLoad, v []float64) error {
			if !(v[1] > 0) {
				return wrongf("preset", "the tyre's pressure must be positive")
			}
			moment := v[0] / 3 * math.Sqrt(p.wheel*p.wheel*p.wheel/(v[1]/1000)) / newtonMillimetres
			p.left = study.WheelLoad{Force: study.Vec3{0, 0, p.wheel}, Moment: &study.Vec3{0, 0, moment}}
			p.right = &p.left // both wheels are turned the same way
			return nil
		}},
	{LoadPreset{Key: "braking", Name: "Braking", Formula: "rearward μ n W and up n W at the contact",
		Source: "usual magnitude, from memory", Factors: []LoadFactor{{"friction μ", "", 1.1}, {"share n of the static load", "", 1.3}}}, false,
		func(p *presetLoad, v []float64) error {
			p.left.Force = study.Vec3{-v[0] * v[1] * p.wheel, 0, v[1] * p.wheel}
			return nil
		}},
	{LoadPreset{Key: "cornering", Name: "Cornering", Formula: "inboard μ n W and up n W at the outer wheel's contact, the left; at the right one with 2 - n",
		Source: "usual magnitude, from memory", Factors: []LoadFactor{{"friction μ", "", 1.1}, {"share n of the static load", "", 1.7}}}, false,
		func(p *presetLoad, v []float64) error {
			p.left.Force = study.Vec3{0, -v[0] * v[1] * p.wheel, v[1] * p.wheel}
			inner := (2 - v[1]) * p.wheel
			p.right = &study.WheelLoad{Force: study.Vec3{0, -v[0] * inner, inner}}
			return nil
		}},
	{LoadPreset{Key: "pothole", Name: "Pothole", Formula: "rearward n W and up n W at the wheel centre",
		Source: "usual magnitude, from memory", Factors: []LoadFactor{{"factor n", "", 3}}}, true,
		func(p *presetLoad, v []float64) error {
			p.left = study.WheelLoad{At: "wheel-centre", Force: study.Vec3{-v[0] * p.wheel, 0, v[0] * p.wheel}}
			return nil
		}},
}

// LoadPresets returns the presets for a study.
func LoadPresets(d *study.Document) (out []LoadPreset) {
	for i := range loadPresets {
		p := &loadPresets[i]
		one := p.LoadPreset
		one.Factors = p.factors(d)
		if c, err := p.of(d, one.Factors); err != nil {
			one.Lacks = err.Error()
		} else {
			one.Case = c
		}
		out = append(out, one)
	}
	return out
}

// PresetCase returns a preset, by its key, with its factors as they are wanted.
func PresetCase(d *study.Document, key string, with []LoadFactor) (*study.LoadCase, error) {
	return presetOf(key).of(d, with)
}

// factors returns the numbers that a preset starts from, lengths in the file's unit.
func (p *loadPreset) factors(d *study.Document) (out []LoadFactor) {
	for _, f := range p.Factors {
		if f.Unit == "mm" {
			f.Unit, f.Value = string(d.Units), d.Units.FromMillimetres(f.Value)
			if d.Units == study.Inch {
				f.Value = math.Round(f.Value)
			}
		}
		out = append(out, f)
	}
	return out
}

// of returns the preset with some factors for a study.
func (p *loadPreset) of(d *study.Document, with []LoadFactor) (*study.LoadCase, error) {
	if !(d.Vehicle.WheelLoad > 0) {
		return nil, wrongf("vehicle.wheelLoad", "is missing: a preset is scaled by it; state the static load of one wheel, N")
	}
	var v []float64
	said := ""
	for _, f := range with {
		x := f.Value
		if f.Unit == string(d.Units) {
			x = d.Units.Millimetres(x)
		}
		v = append(v, x)
		said += fmt.Sprintf("; %s %g", f.Name, f.Value)
		if f.Unit != "" {
			said += " " + f.Unit
		}
	}
	l := presetLoad{wheel: d.Vehicle.WheelLoad, radius: d.Units.Millimetres(d.TyreRadius())}
	if err := p.load(&l, v); err != nil {
		return nil, err
	}
	round := func(x float64) float64 { return math.Round(10*x) / 10 }
	rounded := func(w *study.WheelLoad) *study.WheelLoad {
		c := study.WheelLoad{At: w.At, Force: study.Vec3{round(w.Force[0]), round(w.Force[1]), round(w.Force[2])}}
		if w.Moment != nil {
			c.Moment = &study.Vec3{0, 0, round(w.Moment[2])}
		}
		return &c
	}
	out := &study.LoadCase{Name: p.Name, Source: p.Source + said, Left: rounded(&l.left)}
	switch {
	case l.right != nil:
		out.Right = rounded(l.right)
	case !p.one || !d.HasDragLink():
		out.Right = rounded(&l.left)
		out.Right.Force[1] = 0 - out.Right.Force[1]
	}
	return out, nil
}

// presetCases returns the cases that an option names: keys with commas between, each
// with its factors after equals signs where they are not the usual ones: "kerb=120".
func presetCases(d *study.Document, keys string) (out []study.LoadCase, err error) {
	for key := range strings.SplitSeq(keys, ",") {
		words := strings.Split(strings.TrimSpace(key), "=")
		p := presetOf(words[0])
		if p == nil {
			return nil, wrongf("preset", "no preset is called %.40q; --preset list shows them", words[0])
		}
		with := p.factors(d)
		if len(words)-1 > len(with) {
			return nil, wrongf("preset", "%s takes %d numbers, got %d", p.Key, len(with), len(words)-1)
		}
		for i, w := range words[1:] {
			x, err := strconv.ParseFloat(w, 64)
			if err != nil || !(math.Abs(x) < 1e6) {
				return nil, wrongf("preset", "%s: want %s as a number, got %.40q", p.Key, with[i].Name, w)
			}
			with[i].Value = x
		}
		c, err := p.of(d, with)
		if err != nil {
			return nil, err
		}
		out = append(out, *c)
	}
	return out, nil
}

func presetOf(key string) *loadPreset {
	for i := range loadPresets {
		if loadPresets[i].Key == key {
			return &loadPresets[i]
		}
	}
	return nil
}

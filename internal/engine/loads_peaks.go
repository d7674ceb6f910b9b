package engine

import (
	"math"

	"toewright/internal/number"
	"toewright/internal/study"
	"toewright/solver"
)

// LoadPeak is the largest in size of a figure over the study's load cases and both wheels
// of a car, as the limit of the same key has it, and where.
type LoadPeak struct {
	Figure study.LimitKey `json:"figure"`
	Value  Number         `json:"value"`
	Case   string         `json:"case"`
	Side   string         `json:"side"`
	// SD is what tolerances leave in it by propagation of exact sensitivities (JCGM 100);
	// only where a series asks for it.
	SD *Number `json:"sd,omitzero"`

	at, of int // case and figure
	side   solver.Side
}

// loadPeaked are the figures, by what each is of the solver's.
var loadPeaked = []struct {
	key   study.LimitKey
	short string
	unit  float64 // of the solver's in one
	of    func(*solver.Forces) float64
}{
	{"tieRodLoad", "rod", 1, func(f *solver.Forces) float64 { return f.TieRod }},
	{"armTwist", "twist", newtonMillimetres, func(f *solver.Forces) float64 { return f.Arm.Twist }},
	{"armBend", "bend", newtonMillimetres, func(f *solver.Forces) float64 { return f.Arm.Bend }},
	{"studBending", "stud", 1, func(f *solver.Forces) float64 { return f.StudBending }},
}

// peaksOf returns the largest loads of a car, none where the study states too little for
// them: of that its own call tells.
func (c *cars) peaksOf(car *solver.Axle, ws *solver.Workspace) (out []LoadPeak) {
	parts := c.loadParts()
	k, err := car.Statics(parts)
	if err != nil {
		return nil
	}
	for i := range c.doc.Loads {
		in := c.loadCase(&c.doc.Loads[i])
		var f [2]solver.Forces
		if k.Forces(ws, &in, &f) != nil {
			return nil
		}
		for j := range loadPeaked {
			kind, _ := study.KindOfLimit(loadPeaked[j].key)
			if !c.doc.Has(kind) || kind.Face && (parts.Faces[0] == nil || parts.Faces[1] == nil) || kind.Key == "studBending" && parts.Stud == nil {
				continue
			}
			for _, s := range solver.Sides {
				out = seePeak(out, LoadPeak{
					Figure: kind.Key, Value: Number(math.Abs(loadPeaked[j].of(&f[s])) / loadPeaked[j].unit),
					Case: c.doc.Loads[i].Name, Side: s.String(), at: i, of: j, side: s,
				})
			}
		}
	}
	return out
}

// peaks returns the largest loads of the car with changes.
func (s *sweeper) peaks(changes study.Changes, hold solver.Hold) []LoadPeak {
	if len(s.doc.Loads) == 0 {
		return nil
	}
	list, err := s.doc.SolverChanges(s.design, changes)
	if err != nil {
		return nil
	}
	car, err := s.base.Assemble(list, hold)
	if err != nil {
		return nil
	}
	return s.peaksOf(car, s.ws)
}

// seePeak takes a figure into account. Of the two sides of a car that is its own mirror
// image the left one is named.
func seePeak(list []LoadPeak, p LoadPeak) []LoadPeak {
	for i := range list {
		if list[i].Figure == p.Figure {
			if float64(p.Value) > float64(list[i].Value)*(1+noForce) {
				list[i] = p
			}
			return list
		}
	}
	return append(list, p)
}

// spreadPeaks sets by how much the peaks of a car spread when it is off by independent
// errors, of which the standard deviations are sd.
func (c *cars) spreadPeaks(list []LoadPeak, car *solver.Axle, by *solver.Tangents, sd []float64, ws *solver.Workspace) {
	k, err := car.Statics(c.loadParts())
	if err != nil {
		return
	}
	rates := make([]solver.Forces, by.Len())
	for i := range list {
		p := &list[i]
		in := c.loadCase(&c.doc.Loads[p.at])
		if !k.Rates(ws, &in, p.side, by, rates) {
			return
		}
		sum := 0.0
		for j := range rates {
			u := loadPeaked[p.of].of(&rates[j]) / loadPeaked[p.of].unit * sd[j]
			sum += u * u
		}
		p.SD = new(Number(math.Sqrt(sum)))
	}
}

// PeakOf returns the peak by which stacks and arms are told apart in a narrow table: of
// the stud, else the twist, else the rod; nil of no loads.
func PeakOf(list []LoadPeak) *LoadPeak {
	for _, key := range [...]study.LimitKey{"studBending", "armTwist", "tieRodLoad"} {
		for i := range list {
			if list[i].Figure == key {
				return &list[i]
			}
		}
	}
	return nil
}

// Label names the figure, and Short does at the head of a column.
func (p *LoadPeak) Label() string { return p.kind().Label }

// Short returns one word for the figure.
func (p *LoadPeak) Short() string { return loadPeaked[p.of].short }

// Unit returns the unit of the figure as s shows it.
func (p *LoadPeak) Unit(s number.Style) string { return s.AmountUnit(p.kind().Unit.Symbol(nil)) }

func (p *LoadPeak) kind() *study.LimitKind {
	k, _ := study.KindOfLimit(p.Figure)
	return k
}

// Number writes the figure without its unit.
func (p *LoadPeak) Number(s number.Style) string { return p.number(s, p.Value) }

func (p *LoadPeak) number(s number.Style, x Number) string {
	return s.Amount(float64(x), p.kind().Unit.Symbol(nil), "")
}

// Spread writes the standard deviation of the figure without its unit, a dash where there
// is none.
func (p *LoadPeak) Spread(s number.Style) string {
	if p.SD == nil {
		return p.number(s, none)
	}
	return p.number(s, *p.SD)
}

// Where says in which case, and on which wheel.
func (p *LoadPeak) Where() string { return p.Case + ", " + p.Side + " wheel" }

package study

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"toewright/solver"
)

// Measured is what a tape, a level and a plumb line said of a car, in file units.
type Measured struct {
	// Marks are points that lengths are taken from, by name: on the floor or on stands.
	Marks map[string]Vec3 `json:"marks,omitzero"`
	// MarkSD is one standard deviation of each coordinate of a mark; 0 is an exact one.
	MarkSD   float64   `json:"markSd,omitzero" rule:"notnegative"`
	Lengths  []Length  `json:"lengths,omitzero"`
	Heights  []Plumbed `json:"heights,omitzero"`  // Heights are over the ground: z.
	Sides    []Plumbed `json:"sides,omitzero"`    // Sides are from the centreline: y, left positive.
	Stations []Plumbed `json:"stations,omitzero"` // Stations are along the centreline: x, forward positive.
	// TemplateSD is one standard deviation of each coordinate of the file's hardpoints before
	// they were measured; 0 is [UnknownSD].
	TemplateSD float64 `json:"templateSd,omitzero" rule:"positive"`
	// Unreachable are measures that cannot be taken on this car, as [MeasureKey] has them.
	Unreachable []string `json:"unreachable,omitzero"`
}

// UnknownSD is one standard deviation of each coordinate of a car before it was measured, mm:
// all but nothing is known.
const UnknownSD = 100.0

// PriorSD returns one standard deviation of each coordinate before it was measured, mm.
func (d *Document) PriorSD() float64 {
	if d.Measured == nil || d.Measured.TemplateSD == 0 {
		return UnknownSD
	}
	return d.Units.Millimetres(d.Measured.TemplateSD)
}

// MeasureKey names a measure that could be taken: "heights left.tieRodOuter", or
// "lengths A left.tieRodOuter".
func MeasureKey(list, from, of string) string {
	if from == "" {
		return list + " " + of
	}
	return list + " " + from + " " + of
}

// sixMarks are where marks stand by docs/tape.md, mm, beside the left wheel: four on the floor
// and two on stands, wider than the corner is. Whoever measures enters where theirs stand.
var sixMarks = []Vec3{{520, 240, 0}, {520, 910, 0}, {-520, 240, 0}, {-520, 910, 0}, {470, 310, 690}, {-480, 290, 710}}

// usualMarkSD is how well a mark stands where it was put, mm: common practice.
const usualMarkSD = 1

// SetSixMarks gives a study the marks of the guide beside the left wheel, and as many beside the
// right one where the right side has points of its own. Its hardpoints count as unknown then.
func (d *Document) SetSixMarks() {
	sides := 1
	if d.Suspension.Right != nil {
		sides = 2
	}
	if d.Measured == nil {
		d.Measured = &Measured{}
	}
	m := d.Measured
	m.Marks, m.TemplateSD, m.MarkSD = map[string]Vec3{}, 0, d.Units.FromMillimetres(usualMarkSD)
	for i := range sides * len(sixMarks) {
		at := sixMarks[i%len(sixMarks)]
		if i >= len(sixMarks) {
			at = at.Mirrored()
		}
		for k := range at {
			at[k] = d.Units.FromMillimetres(at[k])
		}
		m.Marks[string(rune('A'+i))] = at
	}
}

// PlumbedOf returns a list of measures of one coordinate by its key: "heights", "sides" or
// "stations".
func (m *Measured) PlumbedOf(key string) *[]Plumbed {
	switch key {
	case "heights":
		return &m.Heights
	case "sides":
		return &m.Sides
	}
	return &m.Stations
}

// Length is the distance between two marks or hardpoints.
type Length struct {
	From  string  `json:"from" rule:"required"`
	To    string  `json:"to" rule:"required"`
	Value float64 `json:"value" rule:"required,positive"`
	SD    float64 `json:"sd,omitzero" rule:"positive"` // SD is one standard deviation; 0 is [UsualTapeSD].
}

// Plumbed is one coordinate of a mark or a hardpoint.
type Plumbed struct {
	Of    string  `json:"of" rule:"required"`
	Value float64 `json:"value" rule:"required"`
	SD    float64 `json:"sd,omitzero" rule:"positive"` // SD is one standard deviation; 0 is [UsualTapeSD].
}

// UsualTapeSD is one standard deviation of a measure that states none, mm: a tape read
// with care (common practice).
const UsualTapeSD = 1.0

// Measure is one entry of [Measured], in file units.
type Measure struct {
	List  string // "lengths", "heights", "sides" or "stations"
	Index int    // in its list, from 0
	From  string // From and To are the ends of a length;
	To    string // To alone is the point of any other measure
	Value float64
	SD    float64 // stated, or the usual one
}

// Path returns where the measure stands in the file.
func (m *Measure) Path() string { return fmt.Sprintf("measured.%s.%d", m.List, m.Index) }

// Axis returns which coordinate is measured: 0, 1 or 2; -1 for a length.
func (m *Measure) Axis() int {
	return slices.Index([]string{"stations", "sides", "heights"}, m.List)
}

// Kind names the measure by its list in the singular: "length", "height", "side" or "station".
func (m *Measure) Kind() string { return strings.TrimSuffix(m.List, "s") }

// Measures lists all measures: lengths, heights, sides, stations.
func (d *Document) Measures() (list []Measure) {
	if d.Measured == nil {
		return nil
	}
	usual := d.Units.FromMillimetres(UsualTapeSD)
	for i, l := range d.Measured.Lengths {
		list = append(list, Measure{"lengths", i, l.From, l.To, l.Value, cmp.Or(l.SD, usual)})
	}
	for _, of := range []struct {
		name string
		list []Plumbed
	}{{"heights", d.Measured.Heights}, {"sides", d.Measured.Sides}, {"stations", d.Measured.Stations}} {
		for i, p := range of.list {
			list = append(list, Measure{of.name, i, "", p.Of, p.Value, cmp.Or(p.SD, usual)})
		}
	}
	return list
}

// TapedPoint returns the hardpoint that a measure names by its path in the file without
// "suspension.", such as "left.lowerBallJoint", "links.0.inner" or "steering.pitmanPivot",
// or by its side and its parameter's name, "left.kingpins.0". A right side that the file
// does not state is the mirror image of the left. It returns false for any other name.
func (d *Document) TapedPoint(name string) (PlacedPoint, bool) {
	for _, p := range d.TapePoints() {
		if name == d.SourcePath(p) || p.Side != "" && name == string(p.Side)+"."+p.Name {
			return p, true
		}
	}
	return PlacedPoint{}, false
}

// TapePoints lists every point that a measure can name: those of the file, and the mirror
// image of the left side where it states no right one.
func (d *Document) TapePoints() []PlacedPoint {
	list := d.Points()
	if d.Suspension.Right != nil {
		return list
	}
	for _, p := range list {
		if p.Side == Left {
			list = append(list, PlacedPoint{p.Name, Right, p.Place.Mirrored()})
		}
	}
	return list
}

// ReadyToLocate returns an error that names the key where nothing is measured or too
// much.
func (d *Document) ReadyToLocate() error {
	switch n := len(d.Measures()); {
	case n == 0 && (d.Measured == nil || len(d.Measured.Marks) == 0): // marks alone have a first measure
		return problemf("measured", "nothing to locate by; enter lengths, heights, sides or stations first").err()
	case n > maxMeasures:
		return problemf("measured", "%d measures, want at most %d", n, maxMeasures).err()
	}
	return nil
}

// maxMeasures is the most measures of a study: far more than anyone tapes on one axle.
const maxMeasures = 2000

// measuredProblem refuses names of points that the car does not have.
func (d *Document) measuredProblem() *problem {
	if d.Measured == nil {
		return nil
	}
	for name := range d.Measured.Marks {
		if _, taken := d.TapedPoint(name); taken || strings.TrimSpace(name) == "" {
			return problemf("measured.marks", "%.60q cannot be a mark's name; choose one that no hardpoint has", name)
		}
	}
	known := map[string]bool{}
	for _, m := range d.Measures() {
		ends := [][2]string{{"of", m.To}}
		if m.Axis() < 0 {
			ends = [][2]string{{"from", m.From}, {"to", m.To}}
		}
		for _, end := range ends {
			if !known[end[1]] && !d.isTaped(end[1]) {
				return problemf(m.Path()+"."+end[0], "%.60q is neither a mark nor a hardpoint of this car; want a mark's name, or a point such as %q", end[1], d.somePoint())
			}
			known[end[1]] = true
		}
		if m.From == m.To {
			return problemf(m.Path()+".to", "%.60q is the other end as well", m.To)
		}
	}
	return nil
}

// isTaped reports whether a measure may name a mark or a hardpoint so.
func (d *Document) isTaped(name string) bool {
	if _, ok := d.Measured.Marks[name]; ok {
		return true
	}
	_, ok := d.TapedPoint(name)
	return ok
}

// somePoint returns a name that a measure may use.
func (d *Document) somePoint() string {
	kind, err := solver.KindByName(d.Suspension.Type)
	if err != nil {
		return ""
	}
	return d.SourcePath(PlacedPoint{Name: nameOf(kind, solver.WheelCentreRole), Side: Left})
}

// shift moves what was measured onto another datum.
func (m *Measured) shift(by Vec3) {
	if m == nil {
		return
	}
	for name, place := range m.Marks {
		for k := range by {
			place[k] += by[k]
		}
		m.Marks[name] = place
	}
	for k, list := range [3][]Plumbed{m.Stations, m.Sides, m.Heights} {
		for i := range list {
			list[i].Value += by[k]
		}
	}
}

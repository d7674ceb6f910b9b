package engine

import (
	"maps"
	"slices"

	"toewright/internal/study"
	"toewright/optimize"
	"toewright/solver"
)

// taping turns what a study measured by tape into what package optimize fits.
type taping struct {
	*cars           // without a base: a template need not be one
	marks  []string // by the alphabet
	all    []study.Measure
	taped  *optimize.Taped
	points []tapedPoint
}

// tapedPoint is a hardpoint of the file, as the measures name it.
type tapedPoint struct {
	study.PlacedPoint
	label string
	by    [3]string // keys of its coordinates
}

// newTaping reads the measures of a study that has some.
func newTaping(d *study.Document) (*taping, error) {
	design, err := d.Design()
	if err != nil {
		return nil, explain(err, "")
	}
	t := &taping{cars: &cars{doc: d, design: design}, all: d.Measures(), taped: &optimize.Taped{}}
	t.marks = slices.Sorted(maps.Keys(d.Measured.Marks))
	for _, name := range t.marks {
		t.taped.Marks = append(t.taped.Marks, optimize.Mark{
			Name: name, Place: inMillimetres(d, d.Measured.Marks[name]), SD: d.Units.Millimetres(d.Measured.MarkSD),
		})
	}
	used := map[string]string{} // how points are named by measures, by their paths
	for i := range t.all {
		m := &t.all[i]
		one := optimize.TapeMeasure{Axis: m.Axis(), Value: d.Units.Millimetres(m.Value), SD: d.Units.Millimetres(m.SD), To: t.end(m.To, used)}
		if one.Axis < 0 {
			one.From = t.end(m.From, used)
		}
		t.taped.Measures = append(t.taped.Measures, one)
	}
	for _, p := range d.Points() {
		label := d.SourcePath(p)
		if name, ok := used[label]; ok {
			label = name
		}
		t.points = append(t.points, tapedPoint{p, label, [3]string{p.Name + ".x", p.Name + ".y", p.Name + ".z"}})
	}
	return t, nil
}

// end returns the end of a measure, and notes how it is named.
func (t *taping) end(name string, used map[string]string) optimize.TapePoint {
	if i, ok := slices.BinarySearch(t.marks, name); ok {
		return optimize.TapePoint{Mark: i}
	}
	p, _ := t.doc.TapedPoint(name) // the document was checked
	used[t.doc.SourcePath(p)] = name
	return tapePoint(t.doc, p)
}

func tapePoint(d *study.Document, p study.PlacedPoint) optimize.TapePoint {
	return optimize.TapePoint{Mark: -1, Name: p.Name, Sides: selected(p.Side), Place: inMillimetres(d, p.Place)}
}

// selected returns the selection of a side, both for a point of neither.
func selected(s study.Side) solver.Selection {
	return map[study.Side]solver.Selection{study.Left: solver.LeftOnly, study.Right: solver.RightOnly}[s]
}

// alike reports whether both sides are one: the file states no right one.
func (t *taping) alike() bool { return t.doc.Suspension.Right == nil }

// priors frees each coordinate of the hardpoints of some sides, and of those of none. Of
// a car whose sides are one, a coordinate is one unknown where both are asked for.
func (t *taping) priors(sides ...study.Side) (list []optimize.FitPrior) {
	for _, p := range solver.Parameters(t.design) {
		if !p.Coordinate() {
			continue
		}
		add := func(s solver.Selection) {
			list = append(list, optimize.FitPrior{Parameter: p, Sides: s, SD: t.doc.PriorSD(), Shared: true})
		}
		if !p.Sided() || t.alike() && len(sides) > 1 {
			add(solver.BothSides)
			continue
		}
		for _, s := range sides {
			add(selected(s))
		}
	}
	return list
}

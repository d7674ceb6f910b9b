package optimize

import (
	"math"

	"toewright/optimize/nlp"
	"toewright/solver"
)

// Taped is what a tape, a level and a plumb line measured of a car.
type Taped struct {
	Marks    []Mark
	Measures []TapeMeasure
}

// Mark is a point beside the car that lengths are taken from.
type Mark struct {
	Name  string
	Place solver.Vec // mm, vehicle axes
	SD    float64    // of each coordinate, mm; 0 is exact
}

// TapeMeasure is one length, or one coordinate of a point.
type TapeMeasure struct {
	// From and To are the ends of a length. Any other measure is of To.
	From, To TapePoint
	// Axis is the coordinate measured, 0 to 2; -1 for a length.
	Axis      int
	Value, SD float64 // mm
}

// TapePoint is an end of a measure: a mark, or a hardpoint.
type TapePoint struct {
	Mark int // among the tape's; -1 for a hardpoint
	// Name is the hardpoint's, as the keys of its coordinates begin; Sides is the side
	// that it stands on, both for a point of neither. Place is where the file has it, mm.
	Name  string
	Sides solver.Selection
	Place solver.Vec
}

// check returns an error that says what the tape lacks.
func (t *Taped) check() error {
	for i := range t.Measures {
		m := &t.Measures[i]
		if !(m.SD > 0) || !nlp.AllFinite([]float64{m.Value, m.SD}) {
			return nlp.ProblemErrorf("measure %d is %g mm with a standard deviation of %g, want finite numbers and more than 0", i+1, m.Value, m.SD)
		}
	}
	for i := range t.Marks {
		if !(t.Marks[i].SD >= 0) {
			return nlp.ProblemErrorf("mark %s has standard deviation %g mm, want 0 or more", t.Marks[i].Name, t.Marks[i].SD)
		}
	}
	return nil
}

// unknowns returns the coordinates of marks that are not exact.
func (t *Taped) unknowns() []Unknown {
	var us []Unknown
	for i := range t.Marks {
		for axis := range 3 {
			if t.Marks[i].SD > 0 {
				us = append(us, Unknown{Kind: MarkUnknown, Mark: i, Axis: axis, SD: t.Marks[i].SD})
			}
		}
	}
	return us
}

// tapeRows are the rows of a model that are measures: (predicted - measured) over the
// standard deviation.
type tapeRows struct {
	measures []TapeMeasure // those that depend on any variable: others say nothing
	which    []int         // of each, among the tape's
	ends     [][2]tapeEnd  // from and to of each
	first    int           // row of the first
}

// tapeEnd is an end of a measure as it depends on the variables.
type tapeEnd struct {
	place [3]float64 // at no change, mm
	by    [3]int     // the variable of each coordinate; -1 where it stands still
	sign  [3]float64 // what that moves it by
}

// axes are the ends of the keys of coordinates.
var axes = [3]string{".x", ".y", ".z"}

func newTapeRows(t *Taped, us []Unknown, first int) *tapeRows {
	rows := &tapeRows{first: first}
	if t == nil {
		return rows
	}
	columns := map[string]int{}
	for k := range us {
		for _, s := range wheelsOf(us[k].Sides) {
			if us[k].Kind == CarUnknown {
				columns[us[k].Parameter.Key+only(s).Suffix()] = k
			}
		}
	}
	end := func(p *TapePoint) tapeEnd {
		if p.Mark >= 0 {
			return markEnd(t, us, p.Mark)
		}
		e := tapeEnd{place: [3]float64{p.Place.X, p.Place.Y, p.Place.Z}, sign: [3]float64{1, 1, 1}}
		for axis := range e.by {
			k, ok := columns[p.Name+axes[axis]+only(wheelsOf(p.Sides)[0]).Suffix()]
			if e.by[axis] = k; !ok {
				e.by[axis] = -1
			}
		}
		if p.Sides == solver.RightOnly {
			e.sign[1] = -1 // outboard
		}
		return e
	}
	for i := range t.Measures {
		m := &t.Measures[i]
		ends := [2]tapeEnd{{by: [3]int{-1, -1, -1}}, end(&m.To)}
		if m.Axis < 0 {
			ends[0] = end(&m.From)
		}
		if ends[0].still() && ends[1].still() {
			continue
		}
		rows.measures, rows.which, rows.ends = append(rows.measures, *m), append(rows.which, i), append(rows.ends, ends)
	}
	return rows
}

func markEnd(t *Taped, us []Unknown, mark int) tapeEnd {
	p := t.Marks[mark].Place
	e := tapeEnd{place: [3]float64{p.X, p.Y, p.Z}, by: [3]int{-1, -1, -1}, sign: [3]float64{1, 1, 1}}
	for k := range us {
		if us[k].Kind == MarkUnknown && us[k].Mark == mark {
			e.by[us[k].Axis] = k
		}
	}
	return e
}

// at returns the place of an end.
func (e *tapeEnd) at(x []float64) [3]float64 {
	p := e.place
	for axis, k := range e.by {
		if k >= 0 {
			p[axis] += e.sign[axis] * x[k]
		}
	}
	return p
}

// addRates adds the derivatives of the end's shift along a direction to a row.
func (e *tapeEnd) addRates(row []float64, along [3]float64) {
	for axis, k := range e.by {
		if k >= 0 {
			row[k] += e.sign[axis] * along[axis]
		}
	}
}

// predicted returns what measure i should read, mm, and the direction in which its To
// lengthens it.
func (t *tapeRows) predicted(i int, x []float64) (value float64, along [3]float64) {
	to := t.ends[i][1].at(x)
	if axis := t.measures[i].Axis; axis >= 0 {
		along[axis] = 1
		return to[axis], along
	}
	from := t.ends[i][0].at(x)
	for axis := range along {
		along[axis] = to[axis] - from[axis]
	}
	value = math.Hypot(math.Hypot(along[0], along[1]), along[2])
	if value == 0 { // no direction lengthens it more than another
		return 0, [3]float64{}
	}
	for axis := range along {
		along[axis] /= value
	}
	return value, along
}

// residual returns that of measure i, and adds its derivatives to a row; nil for none.
func (t *tapeRows) residual(i int, x, row []float64) float64 {
	m := &t.measures[i]
	value, along := t.predicted(i, x)
	if row != nil {
		for axis := range along {
			along[axis] /= m.SD
		}
		t.ends[i][1].addRates(row, along)
		if m.Axis < 0 {
			t.ends[i][0].addRates(row, [3]float64{-along[0], -along[1], -along[2]})
		}
	}
	return (value - m.Value) / m.SD
}

// write sets the rows of the measures.
func (t *tapeRows) write(x []float64, v *nlp.Values) {
	for i := range t.measures {
		var row []float64
		if v.JR != nil {
			row = v.JR.RawRowView(t.first + i)
		}
		v.R[t.first+i] = t.residual(i, x, row)
	}
}

// still reports whether no variable moves the end.
func (e *tapeEnd) still() bool { return e.by == [3]int{-1, -1, -1} }

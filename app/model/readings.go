package model

import (
	"cmp"
	"fmt"
	"maps"
	"math"
	"slices"
	"strings"

	"toewright/internal/study"
)

// Run is one run of the gauge: the readings of both sides with the same parts on the
// car, or of one.
type Run struct {
	// Sets are the places of left and right among the study's readings, -1 for none.
	Sets [2]int
}

// First returns the place of the run's first set.
func (r Run) First() int {
	if r.Sets[0] >= 0 {
		return r.Sets[0]
	}
	return r.Sets[1]
}

// Runs returns the runs of a study: sets that follow one another, of different sides
// and alike otherwise, are one.
func Runs(d *study.Document) []Run {
	var runs []Run
	for i := range d.Readings {
		side := d.Readings[i].Side.Solver()
		if n := len(runs); n > 0 && runs[n-1].Sets[side] < 0 && sameRun(&d.Readings[runs[n-1].First()], &d.Readings[i]) {
			runs[n-1].Sets[side] = i
			continue
		}
		r := Run{Sets: [2]int{-1, -1}}
		r.Sets[side] = i
		runs = append(runs, r)
	}
	return runs
}

// sameRun reports whether two sets may be the two sides of one run.
func sameRun(a, b *study.Reading) bool {
	return a.Gauge == b.Gauge && a.Base == b.Base && a.TravelAs == b.TravelAs && a.Direction == b.Direction &&
		a.Purpose == b.Purpose && a.Note == b.Note && maps.Equal(a.Changes, b.Changes)
}

// usualRepeatability is one standard deviation of a reading in mm where nothing else is
// said: a dial indicator on a steady stand. Common practice.
const usualRepeatability = 0.05

// AddRun begins a run gauged as the run before, with its parts on but for the stack, which
// goes on by the spacing of the last two. It returns the place of the run.
func (s *Session) AddRun() (int, error) {
	set := s.UsualReading()
	if runs := Runs(s.doc); len(runs) > 0 {
		set.Changes = s.doc.Readings[runs[len(runs)-1].First()].Changes
	}
	if value, ok := s.NextStack(); ok {
		set.Changes = withStack(set.Changes, AdviseOf(s.doc, s.cars.Design).Parameter, value)
	}
	err := s.edit("new run of readings", "", func(d *study.Document) {
		sides := []study.Side{study.Left, study.Right}
		if runs := Runs(d); len(runs) > 0 && runs[len(runs)-1].Sets[0] < 0 {
			slices.Reverse(sides) // or the left would be taken for that of the run before
		}
		for _, side := range sides {
			set.Side, set.Values, set.Changes = side, [][2]float64{}, maps.Clone(set.Changes)
			d.Readings = append(d.Readings, set)
		}
	}, func(d *study.Document) {
		d.Attribute(s.doc, study.FromTyping)
		for i := len(s.doc.Readings); i < len(d.Readings); i++ {
			s.sourceGauge(d, i, true, true)
		}
	})
	return len(Runs(s.doc)) - 1, err
}

// SetParts says that a run was read with the parts of a car on.
func (s *Session) SetParts(r Run, car *Car) error {
	return s.SetRun(r, "parts of a run", func(set *study.Reading) {
		set.Changes, set.Note = maps.Clone(car.Changes), car.Name
	})
}

// UsualReading returns the gauge of the last readings or, where there are none, two
// indicators over the usual base.
func (s *Session) UsualReading() study.Reading {
	runs := s.doc.Readings
	if n := len(s.doc.Series); len(runs) == 0 && n > 0 {
		runs = s.doc.Series[n-1].Readings
	}
	if n := len(runs); n > 0 {
		last := runs[n-1]
		return study.Reading{Gauge: last.Gauge, Base: last.Base, Repeatability: last.Repeatability, TravelAs: last.TravelAs}
	}
	return study.Reading{
		Gauge: "indicators", Base: round(s.doc.Units.FromMillimetres(study.UsualBase)),
		Repeatability: s.doc.Units.FromMillimetres(usualRepeatability),
	}
}

// TakeReadings adds the readings of a table (CSV) in one step. What it does not say of
// the gauge is as of the last readings.
func (s *Session) TakeReadings(text []byte) error {
	usual := s.UsualReading()
	sets, err := study.ParseReadings(text, s.doc, usual)
	if err != nil {
		return err
	}
	usual.Base, usual.Repeatability = 2*usual.Base, 2*usual.Repeatability
	other, err := study.ParseReadings(text, s.doc, usual) // differs in what the table does not state
	if err != nil {
		return err
	}
	first := len(s.doc.Readings)
	return s.edit("readings from a table", "", func(d *study.Document) { d.Readings = append(d.Readings, sets...) },
		func(d *study.Document) {
			d.Attribute(s.doc, study.FromFile)
			for i := range sets {
				s.sourceGauge(d, first+i, sets[i].Base != other[i].Base, sets[i].Repeatability != other[i].Repeatability)
			}
		})
}

// SetRun changes what is said of a run, on both sides.
func (s *Session) SetRun(r Run, label string, change func(*study.Reading)) error {
	return s.Edit(label, "", func(d *study.Document) {
		for _, i := range r.Sets {
			if i >= 0 {
				change(&d.Readings[i])
			}
		}
	})
}

// SetZero says at which reading set i of the study's readings has no toe, as it was typed;
// an empty text is where that is not known.
func (s *Session) SetZero(i int, text string) error {
	var zero *float64
	if strings.TrimSpace(text) != "" {
		mm, err := NumbersOf(s.doc).ParseLength(text)
		if err != nil {
			return err
		}
		x := exact(s.doc.Units.FromMillimetres(mm))
		zero = &x
	}
	return s.Edit("zero of the gauge", "", func(d *study.Document) { d.Readings[i].Zero = zero })
}

// RemoveRun removes a run with its readings.
func (s *Session) RemoveRun(r Run) error {
	return s.Edit("remove a run", "", func(d *study.Document) {
		for _, i := range []int{max(r.Sets[0], r.Sets[1]), min(r.Sets[0], r.Sets[1])} {
			if i >= 0 {
				d.Readings = slices.Delete(d.Readings, i, i+1)
			}
		}
	})
}

// AddReading adds a row of readings to a run, in its place by travel. A reading at a
// travel that was read already replaces it. A run of one side becomes one of both by the
// first reading of the other.
func (s *Session) AddReading(r Run, row *ReadingRow) error {
	return s.Edit("reading", "", func(d *study.Document) { r.add(d, row) })
}

// ChangeReading puts a row in the place of the one that was read at a travel, in file units.
func (s *Session) ChangeReading(r Run, travel float64, row *ReadingRow) error {
	return s.Edit("change a reading", "", func(d *study.Document) {
		r.remove(d, travel)
		r.add(d, row)
	})
}

func (r Run) add(d *study.Document, row *ReadingRow) {
	for side, x := range []*float64{row.Left, row.Right} {
		if x != nil {
			put(r.set(d, side), [2]float64{row.Travel, *x})
		}
	}
}

// set returns the run's set of a side, which is begun beside the other if there is none.
func (r *Run) set(d *study.Document, side int) *study.Reading {
	if r.Sets[side] < 0 {
		other := r.Sets[1-side]
		set := d.Readings[other]
		set.Side, set.Values, set.Zero = [...]study.Side{study.Left, study.Right}[side], [][2]float64{}, nil
		set.Changes = maps.Clone(set.Changes)
		r.Sets[side] = other + 1
		d.Readings = slices.Insert(d.Readings, other+1, set)
	}
	return &d.Readings[r.Sets[side]]
}

// put puts a reading in its place by travel.
func put(set *study.Reading, v [2]float64) {
	i, found := slices.BinarySearchFunc(set.Values, v[0], func(w [2]float64, travel float64) int { return cmp.Compare(w[0], travel) })
	if found {
		set.Values[i] = v
		return
	}
	set.Values = slices.Insert(set.Values, i, v)
}

// RemoveReading removes what was read at a travel, in file units.
func (s *Session) RemoveReading(r Run, travel float64) error {
	return s.Edit("remove a reading", "", func(d *study.Document) { r.remove(d, travel) })
}

func (r Run) remove(d *study.Document, travel float64) {
	for _, i := range r.Sets {
		if i >= 0 {
			d.Readings[i].Values = slices.DeleteFunc(d.Readings[i].Values, func(v [2]float64) bool { return v[0] == travel })
		}
	}
}

// RunRow is what was read at one travel, in file units; nil where a side was not.
type RunRow struct {
	Travel float64
	Values [2]*float64
}

// Rows returns what was read in a run, from droop to bump.
func (r Run) Rows(d *study.Document) []RunRow {
	at := map[float64]*RunRow{}
	for side, i := range r.Sets {
		if i < 0 {
			continue
		}
		for _, v := range d.Readings[i].Values {
			if at[v[0]] == nil {
				at[v[0]] = &RunRow{Travel: v[0]}
			}
			at[v[0]].Values[side] = &v[1]
		}
	}
	rows := make([]RunRow, 0, len(at))
	for _, t := range slices.Sorted(maps.Keys(at)) {
		rows = append(rows, *at[t])
	}
	return rows
}

// The bounds of what is taken as a slip of the thumb.
const (
	// mostTravel is the largest travel of a wheel, in windows of the study.
	mostTravel = 2
	// mostReading is the largest reading, in bases of the gauge: it is a toe of 27 degrees.
	mostReading = 0.5
)

// plausibleTravel refuses a travel in file units that is a slip: the wheel would go twice as
// far as the study has it.
func (s *Session) plausibleTravel(r Run, x float64) error {
	w, n, mm := s.doc.Window(), NumbersOf(s.doc), s.doc.Units.Millimetres
	most := mostTravel * mm(max(w.Bump, w.Droop))
	for _, wheel := range s.wheelTravels(r, [][2]float64{{x, 0}}) { // where there is none the fit says why
		if !(math.Abs(wheel) <= most) {
			return fmt.Errorf("%s moves the wheel more than twice as far as this study does, %s up and %s down: is a digit too many? If not, widen its travel first", n.Travel(mm(x)), n.Travel(mm(w.Bump)), n.Travel(mm(w.Droop)))
		}
	}
	return nil
}

// plausibleReading refuses a reading in file units that is a slip: it would be a toe that no
// wheel has. A tape is read from anywhere.
func (r Run) plausibleReading(d *study.Document, x float64) error {
	set, n, mm := &d.Readings[r.First()], NumbersOf(d), d.Units.Millimetres
	if set.Gauge == "tape" || math.Abs(x) <= mostReading*set.Base {
		return nil
	}
	return fmt.Errorf("%s is more than half of the gauge's base, %s: is a digit too many?", n.Length(mm(x)), n.Travel(mm(set.Base)))
}

// Findings returns what looks like a slip among the readings of a run.
func (r Run) Findings(d *study.Document) []study.Finding {
	var list []study.Finding
	for _, f := range study.Check(d) {
		for _, i := range r.Sets {
			if i >= 0 && strings.HasPrefix(f.Path, fmt.Sprintf("readings.%d.", i)) {
				list = append(list, f)
			}
		}
	}
	return list
}

package main

import (
	"cmp"
	"fmt"
	"maps"
	"math"
	"math/rand/v2"
	"slices"

	"toewright/internal/study"
)

// tapeJob is a simulated car, and a study of another one that says what a tape measured
// of it.
type tapeJob struct {
	truth, study *study.Document
	marks        map[string]study.Vec3 // where they truly stand
	r            *rand.Rand
	slipped      []string // measures written down wrongly, as outliers name them
}

// Standard deviations of what is measured, mm, and how far the study's car is off the true
// one: a template.
const (
	lengthSD, directSD, levelSD, plumbSD = 1.0, 0.5, 0.5, 1.0
	otherCarSD                           = 10.0 // true car to template
	templateOff                          = 50.0 // study to true car, evenly to both hands
)

// tapeScheme is what is measured of every hardpoint.
type tapeScheme struct {
	name string
	// marks is how many of the first of a side's six marks a point is taped from, the
	// nearest ones: 0 for none.
	of, marks int
	direct    int // lengths to the nearest of the hardpoints before
	heights   bool
	plumbed   int     // how many of x and y, one by turns
	sd        float64 // of what is plumbed and of heights, mm; 0 for the usual ones
}

// tapeSchemes are ways to measure a car, the one of docs/tape.md first.
var tapeSchemes = []tapeScheme{
	{name: "the form: five of six marks, a direct length, heights, one plumbed", of: 6, marks: 5, direct: 1, heights: true, plumbed: 1},
	{name: "four floor marks", of: 4, marks: 4},
	{name: "six marks, two of them on stands", of: 6, marks: 6},
	{name: "and direct lengths to 0.5 mm", of: 6, marks: 6, direct: 1},
	{name: "and heights by level to 0.5 mm", of: 6, marks: 6, direct: 1, heights: true},
	{name: "plumb line and rule alone, 1.5 mm each", heights: true, plumbed: 2, sd: 1.5},
}

// newTapeJob makes a car of a template and tapes it; everything follows from the seed and
// the number. Marks stand off by markSD, mm.
func newTapeJob(doc *study.Document, how *tapeScheme, seed uint64, n int, markSD float64) *tapeJob {
	j := &tapeJob{truth: doc.Clone(), r: rand.New(rand.NewPCG(seed, uint64(n)))}
	mm := doc.Units.FromMillimetres
	j.scatter(j.truth, func() float64 { return mm(otherCarSD * max(-2, min(2, j.r.NormFloat64()))) })
	j.study = j.truth.Clone()
	j.scatter(j.study, func() float64 { return mm(templateOff * (2*j.r.Float64() - 1)) })
	j.setMarks(markSD)
	j.tape(how)
	return j
}

// scatter moves every coordinate of a study's hardpoints.
func (j *tapeJob) scatter(d *study.Document, by func() float64) {
	for _, p := range d.Points() {
		for k := range p.Place {
			p.Place[k] += by()
		}
		if err := d.SetPoint(p); err != nil {
			panic(err) // the point is one of the study's
		}
	}
}

// setMarks puts four marks on the floor of each side and two on stands.
func (j *tapeJob) setMarks(sd float64) {
	m := &study.Measured{Marks: map[string]study.Vec3{}, MarkSD: j.truth.Units.FromMillimetres(sd)}
	j.marks = map[string]study.Vec3{}
	for k, place := range []study.Vec3{{520, 240, 0}, {520, 910, 0}, {-520, 240, 0}, {-520, 910, 0}, {470, 310, 690}, {-480, 290, 710}} {
		for s, sign := range []float64{1, -1} {
			name := fmt.Sprintf("%c%d", 'A'+k, s+1)
			at := study.Vec3{place[0], sign * place[1], place[2]}
			for i := range at {
				at[i] = j.truth.Units.FromMillimetres(at[i])
			}
			m.Marks[name] = at
			for i := range at {
				at[i] += m.MarkSD * j.r.NormFloat64()
			}
			j.marks[name] = at
		}
	}
	j.study.Measured = m
}

// tapeDigit is to what a tape is read, mm.
const tapeDigit = 0.5

// reading returns a value as read, with its scatter, and the standard deviation that is
// stated: that of scatter and rounding (JCGM 100:2008, F.2.2.1; clause number from memory).
func (j *tapeJob) reading(value, sd float64) (float64, float64) {
	u := j.truth.Units
	v := u.Millimetres(value) + sd*j.r.NormFloat64()
	return u.FromMillimetres(math.Round(v/tapeDigit) * tapeDigit), u.FromMillimetres(math.Hypot(sd, tapeDigit/math.Sqrt(12)))
}

func apart(a, b study.Vec3) float64 {
	return math.Hypot(math.Hypot(a[0]-b[0], a[1]-b[1]), a[2]-b[2])
}

// tape measures every hardpoint by a scheme.
func (j *tapeJob) tape(how *tapeScheme) {
	m, points := j.study.Measured, j.truth.Points()
	level, plumb := cmp.Or(how.sd, levelSD), cmp.Or(how.sd, plumbSD)
	for i, p := range points {
		name := j.truth.SourcePath(p)
		for _, mark := range j.nearest(p.Place, how) {
			j.addLength(mark, name, apart(j.marks[mark], p.Place), lengthSD)
		}
		others := slices.Clone(points[:i])
		slices.SortStableFunc(others, func(a, b study.PlacedPoint) int {
			return cmp.Compare(apart(a.Place, p.Place), apart(b.Place, p.Place))
		})
		for _, q := range others[:min(len(others), how.direct)] {
			j.addLength(j.truth.SourcePath(q), name, apart(q.Place, p.Place), directSD)
		}
		if how.heights {
			j.addPlumbed(&m.Heights, name, p.Place[2], level)
		}
		if how.plumbed > i%2 {
			j.addPlumbed(&m.Sides, name, p.Place[1], plumb)
		}
		if how.plumbed > (i+1)%2 {
			j.addPlumbed(&m.Stations, name, p.Place[0], plumb)
		}
	}
}

// nearest returns the marks that a point is taped from.
func (j *tapeJob) nearest(place study.Vec3, how *tapeScheme) []string {
	var marks []string
	for _, name := range slices.Sorted(maps.Keys(j.marks)) {
		if int(name[0]-'A') < how.of {
			marks = append(marks, name)
		}
	}
	slices.SortStableFunc(marks, func(a, b string) int { return cmp.Compare(apart(j.marks[a], place), apart(j.marks[b], place)) })
	return marks[:how.marks]
}

func (j *tapeJob) addLength(from, to string, value, sd float64) {
	value, sd = j.reading(value, sd)
	j.study.Measured.Lengths = append(j.study.Measured.Lengths, study.Length{From: from, To: to, Value: value, SD: sd})
}

func (j *tapeJob) addPlumbed(list *[]study.Plumbed, of string, value, sd float64) {
	value, sd = j.reading(value, sd)
	*list = append(*list, study.Plumbed{Of: of, Value: value, SD: sd})
}

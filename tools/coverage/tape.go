package main

import (
	"cmp"
	"context"
	"fmt"
	"maps"
	"math"
	"math/rand/v2"
	"slices"

	"toewright/internal/engine"
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
	nearestMarks                         = 5    // a point is taped from
	tapedNeighbours                      = 1    // direct lengths of a point
)

// newTapeJob makes a car of a template and tapes it; everything follows from the seed and
// the number. Marks stand off by markSD, mm.
func newTapeJob(t *study.Template, seed uint64, n int, markSD float64) *tapeJob {
	doc := t.Document()
	j := &tapeJob{truth: doc, r: rand.New(rand.NewPCG(seed, uint64(n)))}
	mm := doc.Units.FromMillimetres
	j.scatter(j.truth, func() float64 { return mm(otherCarSD * max(-2, min(2, j.r.NormFloat64()))) })
	j.study = j.truth.Clone()
	j.scatter(j.study, func() float64 { return mm(templateOff * (2*j.r.Float64() - 1)) })
	j.setMarks(markSD)
	j.tape()
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

// reading returns a value as read, with its scatter, to half a millimetre or 1/64 in.
func (j *tapeJob) reading(value, sd float64) (float64, float64) {
	u := j.truth.Units
	return u.FromMillimetres(math.Round(2*(u.Millimetres(value)+sd*j.r.NormFloat64())) / 2), u.FromMillimetres(sd)
}

func apart(a, b study.Vec3) float64 {
	return math.Hypot(math.Hypot(a[0]-b[0], a[1]-b[1]), a[2]-b[2])
}

// tape measures every hardpoint from the nearest marks, from its nearest neighbour, its
// height, and one of its other coordinates by turns.
func (j *tapeJob) tape() {
	m, points := j.study.Measured, j.truth.Points()
	for i, p := range points {
		name := j.truth.SourcePath(p)
		marks := slices.Sorted(maps.Keys(j.marks))
		slices.SortStableFunc(marks, func(a, b string) int { return cmp.Compare(apart(j.marks[a], p.Place), apart(j.marks[b], p.Place)) })
		for _, mark := range marks[:nearestMarks] {
			j.addLength(mark, name, apart(j.marks[mark], p.Place), lengthSD)
		}
		others := slices.Clone(points[:i])
		slices.SortStableFunc(others, func(a, b study.PlacedPoint) int {
			return cmp.Compare(apart(a.Place, p.Place), apart(b.Place, p.Place))
		})
		for _, q := range others[:min(len(others), tapedNeighbours)] {
			j.addLength(j.truth.SourcePath(q), name, apart(q.Place, p.Place), directSD)
		}
		j.addPlumbed(&m.Heights, name, p.Place[2], levelSD)
		if i%2 == 0 {
			j.addPlumbed(&m.Sides, name, p.Place[1], plumbSD)
		} else {
			j.addPlumbed(&m.Stations, name, p.Place[0], plumbSD)
		}
	}
}

func (j *tapeJob) addLength(from, to string, value, sd float64) {
	value, sd = j.reading(value, sd)
	j.study.Measured.Lengths = append(j.study.Measured.Lengths, study.Length{From: from, To: to, Value: value, SD: sd})
}

func (j *tapeJob) addPlumbed(list *[]study.Plumbed, of string, value, sd float64) {
	value, sd = j.reading(value, sd)
	*list = append(*list, study.Plumbed{Of: of, Value: value, SD: sd})
}

// tapeSlips are what goes wrong in one measure, or between two.
var tapeSlips = []struct {
	name  string
	spoil func(j *tapeJob)
}{
	{"none", func(*tapeJob) {}},
	{"10 mm", func(j *tapeJob) { j.spoil(func(v float64) float64 { return v + 10*j.sign() }) }},
	{"a foot", func(j *tapeJob) { j.spoil(func(v float64) float64 { return v + 12*25.4*j.sign() }) }},
	{"wrong end of a metre rule", func(j *tapeJob) { j.spoil(func(v float64) float64 { return 1000 - v }) }},
	{"two exchanged", (*tapeJob).exchange},
}

func (j *tapeJob) sign() float64 { return math.Copysign(1, j.r.Float64()-0.5) }

// least is the least change, mm, that is called a slip.
const leastSlip = 9.0

// spoil changes one length from a mark by a function of mm that leaves a length.
func (j *tapeJob) spoil(change func(float64) float64) {
	u, lengths := j.truth.Units, j.study.Measured.Lengths
	for {
		i := j.r.IntN(len(lengths))
		was := u.Millimetres(lengths[i].Value)
		if now := change(was); j.fromMark(i) && now > 50 && math.Abs(now-was) >= leastSlip {
			lengths[i].Value = u.FromMillimetres(now)
			j.slipped = append(j.slipped, fmt.Sprintf("lengths.%d", i))
			return
		}
	}
}

func (j *tapeJob) fromMark(i int) bool {
	_, ok := j.marks[j.study.Measured.Lengths[i].From]
	return ok
}

// exchange writes two lengths from one mark each in the place of the other.
func (j *tapeJob) exchange() {
	u, lengths := j.truth.Units, j.study.Measured.Lengths
	for {
		a, b := j.r.IntN(len(lengths)), j.r.IntN(len(lengths))
		if lengths[a].From != lengths[b].From || !j.fromMark(a) || u.Millimetres(math.Abs(lengths[a].Value-lengths[b].Value)) < leastSlip {
			continue
		}
		lengths[a].Value, lengths[b].Value = lengths[b].Value, lengths[a].Value
		j.slipped = append(j.slipped, fmt.Sprintf("lengths.%d", a), fmt.Sprintf("lengths.%d", b))
		return
	}
}

// tapeOutcome is what became of a job.
type tapeOutcome struct {
	coordinates, held int     // settled ones, and those whose 90 % band holds the true one
	ends, endsHeld    int     // toe at the ends of the window
	toeSD             float64 // sum over the ends, degrees
	slips, named      int
	left              int     // sound measures left out
	worst             float64 // miss of a settled coordinate, mm
	lost              int     // jobs that land elsewhere: a coordinate is off by many standard deviations
}

// Half of a 90 % band, and how far off no sound location is, in standard deviations.
const (
	bandSD = 1.6448536269514722
	lostSD = 8
)

// locate solves a job and compares it with the truth.
func (j *tapeJob) locate(ctx context.Context) (o tapeOutcome, err error) {
	none := 0
	l, err := engine.Locate(ctx, j.study, engine.LocateOptions{Measure: &none})
	if err != nil {
		return o, err
	}
	worst := 0.0
	for _, p := range j.truth.Points() {
		got := l.Points[j.truth.SourcePath(p)]
		if !got.Settled {
			continue
		}
		for k := range p.Place {
			miss := math.Abs(got.Value[k] - p.Place[k])
			o.coordinates++
			if miss <= bandSD*got.SD[k] {
				o.held++
			}
			o.worst = max(o.worst, j.truth.Units.Millimetres(miss))
			worst = max(worst, miss/got.SD[k])
		}
	}
	if worst > lostSD {
		o.lost = 1
	}
	o.slips = len(j.slipped)
	for _, out := range l.Outliers {
		if slices.Contains(j.slipped, out.Measure) {
			o.named++
		} else {
			o.left++
		}
	}
	return o, j.compareToe(ctx, l, &o)
}

// compareToe holds the toe at the window's ends against the true car's.
func (j *tapeJob) compareToe(ctx context.Context, l *engine.LocateResult, o *tapeOutcome) error {
	sweep, err := engine.Sweep(ctx, j.truth, engine.SweepOptions{})
	if err != nil {
		return nil // a car that cannot be built has no toe
	}
	w := j.truth.Window()
	for i := range sweep.Sweeps {
		s := &sweep.Sweeps[i]
		toe, ok := l.Toe[s.Side]
		if !ok || toe.Problem != "" || s.Candidate != study.BaseName {
			continue
		}
		at := map[float64]float64{}
		for _, p := range s.Positions {
			at[p.Travel] = float64(p.Toe)
		}
		for travel, end := range map[float64]engine.ToeEnd{w.Bump: toe.Bump, -w.Droop: toe.Droop} {
			if _, ok := at[travel]; !ok || travel == 0 {
				continue
			}
			o.ends++
			o.toeSD += float64(end.SD)
			if math.Abs(float64(end.Value)-(at[travel]-at[0])) <= bandSD*float64(end.SD) {
				o.endsHeld++
			}
		}
	}
	return nil
}

// join adds another outcome.
func (o *tapeOutcome) join(a tapeOutcome) {
	o.coordinates += a.coordinates
	o.held += a.held
	o.ends += a.ends
	o.endsHeld += a.endsHeld
	o.toeSD += a.toeSD
	o.slips += a.slips
	o.named += a.named
	o.left += a.left
	o.lost += a.lost
	o.worst = max(o.worst, a.worst)
}

// percent returns a share of a number.
func percent(part, whole int) float64 { return 100 * float64(part) / float64(whole) }

// coverage returns the share of coordinates held by their band, percent.
func (o *tapeOutcome) coverage() float64 { return percent(o.held, o.coordinates) }

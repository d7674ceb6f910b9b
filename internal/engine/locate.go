package engine

import (
	"context"
	"strings"

	"toewright/internal/study"
	"toewright/optimize"
	"toewright/solver"
)

// LocateOptions say how a car is located. The zero value is what the study says.
type LocateOptions struct {
	// Measure is the number of further measures listed; nil is [DefaultMeasured].
	Measure *int `json:"measure,omitzero"`
	// Curve asks for the toe change over the whole window too, and for what each measure
	// should read.
	Curve bool `json:"curve,omitzero"`
}

// LocateResult is what [Locate] returns: where the hardpoints are that a tape, a level
// and a plumb line most likely measured, and what is left open. Lengths are in the file's
// units, angles in degrees.
type LocateResult struct {
	Units  study.Units             `json:"units"`
	Points map[string]LocatedPoint `json:"points"` // by their paths, as the measures name them
	Marks  map[string]LocatedMark  `json:"marks"`
	Toe    map[string]LocatedToe   `json:"toe"` // by side; the right one only where the file states it
	// ChiSquare includes the priors; DegreesOfFreedom are the measures used.
	ChiSquare        float64             `json:"chiSquare"`
	DegreesOfFreedom int                 `json:"degreesOfFreedom"`
	Chance           float64             `json:"chance"`   // of measures that agree as badly, or worse, were all as stated
	Verdict          string              `json:"verdict"`  // as that of a fit
	Outliers         []TapeOutlierResult `json:"outliers"` // measures left out
	Next             []NextTape          `json:"next"`     // what to measure next, the most useful first
	// Spacer is what a spacer does, beside which the toe is known well enough or not.
	Spacer *TapedSpacer `json:"spacer,omitzero"`
	// Expected is what each measure should read by the points located: lengths, heights,
	// sides, stations.
	Expected []float64 `json:"expected,omitzero"`
	Words    []string  `json:"words"` // what it comes to, in sentences
}

// LocatedPoint is a hardpoint where the measures put it.
type LocatedPoint struct {
	LocatedMark
	// Settled is false where a coordinate is hardly better known than before.
	Settled bool `json:"settled"`
}

// LocatedMark is a place and one standard deviation of each coordinate.
type LocatedMark struct {
	Value study.Vec3 `json:"value"`
	SD    study.Vec3 `json:"sd"`
}

// LocatedToe is the toe change at the ends of the window of travel, with the standard
// deviation that the tape leaves in it.
type LocatedToe struct {
	Bump  ToeEnd `json:"bump"`
	Droop ToeEnd `json:"droop"`
	// Curve is the toe change over the window.
	Curve []TapedToe `json:"curve,omitzero"`
	// Problem says why there is none: the located car is not built or does not reach.
	Problem string `json:"problem,omitzero"`
}

// ToeEnd is a toe change and its standard deviation, degrees.
type ToeEnd struct {
	Value Number `json:"value"`
	SD    Number `json:"sd"`
}

// TapeOutlierResult is a measure that disagrees with all others.
type TapeOutlierResult struct {
	Measure  string  `json:"measure"`         // where it stands in the file
	Of       string  `json:"of"`              // its point, or "A to B" of a length
	From     string  `json:"from,omitzero"`   // the ends of a length
	To       string  `json:"to"`              // that, or the point
	Value    float64 `json:"value"`           // as the file has it
	Expected float64 `json:"expected"`        // as the others have it
	Score    float64 `json:"score"`           // of the difference, in standard deviations
	Likely   string  `json:"likely,omitzero"` // the slip that would make one of the other
	// Or are measures of which one may be wrong in its place: with that one left out all
	// others agree about as well. Standard deviations allow for it.
	Or []TapeOutlierResult `json:"or,omitzero"`
}

// NextTape is a measure to take, and what it would leave of the toe's standard deviation
// at the end of the window where that is largest.
type NextTape struct {
	From  string  `json:"from,omitzero"`
	Of    string  `json:"of"`
	Kind  string  `json:"kind"`  // as [study.Measure.Kind] has it
	ToeSD float64 `json:"toeSd"` // degrees
	Words string  `json:"words"`
	Key   string  `json:"key"` // as measured.unreachable has it
}

// TapedToe is the toe change at a travel and its standard deviation, degrees.
type TapedToe struct {
	Travel float64 `json:"travel"`
	ToeEnd
}

// TapedSpacer is what one spacer at the outer ball does to the toe change at that end of
// the window where it does more.
type TapedSpacer struct {
	Step float64 `json:"step"` // its thickness
	Toe  Number  `json:"toe"`  // degrees
	// Narrow says that the 90 % bands of the toe at both ends are within half of that
	// either way: which spacer is best is then known.
	Narrow bool `json:"narrow"`
}

// settledShare is the part of the prior's standard deviation above which a coordinate is
// not settled.
const settledShare = 0.5

// locator is a location in the making.
type locator struct {
	*taping
	car *optimize.FittedCar
	out *LocateResult
}

// Locate finds the hardpoints that the study's tape measured.
func Locate(ctx context.Context, d *study.Document, o LocateOptions) (*LocateResult, error) {
	if err := d.ReadyToLocate(); err != nil {
		return nil, explain(err, "")
	}
	if n := given(o.Measure, DefaultMeasured); n < 0 {
		return nil, wrongf("measure", "%d is not a number of measures, want 0 or more", n)
	}
	t, err := newTaping(d)
	if err != nil {
		return nil, err
	}
	l := &locator{taping: t}
	fit := optimize.GaugeFit{Priors: t.priors(study.Left, study.Right), Taped: t.taped}
	if l.car, err = optimize.FitCar(ctx, &fit); err != nil {
		return nil, explain(err, "measured")
	}
	l.out = &LocateResult{
		Units: d.Units, ChiSquare: l.car.ChiSquare, DegreesOfFreedom: l.car.Freedom,
		Chance: l.car.Chance(), Verdict: verdictNames[l.car.Verdict()],
		Points: map[string]LocatedPoint{}, Marks: map[string]LocatedMark{}, Toe: map[string]LocatedToe{}, Next: []NextTape{},
	}
	l.place()
	l.out.Outliers = t.outliers(l.car)
	if err := l.addToe(ctx, given(o.Measure, DefaultMeasured), o.Curve); err != nil {
		return nil, err
	}
	l.out.Words = l.words()
	return l.out, nil
}

// place sets where points and marks are.
func (l *locator) place() {
	for _, p := range l.points {
		one := LocatedPoint{LocatedMark: LocatedMark{Value: p.Place}, Settled: true}
		for axis, key := range p.by {
			k := l.unknown(key, selected(p.Side))
			one.move(l, axis, k, p.Side == study.Right)
			one.Settled = one.Settled && l.car.SD(k) <= settledShare*l.doc.PriorSD()
		}
		l.out.Points[p.label] = one
	}
	for i, name := range l.marks {
		one := LocatedMark{Value: l.doc.Measured.Marks[name]}
		for k := range l.car.Unknowns {
			if u := &l.car.Unknowns[k]; u.Kind == optimize.MarkUnknown && u.Mark == i {
				one.move(l, u.Axis, k, false)
			}
		}
		l.out.Marks[name] = one
	}
}

// move moves a coordinate by what unknown k was found to be.
func (m *LocatedMark) move(l *locator, axis, k int, right bool) {
	by := l.doc.Units.FromMillimetres(l.car.Values[k])
	if right && axis == 1 {
		by = -by // outboard
	}
	m.Value[axis] += by
	m.SD[axis] = l.doc.Units.FromMillimetres(l.car.SD(k))
}

// unknown returns the unknown that a coordinate of a side is; there is one.
func (l *locator) unknown(key string, s solver.Selection) int {
	for k := range l.car.Unknowns {
		u := &l.car.Unknowns[k]
		if u.Kind == optimize.CarUnknown && u.Parameter.Key == key && (u.Sides == solver.BothSides || u.Sides == s) {
			return k
		}
	}
	return -1
}

// ApplyLocation returns a copy of a study whose hardpoints are where a location put them.
// Those that no measure moved keep their source. What was measured stays in the study.
func ApplyLocation(d *study.Document, l *LocateResult) (*study.Document, error) {
	t, err := newTaping(d)
	if err != nil {
		return nil, err
	}
	out := d.Clone()
	for _, p := range t.points {
		at, ok := l.Points[p.label]
		if !ok {
			return nil, wrongf(p.label, "was not located; locate the study as it stands")
		}
		for axis := range p.Place {
			if at.SD[axis] < d.Units.FromMillimetres(untouched*d.PriorSD()) {
				p.Place[axis] = at.Value[axis]
			}
		}
		if err := out.SetPoint(p.PlacedPoint); err != nil {
			return nil, explain(err, "")
		}
	}
	out.Notes = strings.TrimSpace(out.Notes + "\nHardpoints are where a tape located them.")
	out.Attribute(d, study.FromTape)
	return out, nil
}

// untouched is the part of the prior's standard deviation that a coordinate keeps which no
// measure says anything of, but for rounding.
const untouched = 1 - 1e-9

package engine

import (
	"cmp"
	"context"

	"toewright/internal/study"
	"toewright/optimize"
	"toewright/solver"
)

// fitter turns a study's readings into a fit of package optimize.
type fitter struct {
	*sweeper
	problem  optimize.GaugeFit
	places   []int // of the problem's sets among the study's readings
	checks   []optimize.ReadingSet
	checked  []int // places of those to verify
	slips    []optimize.Slip
	car      *optimize.FittedCar
	taping   *taping // nil where the study has no measures of a tape
	widened  float64 // times the priors by default; 0 where the study states its own
	progress stage
}

func newFitter(ctx context.Context, d *study.Document) (*fitter, error) {
	sweep, err := newSweeper(d, d.Window(), "")
	if err != nil {
		return nil, err
	}
	if err := sweep.resolveTarget(); err != nil {
		return nil, err
	}
	f := &fitter{sweeper: sweep}
	f.problem.Base = sweep.base
	for i := range d.Readings {
		set, err := f.set(ctx, &d.Readings[i])
		if err != nil {
			return nil, explain(err, "")
		}
		if d.Readings[i].Purpose == "verify" {
			f.checks, f.checked = append(f.checks, set), append(f.checked, i)
			continue
		}
		f.problem.Sets, f.places = append(f.problem.Sets, set), append(f.places, i)
	}
	if len(d.Measures()) > 0 {
		if f.taping, err = newTaping(d); err != nil {
			return nil, err
		}
		f.problem.Taped = f.taping.taped
	}
	return f, f.setPriors()
}

// usualRepeatability is one standard deviation of a reading in mm where a study
// states none: common practice of toe on a plate on a shop floor.
const usualRepeatability = 0.05

// set returns a set of readings in mm, its travels those of the wheel centre.
func (f *fitter) set(ctx context.Context, r *study.Reading) (optimize.ReadingSet, error) {
	mm := f.doc.Units.Millimetres
	out := optimize.ReadingSet{Name: r.Note, Base: mm(r.Base), Repeatability: cmp.Or(mm(r.Repeatability), usualRepeatability)}
	out.SlopeSD, out.Turned, out.Side = r.UsedSlopeSD(), r.Turned, r.Side.Solver()
	var err error
	if out.Gauge, err = optimize.ParseGauge(cmp.Or(r.Gauge, "indicators")); err != nil {
		return out, err
	}
	switch r.Direction {
	case "bump":
		out.Run = optimize.BumpRun
	case "droop":
		out.Run = optimize.DroopRun
	}
	if r.Zero != nil {
		zero := mm(*r.Zero)
		out.Zero = &zero
	}
	if out.Changes, err = f.doc.SolverChanges(f.design, r.Changes); err != nil {
		return out, err
	}
	return out, f.addValues(ctx, r, &out)
}

// addValues adds the readings, travel as read turned into that of the wheel.
func (f *fitter) addValues(ctx context.Context, r *study.Reading, out *optimize.ReadingSet) error {
	travels, err := f.readTravels(ctx, r)
	for i, travel := range travels {
		out.Readings = append(out.Readings, optimize.Reading{Travel: travel, Value: f.doc.Units.Millimetres(r.Values[i][1])})
	}
	return err
}

// TravelGauge returns how the travel of a set of readings was read, nil for the wheel
// centre's own. The height of the contact or of the lower ball over the body counts from
// that at the static height, bump positive; that of blocks under the body likewise, but
// they get lower in bump: bump is negative. A damper's length is the length itself between
// its mounts, which on most cars gets shorter in bump. A damper that the study does not
// have is an error that names its key.
func TravelGauge(d *study.Document, r *study.Reading) (*solver.TravelGauge, error) {
	switch r.TravelAs {
	case contactTravel:
		return &solver.TravelGauge{Reading: solver.ContactReading}, nil
	case "block":
		return &solver.TravelGauge{Reading: solver.BlockReading}, nil
	case "lower-ball-joint":
		return &solver.TravelGauge{Reading: solver.LowerBallReading}, nil
	case "damper":
		return damperGauge(d, r)
	}
	return nil, nil
}

func damperGauge(doc *study.Document, r *study.Reading) (*solver.TravelGauge, error) {
	side := cmp.Or(r.Side, study.Left)
	d := doc.Suspension.Corner(side).Damper
	if d == nil {
		return nil, wrongf("suspension."+string(side)+".damper", "is missing: travel was read as the damper's length")
	}
	return &solver.TravelGauge{Reading: solver.DamperReading, Damper: mounts(doc, d)}, nil
}

// mounts returns the mounts of a damper or a spring as the solver takes them; what is
// on no arm is on the upright.
func mounts(doc *study.Document, d *study.Damper) solver.Damper {
	m := solver.Damper{Body: inMillimetres(doc, d.Body), Wheel: inMillimetres(doc, d.Moving)}
	switch d.On {
	case "lower-arm":
		m.On = solver.OnLowerArm
	case "upper-arm":
		m.On = solver.OnUpperArm
	}
	return m
}

func inMillimetres(d *study.Document, v study.Vec3) solver.Vec {
	mm := d.Units.Millimetres
	return solver.Vec{X: mm(v[0]), Y: mm(v[1]), Z: mm(v[2])}
}

// Names of the priors that are no parameters of the car.
const (
	travelZeroKey = "travelZero"
	steerZeroKey  = "steerZero"
)

// setPriors states what is free: what the study says or, where a tape was used, every
// coordinate of the sides that were read or taped.
func (f *fitter) setPriors() error {
	if f.taping != nil && f.doc.Priors == nil {
		f.problem.Priors = f.taping.priors(f.measuredSides()...)
		return nil
	}
	for _, p := range f.doc.Priors {
		switch p.Parameter {
		case travelZeroKey:
			f.problem.TravelZero = f.doc.Units.Millimetres(p.SD)
			continue
		case steerZeroKey:
			f.problem.SteerZero = f.steer(p.SD)
			continue
		}
		q, sides, err := solver.FindParameter(f.design, p.Parameter)
		if err != nil {
			return explain(err, "")
		}
		f.problem.Priors = append(f.problem.Priors, optimize.FitPrior{
			Parameter: q, Sides: sides, SD: f.doc.ToSolver(q, p.SD), Shared: p.Shared,
		})
	}
	return nil
}

// measuredSides returns the sides that were read or taped; both where they are one.
func (f *fitter) measuredSides() (sides []study.Side) {
	var seen [2]bool
	for i := range f.problem.Sets {
		seen[f.problem.Sets[i].Side] = true
	}
	for i := range f.taping.taped.Measures {
		for _, end := range []*optimize.TapePoint{&f.taping.taped.Measures[i].From, &f.taping.taped.Measures[i].To} {
			if end.Name != "" && end.Sides != solver.BothSides {
				seen[map[solver.Selection]solver.Side{solver.RightOnly: solver.Right}[end.Sides]] = true
			}
		}
	}
	for i, side := range []study.Side{study.Left, study.Right} {
		if seen[i] || f.taping.alike() || f.doc.Suspension.Common != nil {
			sides = append(sides, side)
		}
	}
	return sides
}

// fit solves the problem, with likely slips looked for first.
func (f *fitter) fit(ctx context.Context) (err error) {
	f.progress.report(0)
	if f.problem.Priors == nil {
		f.problem.Progress = f.progress.within(0, fitWidened).report
		if f.widened, err = f.problem.WidenPriors(ctx); err != nil {
			return err
		}
	}
	f.progress.report(fitWidened)
	f.problem.Progress = f.progress.within(fitWidened, fitSlips).report
	if f.slips, _, err = f.problem.Slips(ctx); err != nil {
		return err
	}
	f.progress.report(fitSlips)
	f.car, err = optimize.FitCar(ctx, &f.problem)
	f.progress.report(fitCar)
	return err
}

// What of a fit is done once its priors are wide enough, slips were looked for, and the
// car is found; advice, verification and the candidates are the rest.
const fitWidened, fitSlips, fitCar = 0.35, 0.6, 0.7

// judge returns that of the study's window on the sides that were read.
func (f *fitter) judge() optimize.Judge {
	j := optimize.Judge{Base: f.base, Hold: solver.HoldAll, Travels: f.grid.mm, Targets: targets(f.doc)}
	if !f.bothRead() {
		j.Sides = selectionOf([]solver.Side{f.problem.Sets[0].Side})
	}
	return j
}

// request returns what advice is asked for, nil where none is.
func (f *fitter) request() (*optimize.AdviceRequest, error) {
	a := f.doc.Advise
	if a == nil {
		return nil, nil
	}
	p, sides, err := solver.FindParameter(f.design, a.Parameter)
	if err != nil {
		return nil, explain(err, "")
	}
	return &optimize.AdviceRequest{
		Parameter: p, Sides: sides, Step: f.doc.ToSolver(p, a.Step),
		Min: f.doc.ToSolver(p, a.Min), Max: f.doc.ToSolver(p, a.Max), Window: f.judge(),
	}, nil
}

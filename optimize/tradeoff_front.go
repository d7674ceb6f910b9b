package optimize

import (
	"context"
	"math"
	"slices"

	"toewright/optimize/nlp"
)

const (
	// spreadStarts is how many spread starts a level has beside those that the levels
	// next to it give.
	spreadStarts = 3
	// toldEnds is from how many ends of a level, the best, those next to it start.
	toldEnds = 4
	// valueFloor is the share of the figure at the least aim below which figures are the
	// same, for those that go to zero.
	valueFloor = 1e-9
	// mostPasses bounds how often the levels are gone through to and fro: places spread
	// along the whole front in one, so that more than a few find nothing.
	mostPasses = 8
)

// front is the state of one trade-off.
type front struct {
	*TradeOff
	ctx      context.Context
	settings nlp.Settings
	worker   *frontWorker
	levels   []level // from the least of the aim to the least toe change
	spread   nlp.Halton
	starts   int                 // spread starts of a level
	drawn    int                 // of all levels, so far
	known    map[int]LevelSearch // by their spread starts
	fraction float64             // of the work done
	spent    int                 // evaluations
}

// level is one level at which the aim is held.
type level struct {
	at   float64       // in the aim's unit
	best *Design       // nil before there is one
	ends []nlp.Optimum // distinct places where local searches ended
	todo []levelStart  // places from which one is still to start

	drawn bool // has had its spread starts
}

func newFront(ctx context.Context, t *TradeOff, s *Settings) (*front, error) {
	if err := t.check(); err != nil {
		return nil, err
	}
	w, err := newFrontWorker(ctx, t)
	if err != nil {
		return nil, err
	}
	f := &front{TradeOff: t, ctx: ctx, settings: s.WithDefaults(len(t.Free)), worker: w, starts: spreadStarts, known: map[int]LevelSearch{}}
	for _, k := range t.Known.Levels {
		f.known[k.Start] = k
	}
	f.spread = nlp.NewHalton(len(t.Free), f.settings.Seed)
	if s != nil && s.Restarts > 0 {
		f.starts = s.Restarts
	}
	return f, nil
}

// ends searches the two ends of the front and sets the levels: none where no design holds
// the limits, one where none has less of the aim than that of the least toe change. It
// returns the places of the least aim.
func (f *front) ends() (least []nlp.Optimum, err error) {
	w, o := f.worker, f.objective()
	r, err := f.run(w.toe, o, f.Known.Toe)
	if err != nil || r.X == nil || r.Violation > nlp.LimitSlack {
		return nil, err
	}
	loose := level{best: w.design(r.X, r.Value), ends: r.Optima}
	f.levels = []level{loose}
	f.tell()
	a, err := f.run(w.aim, w.aim.objective(), f.Known.Aim, r.X)
	if err != nil || a.X == nil || a.Violation > nlp.LimitSlack {
		return nil, err
	}
	nearest := w.design(a.X, w.toe.point(a.X, &o).value)
	if !(nearest.Aim < loose.best.Aim) {
		return nil, nil
	}
	f.levels = make([]level, f.Levels)
	for k := range f.levels {
		f.levels[k].at = nearest.Aim + (loose.best.Aim-nearest.Aim)*float64(k)/float64(f.Levels-1)
	}
	f.levels[0].best, f.levels[f.Levels-1] = nearest, loose
	return a.Optima, nil
}

// least searches the level of the least aim, from the places where it is that.
func (f *front) least(places []nlp.Optimum) error {
	tight := &f.levels[0]
	if fixed := f.fixedBy(tight.at); fixed != nil {
		d, err := f.rest(fixed, tight.best)
		tight.best = d
		f.tellNext(0, nlp.Optimum{X: d.Values, Value: d.Value})
		return err
	}
	for _, o := range places {
		tight.todo = append(tight.todo, levelStart{o.X, told})
	}
	tight.todo = append(tight.todo, levelStart{f.levels[len(f.levels)-1].best.Values, told})
	f.search(0)
	if len(tight.ends) == 0 {
		f.tellNext(0, nlp.Optimum{X: tight.best.Values, Value: tight.best.Value})
	}
	return nil
}

// between searches the levels, from the least of the aim on and then to and fro.
func (f *front) between() {
	last := len(f.levels) - 1
	for k := 1; k < last; k++ {
		f.fraction = float64(k+1) / float64(last+2)
		f.search(k)
	}
	for _, o := range f.levels[last].ends {
		f.tellNext(last, o)
	}
	for range mostPasses {
		any := false
		for k := last - 1; k > 0; k-- {
			any = f.search(k) || any
		}
		for k := 1; k < last; k++ {
			any = f.search(k) || any
		}
		if !any {
			return
		}
	}
}

// search makes the local searches that a level has to do; from spread starts too where it
// has made none. It reports whether there was anything to do.
func (f *front) search(k int) bool {
	l := &f.levels[k]
	starts := l.todo
	l.todo = nil
	if !l.drawn {
		l.drawn = true
		starts = append(starts, f.draw()...)
	}
	for _, from := range starts {
		o, n, ok := f.from(l, from)
		f.spent += n
		if ok && !(o.Violation > nlp.LimitSlack) {
			f.add(k, o)
		}
		f.tellProgress(0, 0)
	}
	return len(starts) > 0
}

// levelStart is a place from which a local search of a level starts: spread start number n
// of all levels, or told by another level.
type levelStart struct {
	x []float64
	n int
}

// told is the number of a start that is not a spread one.
const told = -1

// from returns where the local search from a start ends, made now or known; none where the
// context has ended and it is not known.
func (f *front) from(l *level, s levelStart) (o nlp.Optimum, evaluations int, ok bool) {
	if k, known := f.known[s.n]; known {
		return nlp.Optimum{X: k.X, Value: k.Value, Violation: k.Violation}, k.Evaluations, k.X != nil
	}
	if f.ctx.Err() != nil {
		return nlp.Optimum{}, 0, false
	}
	return f.worker.from(l.at, s.x)
}

// add takes a place where a local search of a level ended, and tells the levels next to it
// of a new one.
func (f *front) add(k int, o nlp.Optimum) {
	l := &f.levels[k]
	better, floor := 0, valueFloor*f.levels[0].best.Value
	for i := range l.ends {
		switch e := &l.ends[i]; {
		case math.Abs(e.Value-o.Value) <= nlp.Agreement*e.Value+floor:
			return // the same place, or one that is as good
		case e.Value < o.Value:
			better++
		}
	}
	l.ends = append(l.ends, o)
	if l.best == nil || o.Value < l.best.Value {
		l.best = f.worker.design(o.X, o.Value)
		f.tell()
	}
	if better < toldEnds {
		f.tellNext(k, o)
	}
}

// tellNext makes a place of a level a start of those next to it: of the one with more of
// the aim, which can only be better for it; and of the one with less, which can only be
// worse, where the place is better than what that one has.
func (f *front) tellNext(k int, o nlp.Optimum) {
	if k+1 < len(f.levels)-1 {
		f.levels[k+1].todo = append(f.levels[k+1].todo, levelStart{o.X, told})
	}
	if k < 2 {
		return
	}
	if t := &f.levels[k-1]; t.best == nil || o.Value < t.best.Value {
		t.todo = append(t.todo, levelStart{o.X, told})
	}
}

// draw returns the next spread starts.
func (f *front) draw() (list []levelStart) {
	u := make([]float64, len(f.Free))
	for range f.starts {
		f.spread.Point(f.drawn, u)
		x := make([]float64, len(u))
		for i, v := range f.variables() {
			x[i] = v.FromUnit(u[i])
		}
		list = append(list, levelStart{x, f.drawn})
		f.drawn++
	}
	return list
}

// designs returns the best of all levels so far, none worse than one of less of the aim.
func (f *front) designs() []Design {
	var list []Design
	for i := range f.levels {
		if d := f.levels[i].best; d != nil {
			list = append(list, *d)
		}
	}
	return undominated(list)
}

// tell tells of the designs so far.
func (f *front) tell() {
	if f.Found != nil {
		f.Found(f.designs())
	}
}

// tellProgress tells how far the front is after so many evaluations more than those
// counted. The best is that of the least toe change, or what its search has so far.
func (f *front) tellProgress(more int, best float64) {
	if len(f.levels) > 0 {
		best = f.levels[len(f.levels)-1].best.Value
	}
	f.settings.Progress(Progress{Evaluations: f.spent + more, Best: best, Fraction: f.fraction})
}

// run makes one search of an end, from the usual starts and others; some of it is known.
func (f *front) run(m nlp.Model, o nlp.Objective, known []nlp.Polished, also ...[]float64) (nlp.Result, error) {
	p := f.problem(m)
	p.Objective, p.Also = o, also
	from, end := f.fraction, f.fraction+1/float64(f.Levels+1)
	s := f.settings
	s.Known = known
	s.Progress = func(p Progress) {
		f.fraction = from + (end-from)*p.Fraction
		f.tellProgress(p.Evaluations, p.Best)
	}
	r, err := nlp.Run(f.ctx, p, &s)
	f.fraction = end
	f.spent += r.Evaluations
	return r, err
}

// objective returns what is minimised beside the aim.
func (f *front) objective() nlp.Objective { return f.Objective(len(f.worker.toe.wheels)) }

// fixedBy returns the parameters that a level leaves no room: the parts of a distance
// that is to be none.
func (f *front) fixedBy(level float64) []int {
	if f.Aim.Of == nil && level <= nlp.LimitSlack*f.Aim.Scale {
		return f.worker.aim.parts
	}
	return nil
}

// rest returns the best design with the parameters that are fixed as a design has
// them.
func (f *front) rest(fixed []int, at *Design) (*Design, error) {
	var of []int
	for i := range f.Free {
		if !slices.Contains(fixed, i) {
			of = append(of, i)
		}
	}
	toe := f.worker.toe
	free, err := newRefit(f.ctx, &f.ToeSearch, toe, of)
	if err != nil || free == nil {
		return at, err
	}
	o := f.objective()
	pt := toe.point(free.at(at.Values), &o)
	if pt.broken > 0 || !(pt.value < at.Value) {
		return at, nil
	}
	return f.worker.design(pt.x, pt.value), nil
}

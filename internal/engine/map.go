package engine

import (
	"cmp"
	"context"

	"toewright/internal/study"
	"toewright/optimize"
	"toewright/solver"
)

// MapOptions say over which parameters, on which car, a map is drawn.
type MapOptions struct {
	X    string   `json:"x,omitzero"` // parameter; where empty, the search's first variable
	Y    string   `json:"y,omitzero"` // parameter; where empty, the search's second variable
	XMin *float64 `json:"xMin,omitzero"`
	XMax *float64 `json:"xMax,omitzero"`
	YMin *float64 `json:"yMin,omitzero"`
	YMax *float64 `json:"yMax,omitzero"`

	Candidate string `json:"candidate,omitzero"` // car on which the map lies; where empty, the base car
	Figure    string `json:"figure,omitzero"`    // "rms" or "peak"; where empty, what the search minimises
	Side      string `json:"side,omitzero"`      // "left", "right" or, as where empty, "both": the worse of them
	Columns   *int   `json:"columns,omitzero"`   // nil is [DefaultMap]
	Rows      *int   `json:"rows,omitzero"`      // nil is [DefaultMap]
	// Scenario names the set-up of the study's search that the car is in, or is
	// [AllScenarios]; where empty the car is as it stands.
	Scenario string `json:"scenario,omitzero"`

	Progress func(Progress) `json:"-"`
}

// DefaultMap is the number of cells along a side of a map.
const DefaultMap = 64

// MapResult is what [Map] returns.
type MapResult struct {
	Units     study.Units `json:"units"`
	Candidate string      `json:"candidate"`
	Scenario  string      `json:"scenario,omitzero"`
	Figure    string      `json:"figure"` // "rms" or "peak" of toe change less target, degrees
	Side      string      `json:"side"`
	X         MapAxis     `json:"x"`
	Y         MapAxis     `json:"y"`
	// Cells has a row for each value of Y, none where the car cannot be built or
	// does not reach the window.
	Cells [][]Number `json:"cells"`
	Best  MapBest    `json:"best"` // cell of the least figure that holds all limits
	// Limits are those of the study's search.
	Limits []MapLimit `json:"limits,omitzero"`
}

// MapAxis is a parameter and the values at which it was tried.
type MapAxis struct {
	Parameter string    `json:"parameter"`
	Values    []float64 `json:"values"`
}

// MapBest is the best cell of a map, none where no cell can be built and holds all
// limits.
type MapBest struct {
	X      Number `json:"x"`
	Y      Number `json:"y"`
	Figure Number `json:"figure"`
}

// Map returns the figure of a car over two of its parameters. A call that is
// cancelled is an error.
func Map(ctx context.Context, d *study.Document, o MapOptions) (*MapResult, error) {
	r, err := NewMapRun(d, o)
	if err != nil {
		return nil, err
	}
	cells, err := r.Fill(ctx, Whole)
	if err != nil {
		return nil, err
	}
	return r.Result(ctx, cells)
}

// mapper turns options into a map of package optimize.
type mapper struct {
	*sweeper
	car     car
	problem optimize.ParameterMap // in no set-up
	measure optimize.Measure

	scenario string
	layers   []mapLayer // by set-up
	across   optimize.Across
}

func newMapper(d *study.Document, o *MapOptions) (*mapper, error) {
	sweep, car, err := newJudged(d, o.Candidate)
	if err != nil {
		return nil, err
	}
	m := &mapper{sweeper: sweep, car: car}
	minimise := ""
	if d.Search != nil {
		minimise = d.Search.Minimise
	}
	m.measure = measureOf(cmp.Or(o.Figure, minimise))
	judge, err := m.judging(m.car, o.Side)
	if err != nil {
		return nil, err
	}
	m.problem = optimize.ParameterMap{Judge: judge, Changes: m.car.axle.Changes()}
	if m.problem.Columns, err = counted("columns", o.Columns, DefaultMap, optimize.MinMap, optimize.MaxMap); err != nil {
		return nil, err
	}
	if m.problem.Rows, err = counted("rows", o.Rows, DefaultMap, optimize.MinMap, optimize.MaxMap); err != nil {
		return nil, err
	}
	if m.problem.X, err = m.axis("x", o.X, 0, o.XMin, o.XMax); err != nil {
		return nil, err
	}
	if m.problem.Y, err = m.axis("y", o.Y, 1, o.YMin, o.YMax); err != nil {
		return nil, err
	}
	m.scenario = o.Scenario
	return m, m.setScenario(o.Scenario)
}

// axis returns the parameter of an axis: that named, else variable number n of
// the study's search; its bounds are those given, else the variable's, else the
// registry's usual ones.
func (m *mapper) axis(option, key string, n int, low, high *float64) (optimize.Free, error) {
	var known *study.Variable
	if s := m.doc.Search; s != nil {
		for i := range s.Variables {
			if v := &s.Variables[i]; v.Parameter == key || key == "" && i == n {
				known = v
			}
		}
	}
	if key == "" && known == nil {
		return optimize.Free{}, wrongf(option, "names no parameter, and the study's search has no variable %d to take in its place", n+1)
	}
	if key == "" {
		key = known.Parameter
	}
	p, sides, err := solver.FindParameter(m.design, key)
	if err != nil {
		return optimize.Free{}, wrongf(option, "%s", bare(err))
	}
	f := optimize.Free{Parameter: p, Sides: sides, Min: p.Min, Max: p.Max}
	if known != nil {
		f.Min, f.Max = m.doc.ToSolver(p, known.Min), m.doc.ToSolver(p, known.Max)
	}
	if low != nil {
		f.Min = m.doc.ToSolver(p, *low)
	}
	if high != nil {
		f.Max = m.doc.ToSolver(p, *high)
	}
	if !(f.Min < f.Max) {
		return f, wrongf(option+"-min", "%.6g is not below %s-max, %.6g, of %s", m.doc.FromSolver(p, f.Min), option, m.doc.FromSolver(p, f.Max), key)
	}
	return f, nil
}

// Result returns the map of all its cells, radians, and measures the limits over it. It
// is an error where the context ends.
func (r *MapRun) Result(ctx context.Context, cells []Number) (*MapResult, error) {
	limits, err := r.mapLimits(ctx)
	if err != nil {
		return nil, err
	}
	p := &r.problem
	out := &MapResult{
		Units: r.doc.Units, Candidate: r.car.name, Scenario: r.scenario, Figure: r.measure.String(), Side: sideNames[p.Sides],
		X: r.values(&p.X, p.Columns), Y: r.values(&p.Y, p.Rows), Best: MapBest{none, none, none}, Limits: limits,
	}
	for j := range p.Rows {
		row := make([]Number, p.Columns)
		for i := range row {
			row[i] = degrees(float64(cells[j*p.Columns+i]))
		}
		out.Cells = append(out.Cells, row)
	}
	row, col := leastCell(out.Cells, out.Limits)
	if row >= 0 {
		out.Best = MapBest{Number(out.X.Values[col]), Number(out.Y.Values[row]), out.Cells[row][col]}
	}
	atBest(out.Limits, row, col)
	return out, nil
}

func (m *mapper) values(f *optimize.Free, n int) MapAxis {
	a := MapAxis{Parameter: f.Key()}
	for i := range n {
		a.Values = append(a.Values, m.doc.FromSolver(f.Parameter, f.At(i, n)))
	}
	return a
}

package model

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"toewright/internal/engine"
	"toewright/internal/number"
	"toewright/internal/study"
	"toewright/solver"
)

// Parts of the table.
const (
	toePart = iota
	steerPart
	jointPart
	roomPart
	costPart
	wheelPart
)

// figureRow says how a figure of the engine stands in the table.
type figureRow struct {
	key    string
	label  string // the engine's where empty
	part   int
	usual  bool
	better better
	needs  string // key of the study without which there is none
}

// figureRows are in the order of the table; limits stand among them.
var figureRows = []figureRow{
	{"rms", "Toe change, rms", toePart, true, less, ""},
	{"peak", "Toe change, peak", toePart, true, less, ""},
	{"peakTravel", "Toe change, peak at travel", toePart, false, neither, ""},
	{"peakToPeak", "Toe, highest less lowest", toePart, false, less, ""},
	{"slope", "Slope at ride height", toePart, true, less, ""},
	{"curvature", "Curvature at ride height", toePart, false, less, ""},
	{"staticToe", "", toePart, false, neither, ""},
	{"steeringRatio", "", steerPart, true, neither, "steering.perTurn"},
	{"ackermann", "Ackermann at 20 deg", steerPart, true, neither, "vehicle.wheelbase"},
	{"toeOutOnTurns", "Toe-out on turns at 20 deg", steerPart, false, neither, ""},
	{"turningCircle", "", steerPart, false, neither, "steering.lock"},
	{"outerBallAtLock", "Outer ball, lock to lock", jointPart, true, less, "steering.lock"},
	{"innerBallAtLock", "Inner ball, lock to lock", jointPart, true, less, "steering.lock"},
	{"outerBallAngle", "Outer ball, straight ahead", jointPart, false, less, ""},
	{"innerBallAngle", "Inner ball, straight ahead", jointPart, false, less, ""},
	{"steeringArmLength", "", roomPart, true, neither, ""},
	{"tieRodLength", "", roomPart, false, neither, ""},
	{"staticCamber", "", wheelPart, false, neither, ""},
	{"camberRange", "", wheelPart, false, neither, ""},
	{"staticCaster", "", wheelPart, false, neither, ""},
	{"casterRange", "", wheelPart, false, neither, ""},
	{"staticKingpinInclination", "", wheelPart, false, neither, ""},
	{"scrubRadius", "", wheelPart, false, neither, ""},
	{"trail", "", wheelPart, false, neither, ""},
	{"rollCentreHeight", "", wheelPart, false, neither, ""},
	{"halfTrackRange", "", wheelPart, false, neither, ""},
	{"wheelbaseRange", "", wheelPart, false, neither, ""},
}

// sources lists the rows that the study has.
func (c *comparer) sources() (list []rowSource) {
	var parts [wheelPart + 1][]rowSource
	add := func(rows ...rowSource) {
		for _, r := range rows {
			parts[r.Part] = append(parts[r.Part], r)
		}
	}
	add(c.worstSetUp()...)
	limits := c.limits()
	for i := range figureRows {
		f := &figureRows[i]
		for k := range limits {
			if limits[k].Part == f.part && limits[k].of == f.key {
				add(limits[k].rowSource)
			}
		}
		if !limits.instead(f.key) {
			add(c.figure(f))
		}
	}
	for k := range limits {
		if limits[k].of == "" {
			add(limits[k].rowSource)
		}
	}
	add(c.series())
	add(c.loads()...)
	add(c.price())
	for _, p := range parts {
		list = append(list, p...)
	}
	return list
}

// meanings say what figures are that the trade has no one word for.
var meanings = map[string]string{
	"rms":        "Root mean square of the toe change less the target, over the positions of the window: how far off the curve is on the whole.",
	"peak":       "Largest toe change less the target within the window, whichever its sign.",
	"peakTravel": "Wheel travel at which the largest error stands, bump positive.",
	"slope":      "Toe change per travel at ride height. Positive toes in as the wheel rises. The height of a ball corrects a slope.",
	"peakToPeak": "Largest toe less smallest within the window, whatever the target.",
}

// toeKeys are the figures that are known in every frame.
var toeKeys = map[string]bool{"rms": true, "peak": true, "peakTravel": true, "peakToPeak": true, "slope": true, "curvature": true}

// figure is the row of a figure.
func (c *comparer) figure(f *figureRow) rowSource {
	of := engine.CompareFigureByKey(f.key)
	label := f.label
	if label == "" {
		label = capital(of.Label)
	}
	s := rowSource{
		CompareRow: CompareRow{Key: f.key, Label: label, Note: of.Unit(c.n.Style), Part: f.part, Usual: f.usual},
		better:     f.better, place: of.Place, cell: func(car *Car) CompareCell { return c.figureOf(car, of) },
		write: func(x float64) string { return of.Number(c.n.Style, c.file(), engine.Number(x)) },
	}
	if f.key == "slope" || f.key == "curvature" {
		s.better = c.flatIsBetter(f.better)
	}
	if f.needs != "" {
		s.Lacks = lacksKey(c.desk.Session.Document(), f.needs)
	}
	s.Meaning = meanings[f.key]
	return s
}

// flatIsBetter says that a flat curve is better only where none other is wanted.
func (c *comparer) flatIsBetter(b better) better {
	if f := c.desk.Session.Document().Search; f != nil && (KindOfTarget(f) != FlatTarget || f.TargetRight != nil) {
		return neither
	}
	return b
}

// lacksKey says that the study must state a key; "" where it does.
func lacksKey(d *study.Document, key string) string {
	stated := map[string]bool{
		"steering.perTurn":  d.Steering != nil && d.Steering.PerTurn != 0,
		"steering.lock":     d.Steering != nil && d.Steering.Lock != 0,
		"vehicle.wheelbase": d.Vehicle.Wheelbase != 0,
	}
	switch {
	case stated[key]:
		return ""
	case d.Steering == nil:
		return "the axle is not steered"
	}
	return "state " + study.Spoken(key) + " in Car"
}

func (c *comparer) figureOf(car *Car, of *engine.CompareFigure) CompareCell {
	if toeKeys[of.Key] {
		k := CompareCell{}
		for s := range k.value {
			f := c.cars.ToeFigures(car, solver.Side(s))
			k.value[s] = float64(of.Of(&f))
		}
		return k
	}
	a := c.answer(car)
	if k, pending := yet(len(a.Sides) == 2, a.CompareFault); pending {
		return k
	}
	return CompareCell{value: [2]float64{float64(of.Of(&a.Sides[0].Figures)), float64(of.Of(&a.Sides[1].Figures))}}
}

// worstSetUp is the row of the largest error over all set-ups; none where the study has
// none.
func (c *comparer) worstSetUp() []rowSource {
	f := c.desk.Session.Document().Search
	if f == nil || len(f.Scenarios) == 0 {
		return nil
	}
	return []rowSource{{
		CompareRow: CompareRow{Key: "worst", Label: "Toe change, worst set-up", Note: c.n.ToeMark(), Part: toePart, Usual: true,
			Meaning: "Largest toe change less the target in that set-up of the search which strays farthest."},
		better: less, write: c.writeToe,
		cell: func(car *Car) CompareCell {
			a := c.answer(car)
			if k, pending := yet(a.Served != nil, a.CompareFault); pending {
				return k
			}
			worst := a.Served.Worst()
			if worst == nil {
				return missing("a set-up cannot be served: " + unserved(a.Served))
			}
			k := once(float64(worst.Peak))
			k.Title = "in set-up " + worst.Name
			return k
		},
	}}
}

// unserved says which set-up a car cannot serve, and why.
func unserved(s *engine.Served) string {
	for _, up := range s.Scenarios {
		if up.Problem != "" {
			return up.Name + ", " + study.Spoken(up.Problem)
		}
	}
	return ""
}

func (c *comparer) writeToe(deg float64) string { return c.n.Toe(deg) }

// series is the row of the share of cars that pass within their tolerances.
func (c *comparer) series() rowSource {
	doc := c.desk.Session.Document()
	y := YieldOf(doc)
	s := rowSource{
		CompareRow: CompareRow{
			Key: "series", Label: "Cars within " + c.n.Toe(y.Limit) + " " + c.n.ToeMark(), Note: "%", Part: costPart, Usual: true,
			Meaning: "Share of a series of cars that differ within the tolerances and keep within the limit, in every set-up by its weight.",
		},
		better: more, write: number.Percent,
		cell: func(car *Car) CompareCell {
			a := c.answer(car)
			if k, pending := yet(a.Series != nil, a.SeriesFault); pending {
				return k
			}
			return passing(a.Series)
		},
	}
	if len(doc.Tolerances) == 0 {
		s.Lacks = "state tolerances in Make, Series"
	}
	return s
}

// passing is the cell of a series.
func passing(r *engine.ToleranceResult) CompareCell {
	share := r.ScenarioYield
	if !share.Valid() && r.Yield != nil {
		share = r.Yield.Share
	}
	k := once(100 * float64(share))
	k.Title = "of " + number.Count(r.Cars, "car") + " made"
	if r.Yield != nil && len(r.Scenarios) == 0 {
		k.Title += fmt.Sprintf(", %s to %s %% by their number", number.Percent(100*float64(r.Yield.Low)), number.Percent(100*float64(r.Yield.High)))
	}
	return k
}

// loads are the rows of the forces under the load cases of the study.
func (c *comparer) loads() (list []rowSource) {
	doc := c.desk.Session.Document()
	if err := doc.ReadyForLoads(); err != nil {
		return []rowSource{{
			CompareRow: CompareRow{Key: "load tie rod", Label: "Tie rod, largest force", Part: costPart, Usual: true, Lacks: noLoads(err)},
			cell:       func(*Car) CompareCell { return once(math.NaN()) }, write: func(x float64) string { return number.Decimal(x, 0) },
		}}
	}
	var first *engine.LoadsResult
	for _, a := range c.answers {
		if a.Loads != nil && first == nil {
			first = a.Loads
		}
	}
	if first == nil {
		first = &engine.LoadsResult{Loads: []engine.Load{{}}}
	}
	for _, f := range first.Figures() {
		if f.Deciding {
			list = append(list, c.load(f, slices.Concat(first.Words(), first.Sources)))
		}
	}
	return list
}

// noLoads says what keeps loads from being had.
func noLoads(err error) string {
	if text := study.Spoken(err.Error()); !strings.Contains(text, "none given") {
		return text
	}
	return "the file states no load case"
}

// load is the row of one figure, the largest in size of all cases and both sides.
func (c *comparer) load(f engine.LoadFigure, words []string) rowSource {
	return rowSource{
		CompareRow: CompareRow{
			Key: "load " + f.Label, Label: capital(f.Label) + ", largest load", Note: strings.TrimSpace(f.Unit(c.n.Style) + " estimate"), Part: costPart,
			Usual: f.Quantity != nil, Meaning: "The largest in size of all load cases and both sides. " + strings.Join(words, " "),
		},
		better: less, bars: f.Quantity != nil, write: func(x float64) string { return f.Text(c.n.Style, x) },
		cell: func(car *Car) CompareCell {
			a := c.answer(car)
			if k, pending := yet(a.Loads != nil, a.LoadsFault); pending {
				return k
			}
			k := once(math.NaN())
			for i := range a.Loads.Loads {
				l := &a.Loads.Loads[i]
				if x := f.Of(l); x != nil && !(math.Abs(float64(*x)) <= math.Abs(k.value[0])) {
					k = once(float64(*x))
					k.Title = l.Case + ", " + l.Side
				}
			}
			return k
		},
	}
}

// price is the row of the prices that the candidates state.
func (c *comparer) price() rowSource {
	return rowSource{
		CompareRow: CompareRow{Key: "price", Label: "Price", Part: costPart, Usual: true, Meaning: "What the candidate's parts cost, as it states or as the parts of a choice do."},
		better:     less, write: func(x float64) string { return number.Decimal(x, 2) },
		cell: func(car *Car) CompareCell {
			if car.Price == 0 {
				return once(math.NaN())
			}
			k := once(car.Price)
			k.Title = car.Note
			return k
		},
	}
}

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

// Why says in words why a car's wheels toe as they move, and what would mend that.
type Why struct {
	Of    string // what the shares are shares of
	Sides []WhySide
}

// WhySide is that of both wheels or, where they differ, of one.
type WhySide struct {
	Heading string
	Decides string // the set-up whose curve is explained, where there are several
	Problem string
	// Good says that all of it lies within what the study calls good; the causes are then
	// those of what is left, without shares. GoodBy says what the reference lacks for that.
	Good, GoodBy string

	Causes []WhyCause
}

// WhyCause is a part of the curve.
type WhyCause struct {
	Share string // "Slope, 99 %."
	Text  string // what is wrong, by how much
	Notes []Remark
	// Peaks are those of each set-up before and after the move; none where there is no move.
	Peaks []WhyPeak

	Name    string // of the candidate that has the move
	changes study.Changes
}

// CanTry reports whether there is a move.
func (c *WhyCause) CanTry() bool { return len(c.changes) > 0 }

// WhyPeak is the peak of a set-up before a move and after it.
type WhyPeak struct {
	Name, Before, After string
	Worse               bool
}

// WhyOptions returns what the selected car's toe is to be explained by: the steps that its
// ball can be made to, and the limit of its curve.
func (d *Desk) WhyOptions() engine.WhyOptions {
	o := engine.WhyOptions{Limit: d.Session.GoodWithin().Degrees(), Step: d.Session.Document().Units.FromMillimetres(d.step())}
	if car := d.Selected(); car != nil {
		o.Candidate = car.Name
	}
	return o
}

// step is that of the height of the outer ball, mm: the grid of the search where it has
// one, else a spacer.
func (d *Desk) step() float64 {
	doc, cars := d.Session.Document(), d.Session.Cars()
	if cars.Design == nil || doc.Search == nil {
		return d.Spacer()
	}
	height, _ := solver.MendingParts(cars.Design)
	for _, v := range doc.Search.Variables {
		if v.Parameter == height && v.Grid > 0 {
			return doc.Units.Millimetres(v.Grid)
		}
	}
	return d.Spacer()
}

// Explained puts into words why the selected car's wheels toe as they do.
func (d *Desk) Explained(r *engine.WhyResult) *Why {
	e := explainer{doc: d.Session.Document(), n: NumbersOf(d.Session.Document()), step: d.step(), limit: d.Session.GoodWithin()}
	mm := e.doc.Units.Millimetres
	out := &Why{Of: fmt.Sprintf("each wheel, %% of the mean square of toe change less target, %s bump to %s droop, %s",
		e.n.Travel(mm(r.Window.Bump)), e.n.Travel(mm(r.Window.Droop)), e.n.ToeUnit())}
	good := true
	for i := range r.Sides {
		out.Sides = append(out.Sides, e.side(&r.Sides[i]))
		good = good && out.Sides[i].Good != ""
	}
	if good {
		out.Of = strings.Replace(out.Of, "% of the mean square of toe change ", "", 1)
		out.Sides[len(out.Sides)-1].GoodBy = d.madeGoodBy()
	}
	return out
}

// madeGoodBy says by which changes a good car has become so, where the reference is not one.
func (d *Desk) madeGoodBy() string {
	cars := d.Session.Cars()
	car, of := d.Selected(), cars.At(d.View.Yardstick)
	if of == nil {
		of = cars.Base()
	}
	was := PeakFigure.Worse(of)
	if car.Index == of.Index || of.Index != 0 || !(was > d.Session.GoodWithin().Radians()) {
		return ""
	}
	n := NumbersOf(d.Session.Document())
	return fmt.Sprintf("The base car has %s; %s takes it away.", n.ToeNumber(solver.Angle(was)), InWords(d.Session.Document(), cars, car.Changes))
}

// Try makes a candidate of the selected car with the move of a cause, and selects it.
func (d *Desk) Try(c *WhyCause) error {
	k := study.Candidate{Name: c.Name, Changes: c.changes}
	if car := d.Selected(); car != nil && car.Index > 0 {
		k.Hold = slices.Clone(car.Hold)
	}
	i, err := d.Session.AddCandidate(k)
	if err == nil {
		d.Select(i)
	}
	return err
}

// explainer puts causes into words.
type explainer struct {
	doc   *study.Document
	n     Numbers
	step  float64 // mm
	limit solver.Angle
}

// whyHeadings name the sides.
var whyHeadings = map[string]string{"both": "Why toe changes", "left": "Why the left wheel toes", "right": "Why the right wheel toes"}

func (e *explainer) side(s *engine.WhySide) WhySide {
	out := WhySide{Heading: whyHeadings[s.Side]}
	if s.Problem != "" {
		out.Problem = study.Spoken(s.Problem) + "."
	}
	if len(s.SetUps) > 1 && s.Problem == "" {
		out.Decides = s.SetUps[s.Decides].Name + " decides"
	}
	out.Good = e.good(s)
	for i := range s.Causes {
		c := e.cause(s, &s.Causes[i])
		if out.Good != "" {
			if !e.shows(s) || s.Causes[i].Shape == engine.RestShape {
				continue // nothing that could be mended is left of it
			}
			c.Share = "What is left: " + strings.ToLower(shapeWords[s.Causes[i].Shape]) + "."
		}
		c.Notes = slices.DeleteFunc(c.Notes, func(r Remark) bool { return saidBefore(out.Causes, r) })
		out.Causes = append(out.Causes, c)
	}
	return out
}

// leastLeft is the part of what is good below which no gauge would show what is left.
const leastLeft = 0.1

// worstPeak returns the largest peak of a side's set-ups, degrees.
func worstPeak(s *engine.WhySide) (worst engine.Number) {
	for _, up := range s.SetUps {
		worst = max(worst, up.Peak) // NaN where one has none
	}
	return worst
}

// shows reports whether a gauge would show what is left of a side's toe change.
func (e *explainer) shows(s *engine.WhySide) bool {
	return float64(worstPeak(s)) > leastLeft*e.limit.Degrees()
}

// good says that a side's toe change lies within the target's band in every set-up; "" where
// it does not.
func (e *explainer) good(s *engine.WhySide) string {
	worst := worstPeak(s)
	if s.Problem != "" || !(float64(worst) <= e.limit.Degrees()) {
		return ""
	}
	text := "Within the target"
	if len(s.SetUps) > 1 {
		text += " in every set-up"
	}
	return fmt.Sprintf("%s: peak %s, band ± %s.", text, e.n.ToeNumber(degreesOf(worst)), e.n.ToeNumber(e.limit))
}

// saidBefore reports whether a remark stands with another cause already.
func saidBefore(causes []WhyCause, r Remark) bool {
	return slices.ContainsFunc(causes, func(c WhyCause) bool { return slices.Contains(c.Notes, r) })
}

// shapeWords name the shapes of curves.
var shapeWords = map[string]string{engine.SlopeShape: "Slope", engine.CurvatureShape: "Curvature", engine.RestShape: "S-shape"}

func (e *explainer) cause(s *engine.WhySide, c *engine.Cause) WhyCause {
	out := WhyCause{Share: shapeWords[c.Shape] + ", " + sharePercent(float64(c.Share)) + " %.", changes: c.Changes}
	switch {
	case len(c.Wants) > 0:
		out.Text = e.pullApart(s, c)
	case len(c.Moves) == 0:
		out.Text = "Pivots out of plane: neither height nor length of the rod removes it."
	case c.Changes == nil:
		out.Text = e.nothingToMove(&c.Moves[0])
	default:
		out.Text, out.Name = e.off(c.Moves), e.nameOf(&c.Moves[0])
		out.Notes = e.notes(c.Moves)
		out.Peaks = e.peaks(s, c)
	}
	return out
}

// sharePercent writes a share; one that is not all of it is not written as all.
func sharePercent(share float64) string {
	if p := 100 * share; p > 99 && p < 99.95 {
		return number.Decimal(p, 1)
	}
	return number.Decimal(100*share, 0)
}

// length writes a length of the file without its sign.
func (e *explainer) length(x engine.Number) string {
	return e.n.Length(math.Abs(e.doc.Units.Millimetres(float64(x))))
}

// part returns what a parameter moves.
func part(key string) string {
	switch {
	case strings.HasPrefix(key, "tieRodOuterHeight"):
		return "outer ball"
	case strings.HasPrefix(key, "dragLinkOuterHeight"):
		return "drag link's outer ball"
	case strings.HasPrefix(key, "dragLink"):
		return "drag link's inner ball"
	}
	return "inner ball"
}

// isHeight reports whether a parameter moves its ball up and down.
func isHeight(key string) bool { return strings.Contains(key, "Height") }

// way returns which way a ball goes by a move.
func way(key string, by engine.Number) string {
	words := [2]string{"inboard", "outboard"}
	switch {
	case isHeight(key):
		words = [2]string{"lower", "higher"}
	case strings.HasPrefix(key, "dragLink"):
		words = [2]string{"to the right", "to the left"}
	}
	if by < 0 {
		return words[0]
	}
	return words[1]
}

// off says what is wrong, by how much.
func (e *explainer) off(moves []engine.WhyMove) string {
	m := &moves[0]
	if isHeight(m.Parameter) {
		return capital(part(m.Parameter)) + " too " + map[bool]string{true: "high", false: "low"}[m.Exact < 0] + " by " + e.length(m.Exact) + "."
	}
	text := capital(part(m.Parameter)) + " belongs " + e.length(m.Exact) + " " + way(m.Parameter, m.Exact)
	if strings.HasPrefix(m.Parameter, "tieRod") {
		text = "Tie rod too " + map[bool]string{true: "long", false: "short"}[m.Exact > 0] + ": " + part(m.Parameter) + " belongs " + e.length(m.Exact) + " " + way(m.Parameter, m.Exact)
	}
	for i := range moves[1:] {
		if with := &moves[1+i]; e.worthSaying(with) {
			text += ", with the " + part(with.Parameter) + " " + e.length(with.Made) + " " + way(with.Parameter, with.Made)
		}
	}
	return text + "."
}

// worthSaying reports whether a part moves at all.
func (e *explainer) worthSaying(m *engine.WhyMove) bool {
	const least = 0.005 // mm
	return math.Abs(e.doc.Units.Millimetres(float64(m.Made))) > least
}

// nothingToMove says that a ball stands as well as whole steps allow.
func (e *explainer) nothingToMove(m *engine.WhyMove) string {
	return capital(part(m.Parameter)) + " within " + e.length(m.Exact) + " of its best: less than a step of " + e.stepText() + "."
}

// pullApart says what the set-ups want that differ the most.
func (e *explainer) pullApart(s *engine.WhySide, c *engine.Cause) string {
	low, high := 0, 0
	for i, w := range c.Wants {
		if w < c.Wants[low] {
			low = i
		}
		if w > c.Wants[high] {
			high = i
		}
	}
	return fmt.Sprintf("The set-ups pull apart: %s wants the ball %s lower, %s %s higher; no one height suits all.",
		s.SetUps[low].Name, e.length(c.Wants[low]), s.SetUps[high].Name, e.length(c.Wants[high]))
}

// nameOf names the candidate that has a move, by all that it then changes of the part.
func (e *explainer) nameOf(m *engine.WhyMove) string {
	mm := math.Abs(e.doc.Units.Millimetres(float64(m.Total)))
	return capital(part(m.Parameter)) + " " + e.n.Travel(mm) + " " + way(m.Parameter, m.Total)
}

// peaks are those of each set-up before and after a move.
func (e *explainer) peaks(s *engine.WhySide, c *engine.Cause) (list []WhyPeak) {
	for i, up := range s.SetUps {
		if i >= len(c.Peaks) {
			break
		}
		name := up.Name
		if name == "" {
			name = "peak"
		}
		p := WhyPeak{name, e.n.ToeNumber(degreesOf(up.Peak)), e.n.ToeNumber(degreesOf(c.Peaks[i])), false}
		p.Worse = p.Before != p.After && c.Peaks[i] > up.Peak
		list = append(list, p)
	}
	return list
}

// capital returns a text with a capital at its beginning.
func capital(text string) string { return strings.ToUpper(text[:1]) + text[1:] }

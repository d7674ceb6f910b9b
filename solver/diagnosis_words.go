package solver

import (
	"fmt"
	"math"
)

// Wording turns numbers into words in the user's units.
type Wording struct {
	Length func(mm float64) string
	Travel func(mm float64) string // of the wheel
	Small  func(mm float64) string // of lengths far below a spacer's step
	Toe    func(Angle) string
	Basis  string // a sentence on what toe as a length means, empty for an angle
}

// smallShare is a share of the mean square error that is not worth a sentence: a
// twentieth of it in RMS terms.
const smallShare = 0.0025

// Lines returns the diagnosis in sentences: the error, its parts and what each
// asks for, then what mends both. They state geometry only.
func (d *Diagnosis) Lines(w Wording) []string {
	s := &d.Shape
	if s.RMS == 0 {
		return []string{fmt.Sprintf("%s side: no toe error", d.Side)}
	}
	lines := []string{fmt.Sprintf("%s side: toe error %s RMS over %s of bump and %s of droop",
		d.Side, w.Toe(s.RMS), w.Travel(d.Travels[len(d.Travels)-1]), w.Travel(-d.Travels[0]))}
	for _, p := range []struct {
		cause, shape string
		part         ShapePart
		advice       string
	}{
		{"ball height", "slope at ride height", s.Slope, d.alternatives("; ", w, 0, 1)},
		{"rod length", "curvature", s.Curvature, ""},
		{"out of plane", "S-shape", s.Remainder, "; neither height nor length removes it"},
	} {
		if p.part.Share > smallShare {
			lines = append(lines, shareOf(p.cause, p.shape, w, p.part)+p.advice)
		}
	}
	if r := d.alternatives("height and length together: ", w, 3, 4); r != "" {
		lines = append(lines, r)
	}
	if d.HasInner {
		lines = append(lines, d.innerWords(w))
	}
	if w.Basis != "" {
		lines = append(lines, w.Basis)
	}
	return lines
}

// alternatives returns the words of some remedies after a lead, each once, empty
// where there are none.
func (d *Diagnosis) alternatives(lead string, w Wording, remedies ...int) string {
	line, before := "", ""
	for _, i := range remedies {
		if i >= len(d.Remedies) {
			break
		}
		words := d.Remedies[i].words(w)
		if words == before {
			continue
		}
		if line != "" {
			lead = "; or "
		}
		line, before = line+lead+words, words
	}
	return line
}

func shareOf(cause, shape string, w Wording, p ShapePart) string {
	return fmt.Sprintf("%s: %s of %s RMS, %.0f %% of the mean square", cause, shape, w.Toe(p.RMS), 100*p.Share)
}

// words returns the moves and what they leave.
func (r *Remedy) words(w Wording) string {
	line, ball := "", ""
	for _, c := range r.Changes {
		if len(r.Changes) > 1 && math.Abs(c.Value) < leastMove {
			continue
		}
		b, move := moveWords(w, &c)
		if line != "" {
			line += " and "
		}
		if b != ball {
			line += b + " "
		}
		ball, line = b, line+move
	}
	if by := r.Rod.Change(); math.Abs(by) >= longerRod {
		line += fmt.Sprintf(" (rod %s %s)", w.Length(math.Abs(by)), either(by, "longer", "shorter"))
	}
	line += fmt.Sprintf(" leaves %s RMS", w.Toe(r.RMS))
	if r.Bound {
		line += ", stopped by the usual bounds"
	}
	return line
}

// leastMove is the least move of a ball, mm, that is worth saying beside another.
const leastMove = 0.02

// longerRod is the least change of a rod's length that is worth saying, mm.
const longerRod = 0.05

// moveWords returns a move such as "outer ball" and "9.1 mm down".
func moveWords(w Wording, c *Change) (ball, move string) {
	ball, way := "inner ball", either(c.Value, "up", "down")
	switch p := &c.Parameter; {
	case p.Key == "tieRodInnerLateral":
		way = either(c.Value, "outboard", "inboard")
	case p.stage == pointStage: // the drag link's inner ball, which has no side
		way = either(c.Value, "to the left", "to the right")
	case p.point.role == TieRodOuterRole || p.point.role == DragOuterRole:
		ball = "outer ball"
	}
	return ball, w.Length(math.Abs(c.Value)) + " " + way
}

func either(v float64, positive, negative string) string {
	if v < 0 {
		return negative
	}
	return positive
}

// innerWords says where the inner ball would have to be.
func (d *Diagnosis) innerWords(w Wording) string {
	m := d.Side.Mirrored(d.Inner.Move)
	return fmt.Sprintf("ideal inner ball: %s %s and %s %s of where it is, on a rod %s long; the ball's path then strays %s",
		w.Length(math.Abs(m.Z)), either(m.Z, "above", "below"),
		w.Length(math.Abs(m.Y)), either(m.Y, "outboard", "inboard"), w.Length(d.Inner.Length), w.Small(d.Inner.RMS))
}

package drawing

import (
	"cmp"
	"context"
	"errors"
	"math"
	"slices"
	"strings"

	"toewright/internal/drawing/dxf"
	"toewright/internal/engine"
	"toewright/internal/number"
	"toewright/internal/study"
)

// loaded is what the study's load cases make of the arms.
type loaded struct {
	figures []engine.LoadFigure
	pairs   []engine.LoadPair // of the sides that bear any, the original beside the new part
	sources []string
	fault   string // why there are none
}

// loadsOf finds the loads of a car's arms, nil where the study states no cases. A study that
// states too little for them says so on the sheet.
func loadsOf(ctx context.Context, d *study.Document, candidate string) (*loaded, error) {
	if len(d.Loads) == 0 {
		return nil, nil
	}
	now, err := engine.Loads(ctx, d, engine.LoadsOptions{Candidate: candidate})
	var was *engine.LoadsResult
	if err == nil && candidate != study.BaseName {
		was, err = engine.Loads(ctx, d, engine.LoadsOptions{Candidate: study.BaseName})
	}
	var e *engine.Error
	if errors.As(err, &e) {
		return &loaded{fault: study.Spoken(engine.InUnits(e, d).Error())}, nil
	}
	if err != nil {
		return nil, err
	}
	l := &loaded{sources: now.Sources, pairs: now.Pairs(was)}
	for _, f := range now.Figures() {
		if f.Part {
			l.figures = append(l.figures, f)
		}
	}
	return l, nil
}

// loadRow is a line of the table: a case of one arm, or of both where they bear the same.
type loadRow struct {
	label string
	engine.LoadPair
}

const eachWheel = ", each wheel"

// mostLoads is the most cases that a sheet has room for: those that load the rod most.
const mostLoads = 6

// loadRows returns the lines of the arms that a sheet is of, and how many are left out.
func (s *sheet) loadRows() (list []loadRow, left int) {
	n := s.parts[0].style
	for _, p := range s.loads.pairs {
		if !slices.ContainsFunc(s.parts, func(q *part) bool { return q.Side == p.Now.Side }) {
			continue
		}
		if k := len(list) - 1; k >= 0 && list[k].Now.Case == p.Now.Case && s.loads.same(n, list[k].LoadPair, p) {
			list[k].label = p.Now.Case + eachWheel
			continue
		}
		list = append(list, loadRow{p.Now.Case + ", " + p.Now.Side, p})
	}
	if left = len(list) - mostLoads; left <= 0 {
		return list, 0
	}
	slices.SortStableFunc(list, func(a, b loadRow) int {
		return cmp.Compare(math.Abs(float64(b.Now.TieRod)), math.Abs(float64(a.Now.TieRod)))
	})
	return list[:mostLoads], left
}

// same reports whether two sides bear the same as it is written, moments mirrored.
func (l *loaded) same(n number.Style, a, b engine.LoadPair) bool {
	alike := func(a, b *engine.Load) bool {
		for i := range l.figures {
			f := &l.figures[i]
			x, y := f.Of(a), f.Of(b)
			if x == nil || y == nil {
				if x != y {
					return false
				}
				continue
			}
			v, w := float64(*x), float64(*y)
			if f.Quantity == &number.Moment {
				v, w = math.Abs(v), math.Abs(w)
			}
			if f.Text(n, v) != f.Text(n, w) {
				return false
			}
		}
		return true
	}
	return alike(a.Now, b.Now) && (a.Was == nil || alike(a.Was, b.Was))
}

// loadTable draws what the load cases make of the arms, over a place, and returns how high it
// is.
func (s *sheet) loadTable(x, y, wide float64) (high float64) {
	if s.loads.fault != "" {
		return 0
	}
	rows, left := s.loadRows()
	const labelWide, carWide = 38.0, 12.0
	ends := s.loadColumns(x+labelWide+carWide, wide-labelWide-carWide)
	lines := 2 + len(rows)
	if len(rows) > 0 && rows[0].Was != nil {
		lines += len(rows)
	}
	high = float64(lines) * rowHigh
	top := y + high
	base := func(row int) float64 { return top - float64(row+1)*rowHigh + (rowHigh-small)/2 }
	write := func(row int, l *engine.Load, car string) {
		s.text(words, x+labelWide, base(row), small, dxf.Left, car)
		for i := range s.loads.figures {
			text := s.loads.figures[i].Number(s.parts[0].style, l)
			s.text(words, ends[i+1]-1, base(row), letters(text, ends[i+1]-ends[i]-1.5), dxf.Right, text)
		}
	}
	s.line(outline, x, top, x+wide, top)
	s.text(words, x+1, base(0), small, dxf.Left, "LOADS, NO VERDICT ON STRENGTH")
	s.text(words, x+1, base(1), small, dxf.Left, "which licensed practice judges")
	for i := range s.loads.figures {
		f := &s.loads.figures[i]
		head := []string{f.Label, f.Unit(s.parts[0].style)}
		if head[1] == "" {
			first := wrapped(f.Label, ends[i+1]-ends[i]-1.5, small)[0]
			head = []string{first, strings.TrimSpace(strings.TrimPrefix(f.Label, first))}
		}
		for j, text := range head {
			s.text(words, ends[i+1]-1, base(j), letters(text, ends[i+1]-ends[i]-1.5), dxf.Right, text)
		}
	}
	row := 2
	for _, r := range rows {
		s.line(words, x, top-float64(row)*rowHigh, x+wide, top-float64(row)*rowHigh)
		s.text(words, x+1, base(row), letters(r.label, labelWide-2), dxf.Left, r.label)
		if r.Was != nil {
			write(row, r.Was, "original")
			row++
			write(row, r.Now, "new")
		} else {
			write(row, r.Now, "")
		}
		row++
	}
	if left > 0 {
		s.long = append(s.long, number.Count(left, "more load")+" of the rod's least: on the bench sheet.")
	}
	return high
}

// letters returns the size of small letters, or of smaller ones where a text would be wider than
// its place.
func letters(text string, wide float64) float64 {
	return min(small, wide/max(width(1, text), math.SmallestNonzeroFloat64))
}

// loadColumns returns where the columns of figures begin, and where the last ends: one of a
// number without a unit is narrower.
func (s *sheet) loadColumns(x, wide float64) []float64 {
	const narrow = 0.75
	share := func(f *engine.LoadFigure) float64 {
		if f.Quantity == nil {
			return narrow
		}
		return 1
	}
	total := 0.0
	for i := range s.loads.figures {
		total += share(&s.loads.figures[i])
	}
	ends := []float64{x}
	for i := range s.loads.figures {
		x += wide * share(&s.loads.figures[i]) / total
		ends = append(ends, x)
	}
	return ends
}

// loadWords say where the loads come from and how they are meant.
func (s *sheet) loadWords() []string {
	switch {
	case s.loads == nil:
		return []string{"Loads: the study states no cases."}
	case s.loads.fault != "":
		return []string{"Loads: " + s.loads.fault + "."}
	case s.noLoads:
		return []string{"Loads: on the bench sheet; there is no room for them here."}
	}
	list := append(slices.Clone(s.loads.sources), engine.LoadsSigns)
	rows, _ := s.loadRows()
	if slices.ContainsFunc(rows, func(r loadRow) bool { return strings.HasSuffix(r.label, eachWheel) }) {
		list = append(list, "Each wheel: twist of the left arm; that of the right turns the other way.")
	}
	return append(list, engine.LoadsVerdict)
}

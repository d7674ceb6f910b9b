package drawing

import (
	"strings"
	"testing"

	"toewright/internal/drawing/dxf"
	"toewright/internal/study"
)

// TestRoom: on every sheet, in both projections, on both papers and at 1:1, everything lies within the frame, the
// scale is one of ISO 5455 and is the drawn one, and no words stand on others.
func TestRoom(t *testing.T) {
	for name, d := range armStudies() {
		for i, on := range []string{"a4", "letter"} {
			o := Options{Candidate: "part", Paper: on, Projection: Projections[i]}
			if i == 1 && len(d.Loads) > 0 {
				d.Display = &study.Display{Units: study.Inch} // with lbf beside N
			}
			of, err := subjectOf(t.Context(), d, &o)
			if err != nil {
				t.Fatalf("%s: %v", name, err)
			}
			checkRoom(t, name+" on "+on, printed(of, papers[on]))
			for i := range of.parts {
				one := &subject{of.parts[i : i+1], of.loads, "1"}
				checkRoom(t, of.parts[i].title+" of "+name, plotted(one))
				checkRoom(t, of.parts[i].title+" of "+name+" on "+on, printed(one, papers[on]))
			}
		}
	}
}

func checkRoom(t *testing.T, name string, s *sheet) {
	t.Helper()
	again := &sheet{pen: &pen{}, subject: s.subject, paper: s.paper, scale: s.scale, scaled: s.scaled, fitting: s.fitting}
	if !again.lay() {
		t.Errorf("%s: no room at %s", name, s.scaled)
	}
	lo, hi := s.extent()
	if lo.X < 0 || lo.Y < 0 || hi.X > s.paper.wide || hi.Y > s.paper.high {
		t.Errorf("%s: drawn from %v to %v on %v by %v", name, lo, hi, s.paper.wide, s.paper.high)
	}
	var texts []dxf.Text
	for _, e := range s.drawn {
		if text, ok := e.(dxf.Text); ok {
			texts = append(texts, text)
		}
	}
	for i, a := range texts {
		for _, b := range texts[:i] {
			if over(a, b) {
				t.Errorf("%s: %q stands on %q", name, a.Value, b.Value)
			}
		}
		for _, e := range s.drawn {
			if l, ok := e.(dxf.Line); ok && l.Layer == dimension && crosses(l, a) {
				t.Errorf("%s: a line runs through %q", name, a.Value)
			}
		}
	}
}

// crosses reports whether a line runs through a text.
func crosses(l dxf.Line, a dxf.Text) bool {
	lo, hi := dxf.Extent([]dxf.Entity{a})
	const steps = 400
	for i := range steps + 1 {
		f := float64(i) / steps
		x, y := l.From.X+f*(l.To.X-l.From.X), l.From.Y+f*(l.To.Y-l.From.Y)
		if spare := 0.15 * a.Height; x > lo.X+spare && x < hi.X-spare && y > lo.Y+spare && y < hi.Y-spare {
			return true
		}
	}
	return false
}

// over reports whether two texts share room; a tenth of their height may.
func over(a, b dxf.Text) bool {
	alo, ahi := dxf.Extent([]dxf.Entity{a})
	blo, bhi := dxf.Extent([]dxf.Entity{b})
	spare := 0.1 * min(a.Height, b.Height)
	return min(ahi.X, bhi.X)-max(alo.X, blo.X) > spare && min(ahi.Y, bhi.Y)-max(alo.Y, blo.Y) > spare
}

// TestScaleIsTrue: two bolts stand as far apart on the paper as in the face by the scale that
// is printed.
func TestScaleIsTrue(t *testing.T) {
	d := armStudies()["double-wishbone-rack"]
	o := Options{Candidate: "part", Paper: "a4"}
	of, err := subjectOf(t.Context(), d, &o)
	if err != nil {
		t.Fatal(err)
	}
	list := of.parts
	s := printed(of, papers["a4"])
	if !strings.Contains(string(writeSVG(s)), ">"+s.scaled+"<") {
		t.Errorf("the sheet does not print its scale %s", s.scaled)
	}
	var by float64
	for _, z := range scales {
		if z.name == s.scaled {
			by = z.by
		}
	}
	found := 0
	for _, e := range s.drawn {
		if c, ok := e.(dxf.Circle); ok && c.Layer == outline && abs(c.Radius-by*list[0].bolt/2) < 1e-9 {
			found++
		}
	}
	if want := len(s.shown()) * len(list[0].face.bolts); found != want {
		t.Errorf("%d bolt holes at %s, want %d", found, s.scaled, want)
	}
}

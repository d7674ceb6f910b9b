package model_test

import (
	"math"
	"strings"
	"testing"

	"toewright/app/model"
	"toewright/internal/study"
)

func TestPastePoints(t *testing.T) {
	for _, tt := range []struct {
		name, text, says string
		at, axis         int
		count            int
	}{
		{"two rows", "1\t2\t3\n4\t\t1/2 in\r\n", "", 0, 0, 5},
		{"one column", "9.5 - 1/2\n7", "", 1, 2, 2},
		{"too wide", "1\t2\t3", "line 1, column 3: the block ends beyond the table, and \"3\" has no place", 0, 1, 0},
		{"too long", strings.Repeat("1\n", 40), "line 10, column 1: the block ends", 0, 0, 0},
		{"no number", "1\tup", "line 1, column 2: lower arm, front pivot, y: \"up\" is", 0, 0, 0},
	} {
		s := model.Open(study.Template{Key: "double-wishbone-rack"}.Start())
		before := s.Document()
		rows := model.PointRows(before, study.Left)
		n, err := s.PastePoints(rows, tt.at, tt.axis, tt.text)
		if n != tt.count || (err == nil) != (tt.says == "") || err != nil && !strings.Contains(err.Error(), tt.says) {
			t.Errorf("%s: %d put, %v, want %d, %q", tt.name, n, err, tt.count, tt.says)
		}
		if err != nil && s.Document() != before {
			t.Errorf("%s: refused, and the study is another", tt.name)
		}
	}
	s := template(t, "double-wishbone-rack")
	rows := model.PointRows(s.Document(), study.Left)
	if _, err := s.PastePoints(rows, 0, 0, "1\t2\t3\n4\t\t1/2 in"); err != nil {
		t.Fatal(err)
	}
	after := model.PointRows(s.Document(), study.Left)
	want := study.Vec3{4, rows[1].Place[1], 12.7}
	if after[0].Place != (study.Vec3{1, 2, 3}) || after[1].Place != want {
		t.Errorf("points %v and %v, want 1 2 3 and %v", after[0].Place, after[1].Place, want)
	}
	if d := s.Document(); model.IsTheirs(d, &after[1], 0) || !model.IsTheirs(study.Templates()[0].Start(), &model.PointRows(study.Templates()[0].Start(), study.Left)[0], 0) {
		t.Error("what was pasted is a template's still, or a template's is not")
	}
}

// TestTypedOver: what was typed is the car's own, be it the digits that stood there, which
// leave the number as it was to the last of its decimals.
func TestTypedOver(t *testing.T) {
	s := model.Open(study.Template{Key: "double-wishbone-rack"}.Start())
	p := model.PointRows(s.Document(), study.Left)[0]
	p.Place[0] = 155.00412
	mustDo(t, s.TakePoints([]study.PlacedPoint{p.PlacedPoint}))
	if err := s.TypePoint(p, 0, "155.00"); err != nil {
		t.Fatal(err)
	}
	d := s.Document()
	if got := d.Suspension.Left.Points[p.Name][0]; got != p.Place[0] {
		t.Errorf("the number is %v, want it as it was, %v", got, p.Place[0])
	}
	if got := d.Sources.At("left." + p.Name + ".x"); got != study.FromTyping {
		t.Errorf("it comes from %q", got)
	}
	for text, want := range map[string]float64{"6 1/2 in": 165.1, "9.7 - 1/8": 9.575, "27+3/16": 27.1875, "-12,5": -12.5} {
		mustDo(t, s.TypePoint(p, 1, text))
		if got := s.Document().Suspension.Left.Points[p.Name][1]; math.Abs(got-want) > 1e-9 {
			t.Errorf("%q is %v, want %v", text, got, want)
		}
	}
	before := s.Document()
	if err := s.TypePoint(p, 2, "up"); err == nil || s.Document() != before {
		t.Errorf("%v, want a refusal that changes nothing", err)
	}
}

// TestPointText: inches are decimals, and fractions where they are fractions.
func TestPointText(t *testing.T) {
	d := study.Template{Key: "double-wishbone-rack"}.Start()
	p := &model.PointRows(d, study.Left)[0]
	for _, tt := range []struct {
		display study.Display
		mm      float64
		want    string
	}{
		{study.Display{Units: study.Millimetre}, 12.7, "12.70"},
		{study.Display{Units: study.Inch}, 12.7, "0.500"},
		{study.Display{Units: study.Inch, Fraction: study.Fraction(32)}, 12.7, "1/2"},
		{study.Display{Units: study.Inch, Fraction: study.Fraction(32)}, -27.1875 * 25.4, "−27 3/16"},
		{study.Display{Units: study.Inch, Fraction: study.Fraction(32)}, 25.4, "1.000"},
		{study.Display{Units: study.Inch, Fraction: study.Fraction(32)}, 13, "0.512"},
	} {
		d.Display, p.Place = &tt.display, study.Vec3{tt.mm}
		if got := model.PointText(d, p, 0); got != tt.want {
			t.Errorf("%g mm in %+v: %q, want %q", tt.mm, tt.display, got, tt.want)
		}
	}
}

// TestFrom: the sign is that of what is least the car's own, the words say of which axes.
func TestFrom(t *testing.T) {
	d := study.Template{Key: "double-wishbone-rack"}.Start()
	p := &model.PointRows(d, study.Left)[0]
	path := p.Path
	for _, tt := range []struct {
		x, y, z study.Source
		sign    study.Source
		text    string
		sd      string
	}{
		{"template", "template", "template", "template", "template", ""},
		{"typed", "template", "template", "template", "template y, z", "2.5 – –"},
		{"typed", "typed", "typed", "typed", "typed", "2.5"},
		{"fitted", "tape", "file", "fitted", "fitted x; tape y", "2.5"},
		{"file", "typed", "file", "file", "file x, z; typed y", "2.5"},
	} {
		for axis, source := range []study.Source{tt.x, tt.y, tt.z} {
			d.SetSource(path+"."+"xyz"[axis:axis+1], source)
		}
		if sign, text := model.From(d, p.Path); sign != tt.sign || text != tt.text {
			t.Errorf("%+v: sign %q, %q", tt, sign, text)
		}
		if sd := model.PointSD(d, p); sd != tt.sd {
			t.Errorf("%+v: sd %q", tt, sd)
		}
	}
	d.Priors = []study.Prior{{Parameter: p.Name + ".x", SD: 1}, {Parameter: p.Name + ".y@right", SD: 1}, {Parameter: p.Name + ".z@left", SD: 0.75}}
	if sd := model.PointSD(d, p); sd != "1 – 0.75" {
		t.Errorf("with priors stated: %q", sd)
	}
}

package main

import (
	"bytes"
	"math"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"
)

// armTolerance is how far a place may be from that of testdata/cases, mm, and a direction
// from its own.
const armTolerance = 1e-6

// stepFile is what a file of ISO 10303-21 holds: its instances by their numbers, read anew
// here so that nothing of the writer is believed.
type stepFile map[string]string

func readStep(text string) stepFile {
	f := stepFile{}
	for _, m := range regexp.MustCompile(`(?m)^(#\d+)=(.*);$`).FindAllStringSubmatch(text, -1) {
		f[m[1]] = m[2]
	}
	return f
}

// named returns the instances of a kind with a name.
func (f stepFile) named(kind, name string) (list []string) {
	for _, text := range f {
		if strings.HasPrefix(text, kind+"('"+name+"'") {
			list = append(list, text)
		}
	}
	return list
}

// numbers returns the coordinates of a point or direction.
func (f stepFile) numbers(t *testing.T, text string) (v [3]float64) {
	t.Helper()
	m := regexp.MustCompile(`\(([^()]*)\)\)$`).FindStringSubmatch(text)
	if m == nil {
		t.Fatalf("%q has no coordinates", text)
	}
	for i, x := range strings.Split(m[1], ",") {
		v[i], _ = strconv.ParseFloat(x, 64)
	}
	return v
}

// refs returns the instances that another names.
func (f stepFile) refs(text string) (list []string) {
	for _, r := range regexp.MustCompile(`#\d+`).FindAllString(text, -1) {
		list = append(list, f[r])
	}
	return list
}

func nearPlace(t *testing.T, what string, got, want [3]float64) {
	t.Helper()
	for i := range got {
		if !(math.Abs(got[i]-want[i]) <= armTolerance) {
			t.Errorf("%s at %v, want %v", what, got, want)
			return
		}
	}
}

// TestCasesByDrawing compares every named point, axis and circle of the STEP files of both
// arms with the places of testdata/cases.
func TestCasesByDrawing(t *testing.T) {
	type drawingCase struct{ Expected []placed }
	eachFile(t, called("dr"), func(t *testing.T, c *drawingCase, file string) {
		for _, want := range c.Expected {
			out := filepath.Join(t.TempDir(), "arm.step")
			var said bytes.Buffer
			args := []string{"drawing", file, "--candidate", want.Candidate, "--side", want.Side, "--as", "step", "--output", out}
			if code := run(args, strings.NewReader(""), &said, &said); code != exitDone {
				t.Fatalf("exit %d, %s", code, said.String())
			}
			text, err := os.ReadFile(out)
			if err != nil {
				t.Fatal(err)
			}
			want.compare(t, readStep(string(text)))
		}
	})
}

// placed is an arm as testdata/cases has it.
type placed struct {
	Candidate, Side string
	Points          map[string][3]float64
	Axes            []struct {
		Of, Through string
		Along       [3]float64
	}
	Circles []struct {
		Of            string
		Centre, Along [3]float64
		Radius        float64
	}
	Hole struct {
		Axis [3]float64
		Ends []struct {
			Of     string
			Radius float64
		}
		Apart float64
	}
}

func (p *placed) compare(t *testing.T, f stepFile) {
	t.Helper()
	for name, at := range p.Points {
		list := f.named("CARTESIAN_POINT", name)
		if len(list) == 0 {
			t.Errorf("%s: no point %s", p.Side, name)
		}
		for _, one := range list {
			nearPlace(t, p.Side+" "+name, f.numbers(t, one), at)
		}
	}
	for _, a := range p.Axes {
		lines := f.named("LINE", a.Of)
		if len(lines) != 1 || len(f.named("TRIMMED_CURVE", a.Of)) != 1 {
			t.Fatalf("%s: %d lines of %s", p.Side, len(lines), a.Of)
		}
		of := f.refs(lines[0])
		nearPlace(t, p.Side+" axis of "+a.Of, f.numbers(t, of[0]), p.Points[a.Through])
		nearPlace(t, p.Side+" direction of "+a.Of, f.numbers(t, f.refs(of[1])[0]), a.Along)
	}
	for _, c := range p.Circles {
		centre := p.circle(t, f, c.Of, c.Radius, c.Along)
		nearPlace(t, p.Side+" circle of "+c.Of, centre, c.Centre)
	}
	var ends [2][3]float64
	for i, e := range p.Hole.Ends {
		ends[i] = p.circle(t, f, "hole "+e.Of, e.Radius, p.Hole.Axis)
		ball, across := p.Points["outer-ball"], [3]float64{}
		along := 0.0
		for k := range ball {
			along += (ends[i][k] - ball[k]) * p.Hole.Axis[k]
		}
		for k := range ball {
			across[k] = ball[k] + along*p.Hole.Axis[k]
		}
		nearPlace(t, p.Side+" "+e.Of+" on the stud's axis", ends[i], across)
	}
	apart := math.Hypot(math.Hypot(ends[0][0]-ends[1][0], ends[0][1]-ends[1][1]), ends[0][2]-ends[1][2])
	if !(math.Abs(apart-p.Hole.Apart) <= armTolerance) {
		t.Errorf("%s: ends of the hole %v apart, want %v", p.Side, apart, p.Hole.Apart)
	}
}

// circle checks the size and axis of a circle and returns its centre.
func (p *placed) circle(t *testing.T, f stepFile, name string, radius float64, axis [3]float64) [3]float64 {
	t.Helper()
	list := f.named("CIRCLE", name)
	if len(list) != 1 {
		t.Fatalf("%s: %d circles %s", p.Side, len(list), name)
	}
	m := regexp.MustCompile(`,([0-9.]+)\)$`).FindStringSubmatch(list[0])
	if r, err := strconv.ParseFloat(m[1], 64); err != nil || !(math.Abs(r-radius) <= armTolerance) {
		t.Errorf("%s: radius of %s %v, want %v", p.Side, name, r, radius)
	}
	of := f.refs(f.refs(list[0])[0])
	nearPlace(t, p.Side+" axis of circle "+name, f.numbers(t, of[1]), axis)
	return f.numbers(t, of[0])
}

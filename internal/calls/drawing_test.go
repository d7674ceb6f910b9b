package calls

import (
	"context"
	"encoding/xml"
	"io"
	"math"
	"regexp"
	"slices"
	"strings"
	"testing"

	"toewright/internal/drawing"
	"toewright/internal/engine"
	digits "toewright/internal/number"
	"toewright/internal/report"
	"toewright/internal/study"
)

// textsOf returns the words of a picture by their layer.
func textsOf(t *testing.T, svg string) map[string][]string {
	t.Helper()
	out := map[string][]string{}
	layer, in := "", false
	for d := xml.NewDecoder(strings.NewReader(svg)); ; {
		token, err := d.Token()
		if err == io.EOF {
			return out
		}
		if err != nil {
			t.Fatal(err)
		}
		switch e := token.(type) {
		case xml.StartElement:
			if e.Name.Local == "g" {
				layer = e.Attr[0].Value
			}
			in = e.Name.Local == "text"
		case xml.CharData:
			if in {
				out[layer] = append(out[layer], string(e))
			}
		case xml.EndElement:
			in = false
		}
	}
}

// drawn returns the words of the sheet of a candidate's arms.
func drawn(t *testing.T, d *study.Document, o drawing.Options) map[string][]string {
	t.Helper()
	o.As = "svg"
	text, _, err := drawing.File(t.Context(), d, o)
	if err != nil {
		t.Fatal(err)
	}
	return textsOf(t, string(text))
}

// numeral is what stands in a dimension: a length, a diameter, an angle, a change in brackets.
var numeral = regexp.MustCompile(`^(Ø)?(\()?([+-]?\d+(\.\d+)?)(\))?(°)?$`)

// TestDrawnNumbers: every number in a dimension or a frame of the sheet is one of the
// engine's, as it is written everywhere, and none of those that there are is missing.
func TestDrawnNumbers(t *testing.T) {
	for _, c := range []struct {
		template, candidate string
	}{{"double-wishbone-centre-link", "Tall arm"}, {"double-wishbone-rack", "Spacers 12 mm"}} {
		d := study.Template{Key: c.template}.Document()
		// An unlike right arm, so that nothing stands for the other.
		right := d.Suspension.Left.Mirrored()
		right.ArmFace.Bolts[1][2] += 0.11
		right.ArmFace.Point[0] -= 0.07
		d.Suspension.Right = &right
		got, err := engine.Arm(t.Context(), d, engine.ArmOptions{Candidate: c.candidate})
		if err != nil {
			t.Fatal(err)
		}
		n := d.Style()
		length := func(x float64) string { return digits.Plain(n.LengthDecimal(d.Units.Millimetres(x))) }
		zero := length(0)
		want := map[string]int{}
		for i := range got.Sides {
			p := &got.Sides[i].Part
			for _, z := range p.Sizes {
				size, change := length(math.Abs(z.Exact)), length((z.Exact-z.Was)*math.Copysign(1, z.Exact))
				if size != zero || change != zero {
					want[size]++
				}
				if change != zero {
					if change[0] != '-' {
						change = "+" + change
					}
					want["("+change+")"]++
				}
			}
			low := p.Face.LowestBolt()
			for _, b := range p.Face.Bolts {
				for k := 1; k < 3; k++ {
					by := 0.0
					for j := range b {
						by += (b[j] - low[j]) * p.Face.Axes[k][j]
					}
					if text := length(math.Abs(by)); text != zero {
						want[text]++
					}
				}
			}
			// The hole's axis to the line of the bolts, from outside and from the end.
			along := func(k int) (x float64) {
				for j := range p.Stud {
					x += p.Stud[j] * p.Face.Axes[k][j]
				}
				return x
			}
			for _, k := range []int{0, 2} {
				if text := digits.Decimal(math.Abs(math.Atan(along(k)/along(1)))*180/math.Pi, 2); text != "0.00" {
					want[text+"°"]++
				}
			}
			if p.Zones[0].Width > 0 {
				want["Ø"+length(p.Zones[0].Width)]++
			}
			if p.Zones[1].Width > 0 {
				want[length(p.Zones[1].Width)]++
			}
		}
		// The section through the eye, drawn once.
		if arm := d.Arm; arm != nil {
			want[length(arm.Thickness)]++
			want[length(d.OuterBall().Stud.Height)]++
		}
		for _, text := range drawn(t, d, drawing.Options{Candidate: c.candidate})["DIMENSION"] {
			if !numeral.MatchString(text) {
				continue
			}
			if want[text]--; want[text] < 0 {
				t.Errorf("%s: %q is drawn, which is none of the engine's", c.template, text)
			}
		}
		for text, left := range want {
			if left > 0 {
				t.Errorf("%s: %q is drawn %d times too few", c.template, text, left)
			}
		}
	}
}

// TestDrawingAndBenchSheetAgree: what both say of an arm they say alike: by how much the hole
// moves on the face, the arm's length, and the toe of the car.
func TestDrawingAndBenchSheetAgree(t *testing.T) {
	d := study.Template{Key: "double-wishbone-centre-link"}.Document()
	const name = "Tall arm"
	sheet, err := report.Gather(t.Context(), d, report.Options{Candidate: name, Cars: new(10)})
	if err != nil {
		t.Fatal(err)
	}
	var page strings.Builder
	if err := report.Write(&page, sheet); err != nil {
		t.Fatal(err)
	}
	said := drawn(t, d, drawing.Options{Candidate: name})
	n := d.Style()
	for i, a := range sheet.Arm.Sides {
		for k, z := range a.Part.Sizes {
			if by := z.Exact - z.Was; math.Abs(by-a.Face.By[k]*1) > 1e-9 {
				t.Errorf("%s, %s: the drawing's size changes by %v, the bench sheet's hole by %v", a.Side, z.Of, by, a.Face.By[k])
			}
			text := n.LengthDecimal(d.Units.Millimetres(math.Abs(a.Face.By[k])))
			if text == n.LengthDecimal(0) {
				continue
			}
			if !strings.Contains(page.String(), text) || !slices.ContainsFunc(said["DIMENSION"], func(s string) bool { return strings.Contains(s, text) }) {
				t.Errorf("%s: %s of %s is not on both", a.Side, text, z.Of)
			}
		}
		fine := n.LengthFine(d.Units.Millimetres(a.Arm.After))
		if !slices.Contains(said["TEXT"], fine) || !strings.Contains(page.String(), n.LengthDecimal(d.Units.Millimetres(a.Arm.After))) {
			t.Errorf("%s: the arm's length %s is not on both", a.Side, fine)
		}
		peak := n.Toe(float64(sheet.Cars[1].Figures[i].Peak))
		if got := n.Toe(float64(a.Peak)); got != peak || !strings.Contains(strings.Join(said["TEXT"], " "), a.Side+" "+peak) {
			t.Errorf("%s: toe %s of the drawing, %s of the bench sheet", a.Side, got, peak)
		}
	}
}

// TestDrawnToAStep: what is drawn is what can be made, and says so.
func TestDrawnToAStep(t *testing.T) {
	d := study.Template{Key: "double-wishbone-centre-link"}.Document()
	said := drawn(t, d, drawing.Options{Candidate: "Tall arm", Step: new(1.0 / 64)})
	for _, want := range []string{"4.844 (4 27/32)", "0.859 (55/64)", "0.094 (3/32)"} {
		if !slices.Contains(said["DIMENSION"], want) {
			t.Errorf("no %q among %q", want, said["DIMENSION"])
		}
	}
	if !slices.ContainsFunc(said["TEXT"], func(s string) bool { return strings.HasPrefix(s, "made to 1/64 in") }) {
		t.Error("the sheet does not say to what it is made")
	}
	_, _, err := drawing.File(context.Background(), d, drawing.Options{As: "svg", Step: new(-1.0)})
	if err == nil || !strings.Contains(err.Error(), "step") {
		t.Errorf("a step of -1 gives %v", err)
	}
}

// TestDrawingOnTheBenchSheet: the views on the bench sheet bear the very figures of the part
// drawing, each as often, of alike and of unlike arms, in mm and in inches, in either
// projection.
func TestDrawingOnTheBenchSheet(t *testing.T) {
	for _, c := range []struct {
		template, candidate, lies string
		unlike                    bool
	}{
		{"double-wishbone-rack", "Spacers 12 mm", study.FirstAngle, false},
		{"double-wishbone-rack", "Spacers 12 mm", study.ThirdAngle, true},
		{"double-wishbone-centre-link", "Tall arm", study.ThirdAngle, false},
		{"double-wishbone-centre-link", "Tall arm", study.FirstAngle, true},
		{"solid-axle-pitman", "Arm balls up 20 mm", study.ThirdAngle, false},
	} {
		d := study.Template{Key: c.template}.Document()
		if d.Arm == nil {
			d.Arm = &study.Arm{}
		}
		d.Arm.Projection = c.lies
		if d.Candidate(c.candidate) == nil {
			d.Candidates = append(d.Candidates, study.Candidate{Name: c.candidate, Changes: study.Changes{"tieRodOuterHeight": d.Units.FromMillimetres(20)}})
		}
		if c.unlike {
			right := d.Suspension.Left.Mirrored()
			right.ArmFace.Point[0] -= 0.07
			ball := right.Points["tieRodOuter"]
			ball[2] += 0.11
			right.Points["tieRodOuter"] = ball
			d.Suspension.Right = &right
		}
		sheet, err := report.Gather(t.Context(), d, report.Options{Candidate: c.candidate, Cars: new(10)})
		if err != nil {
			t.Fatal(err)
		}
		var page strings.Builder
		if err := report.Write(&page, sheet); err != nil {
			t.Fatal(err)
		}
		onSheet, views := map[string]int{}, 0
		for _, rest := range strings.Split(page.String(), `<svg class="views"`)[1:] {
			svg, _, _ := strings.Cut(rest, "</svg>")
			views++
			for _, text := range textsOf(t, "<svg"+svg+"</svg>")["DIMENSION"] {
				onSheet[text]++
			}
		}
		if want := map[bool]int{false: 1, true: 2}[c.unlike]; views != want {
			t.Errorf("%s: %d arms are drawn on the bench sheet, want %d", c.template, views, want)
		}
		sides := []string{"left", "right"}[:views]
		drawnOnes := map[string]int{}
		for _, side := range sides {
			for _, text := range drawn(t, d, drawing.Options{Candidate: c.candidate, Side: side})["DIMENSION"] {
				drawnOnes[text]++
			}
			if d.Arm.Thickness > 0 { // the section through the eye
				n := d.Style()
				for _, x := range []float64{d.Arm.Thickness, d.OuterBall().Stud.Height} {
					drawnOnes[digits.Plain(n.LengthDecimal(d.Units.Millimetres(x)))]--
				}
			}
		}
		for text, n := range drawnOnes {
			if onSheet[text] != n {
				t.Errorf("%s: %q stands %d times on the part drawing, %d times on the bench sheet", c.template, text, n, onSheet[text])
			}
			delete(onSheet, text)
		}
		for text, n := range onSheet {
			t.Errorf("%s: %q stands %d times on the bench sheet and not on the part drawing", c.template, text, n)
		}
	}
}

// TestDrawingOfAnyFace: a level face, an upright one, bolts in line with the normal, one bolt and
// none are drawn with numbers alone, in every file and on both sides.
func TestDrawingOfAnyFace(t *testing.T) {
	for _, normal := range []study.Vec3{{0, 0, 1}, {0, 0, -1}, {1, 0, 0}, {0, -1, 0}, {-1, 0.2, 0.1}} {
		for bolts := range 3 {
			d := study.Template{Key: "double-wishbone-rack"}.Document()
			f := d.Suspension.Left.ArmFace
			f.Normal, f.Bolts = normal, nil
			for k := range bolts {
				b := f.Point
				for axis := range b {
					b[axis] += float64(40*k) * normal[axis]
				}
				f.Bolts = append(f.Bolts, b)
			}
			for _, as := range drawing.Names() {
				for _, side := range []string{"left", "right"} {
					file, _, err := drawing.File(t.Context(), d, drawing.Options{Candidate: d.Candidates[0].Name, As: as, Side: side})
					if err != nil || strings.Contains(string(file), "NaN") {
						t.Errorf("face %v with %d bolts along it, %s of the %s arm: %v, or no numbers in it", normal, bolts, as, side, err)
					}
				}
			}
		}
	}
}

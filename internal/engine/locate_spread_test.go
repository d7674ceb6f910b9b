package engine

import (
	"math"
	"testing"

	"toewright/internal/study"
)

// formLengths are the direct lengths of the form in docs/tape.md.
var formLengths = [][2]string{
	{"tieRodOuter", "tieRodInner"}, {"tieRodOuter", "lowerBallJoint"}, {"tieRodOuter", "upperBallJoint"},
	{"lowerBallJoint", "upperBallJoint"}, {"lowerFrontPivot", "lowerBallJoint"}, {"lowerRearPivot", "lowerBallJoint"},
	{"lowerFrontPivot", "lowerRearPivot"}, {"upperFrontPivot", "upperBallJoint"}, {"upperRearPivot", "upperBallJoint"},
	{"upperFrontPivot", "upperRearPivot"},
}

// TestSpreadByMeasures holds the bands that measures leave of a double wishbone of nine
// hardpoints against an independent least squares (references, J, recomputed there on a car of
// its own): coordinates to the digit that it prints, and toe at 50 mm of droop no wider.
func TestSpreadByMeasures(t *testing.T) {
	for _, tt := range []struct {
		name           string
		marks          int
		direct         bool
		height, plumbs float64 // standard deviations, mm; 0 for none
		sd             [3]float64
		toe            float64 // degrees
	}{
		{"four floor marks", 4, false, 0, 0, [3]float64{0.7, 1.1, 1.3}, 0.20},
		{"six marks, two on stands", 6, false, 0, 0, [3]float64{0.6, 1.0, 0.9}, 0.13},
		{"with ten direct lengths", 6, true, 0, 0, [3]float64{0.5, 0.7, 0.8}, 0.09},
		{"with heights by level", 6, true, 0.5, 0, [3]float64{0.5, 0.7, 0.4}, 0.05},
		{"plumb and rule alone", 0, false, 1.5, 1.5, [3]float64{1.5, 1.5, 1.5}, 0.20},
	} {
		t.Run(tt.name, func(t *testing.T) {
			_, d := tapedCar(t, "tp01_dw.json")
			marks := d.Measured.Marks
			d.Travel.Droop = 50
			d.Measured = &study.Measured{Marks: marks}
			m := d.Measured
			length := func(from, to string, a, b study.Vec3, sd float64) {
				apart := math.Hypot(math.Hypot(a[0]-b[0], a[1]-b[1]), a[2]-b[2])
				m.Lengths = append(m.Lengths, study.Length{From: from, To: to, Value: apart, SD: sd})
			}
			places := d.Suspension.Left.Points
			for name, at := range places {
				of := "left." + name
				for _, mark := range []string{"A", "B", "C", "D", "E", "F"}[:tt.marks] {
					length(mark, of, marks[mark], at, 1)
				}
				if tt.height > 0 {
					m.Heights = append(m.Heights, study.Plumbed{Of: of, Value: at[2], SD: tt.height})
				}
				if tt.plumbs > 0 {
					m.Sides = append(m.Sides, study.Plumbed{Of: of, Value: at[1], SD: tt.plumbs})
					m.Stations = append(m.Stations, study.Plumbed{Of: of, Value: at[0], SD: tt.plumbs})
				}
			}
			for _, ends := range formLengths[:map[bool]int{true: len(formLengths)}[tt.direct]] {
				length("left."+ends[0], "left."+ends[1], places[ends[0]], places[ends[1]], 0.5)
			}
			l, err := Locate(t.Context(), d, LocateOptions{})
			if err != nil {
				t.Fatal(err)
			}
			var sum [3]float64
			for _, p := range l.Points {
				for k := range p.SD {
					sum[k] += p.SD[k] * p.SD[k] / float64(len(l.Points))
				}
			}
			for k := range sum {
				if got := math.Sqrt(sum[k]); !(math.Abs(got-tt.sd[k]) <= 0.051) {
					t.Errorf("coordinate %d: standard deviation %.3f mm, want %.1f", k, got, tt.sd[k])
				}
			}
			if got := float64(l.Toe["left"].Droop.SD); !(got <= tt.toe) || !(got >= 0.7*tt.toe) {
				t.Errorf("toe at 50 mm of droop: standard deviation %.3f deg, want at most %.2f and near it", got, tt.toe)
			}
		})
	}
}

// TestFitKeepsCorrelations tapes a car from marks whose own heights are uncertain: every height is,
// but not what they are beside each other, on which toe depends. A fit of the gauge that had one
// standard deviation of each coordinate would leave a far wider band than the tape and the gauge do
// together.
func TestFitKeepsCorrelations(t *testing.T) {
	_, d := tapedCar(t, "tp01_dw.json")
	truth := d.Clone()
	marks := d.Measured.Marks
	d.Measured = &study.Measured{Marks: marks, MarkSD: 6}
	for name, at := range d.Suspension.Left.Points {
		for mark, from := range marks {
			apart := math.Hypot(math.Hypot(from[0]-at[0], from[1]-at[1]), from[2]-at[2])
			d.Measured.Lengths = append(d.Measured.Lengths, study.Length{From: mark, To: "left." + name, Value: apart, SD: 0.2})
		}
	}
	l, err := Locate(t.Context(), d, LocateOptions{})
	if err != nil {
		t.Fatal(err)
	}
	read(t, d, truth)
	d.Readings[0].Repeatability = 1 // a gauge that settles little beside the tape
	flat := d.Clone()
	flat.Measured = nil
	for name := range d.Suspension.Left.Points {
		for axis, key := range []string{".x", ".y", ".z"} {
			flat.Priors = append(flat.Priors, study.Prior{Parameter: name + key, SD: l.Points["left."+name].SD[axis]})
		}
	}
	width := func(d *study.Document) float64 {
		f, err := Fit(t.Context(), d, FitOptions{})
		if err != nil {
			t.Fatal(err)
		}
		a := f.Advice["left"]
		return float64(a.High - a.Low)
	}
	together, flattened := width(d), width(flat)
	if !(together < 0.7*flattened) {
		t.Errorf("the advice's band is %.2f mm by tape and gauge, %.2f with the tape flattened, want far less", together, flattened)
	}
}

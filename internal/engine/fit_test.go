package engine

import (
	"context"
	"encoding/json"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"toewright/internal/study"
)

// simulated returns a case of a simulated car: a study whose hardpoints are off,
// with readings of the true car, and the height that is best for that.
func simulated(t *testing.T, name string) (*study.Document, float64) {
	t.Helper()
	b, err := os.ReadFile(filepath.Join("..", "..", "testdata", "cases", name))
	if err != nil {
		t.Fatal(err)
	}
	var c struct {
		Study    json.RawMessage
		TrueBest float64
	}
	if err := json.Unmarshal(b, &c); err != nil {
		t.Fatal(err)
	}
	d, err := study.Decode(c.Study)
	if err != nil {
		t.Fatal(err)
	}
	return d, c.TrueBest
}

// adviceLimit is how near the advice must come to the true best after readings at
// two stacks, mm.
const adviceLimit = 0.75

func TestFitFindsTheTrueBest(t *testing.T) {
	for _, name := range []string{"fit01.json", "fit02.json"} {
		t.Run(name, func(t *testing.T) {
			d, want := simulated(t, name)
			f, err := Fit(context.Background(), d, FitOptions{})
			if err != nil {
				t.Fatal(err)
			}
			a := f.Advice["left"]
			if !(math.Abs(a.Best-want) <= adviceLimit) || !(a.Low < a.Best && a.Best < a.High) {
				t.Errorf("best %.3f (%.3f to %.3f), want %.3f", a.Best, a.Low, a.High, want)
			}
			if got := float64(a.Step) * d.Advise.Step; got != a.Value || math.Abs(got-a.Best) > d.Advise.Step/2 {
				t.Errorf("%d steps make %.3f, value %.3f, best %.3f", a.Step, got, a.Value, a.Best)
			}
			if f.DegreesOfFreedom != 22-2 || f.Verdict != "explained" || len(f.Outliers) != 0 {
				t.Errorf("%d degrees of freedom, verdict %s, outliers %v", f.DegreesOfFreedom, f.Verdict, f.Outliers)
			}
			if v, ok := f.Fitted["tieRodOuter.z"]; !ok || !(v.SD < v.PriorSD) || v.PriorSD != 2.5 {
				t.Errorf("tieRodOuter.z: %+v", v)
			}
		})
	}
}

func TestFitNamesAnOutlier(t *testing.T) {
	d, _ := simulated(t, "fit01.json")
	clean, err := Fit(context.Background(), d, FitOptions{})
	if err != nil {
		t.Fatal(err)
	}
	d.Readings[1].Values[4][1] += 1.5
	f, err := Fit(context.Background(), d, FitOptions{})
	if err != nil {
		t.Fatal(err)
	}
	if len(f.Outliers) != 1 || f.Outliers[0].Set != 1 || f.Outliers[0].Reading != 4 || !(math.Abs(f.Outliers[0].Off-1.5) <= 0.3) {
		t.Fatalf("outliers %+v, want reading 4 of set 1 off by 1.5", f.Outliers)
	}
	if got, want := f.Advice["left"].Best, clean.Advice["left"].Best; !(math.Abs(got-want) <= 0.3) {
		t.Errorf("advice moves from %.3f to %.3f", want, got)
	}
	if !strings.Contains(strings.Join(f.Words, "\n"), "reading 5 of set 2") {
		t.Errorf("words do not name the outlier: %q", f.Words)
	}
}

// TestFitVerifies holds readings of the fitted car itself, and of one with its
// outer ball elsewhere, against the prediction.
func TestFitVerifies(t *testing.T) {
	for _, tt := range []struct {
		name string
		bend float64 // mm of reading added per (travel/50)²
		want bool
	}{{"as predicted", 0, true}, {"bent", 1.2, false}} {
		t.Run(tt.name, func(t *testing.T) {
			d, _ := simulated(t, "fit01.json")
			again := d.Readings[0]
			again.Purpose = "verify"
			again.Values = nil
			for _, v := range d.Readings[0].Values {
				again.Values = append(again.Values, [2]float64{v[0], v[1] + tt.bend*v[0]*v[0]/2500})
			}
			d.Readings = append(d.Readings, again)
			f, err := Fit(context.Background(), d, FitOptions{})
			if err != nil {
				t.Fatal(err)
			}
			if f.Verify == nil || f.Verify.Passed != tt.want {
				t.Fatalf("verify %+v, want passed %v", f.Verify, tt.want)
			}
			if !tt.want && len(f.Verify.Causes) == 0 {
				t.Error("no cause is named")
			}
		})
	}
}

func TestFitRefuses(t *testing.T) {
	_, err := Fit(context.Background(), document(t, ""), FitOptions{})
	wantError(t, err, Wrong, "readings", "none to fit")
	damper := document(t, `"readings": [{"side": "left", "base": 300, "travelAs": "damper", "values": [[300, 1], [310, 2], [320, 3]]}],`)
	_, err = Fit(context.Background(), damper, FitOptions{})
	wantError(t, err, Wrong, "suspension.left.damper", "is missing")
}

// TestFitWhoseAdviceHasNoBand asks for advice so far from the valley that the figure
// bends the other way: the fit stands, and the advice admits that it has no band.
func TestFitWhoseAdviceHasNoBand(t *testing.T) {
	d, _ := simulated(t, "fit01.json")
	d.Advise = &study.Advise{Parameter: "upperBallJointHeight", Min: 100, Max: 140}
	f, err := Fit(context.Background(), d, FitOptions{})
	if err != nil {
		t.Fatal(err)
	}
	a := f.Advice["left"]
	if a.SD.Valid() || a.Low != 100 || a.High != 140 || a.Final || !a.AtBound || len(f.Next) != 0 {
		t.Errorf("advice %+v with %d measurements to narrow it; want a band of all that was asked, 100 to 140 mm, without an SD", a, len(f.Next))
	}
	text, err := json.Marshal(f)
	if err != nil || !strings.Contains(string(text), `"sd":null`) {
		t.Errorf("JSON of the fit: %v, %.80q; want an SD of null", err, text)
	}
}

// TestFitOfTheSteeringsCentre: what was known of the steering's centre before any
// reading comes back in the unit in which it was stated.
func TestFitOfTheSteeringsCentre(t *testing.T) {
	for _, template := range []string{"double-wishbone-rack", "double-wishbone-centre-link"} {
		t.Run(template, func(t *testing.T) {
			d := study.Template{Key: template}.Document()
			length := d.Units.FromMillimetres // one of the templates is in inches
			d.Readings = []study.Reading{{Side: study.Left, Base: length(300), Repeatability: length(0.05)}}
			for i := range 5 {
				travel := float64(10*i - 20)
				d.Readings[0].Values = append(d.Readings[0].Values, [2]float64{length(travel), length(1.3 + 0.015*travel)})
			}
			d.Priors = []study.Prior{{Parameter: "tieRodOuter.z", SD: length(2)}, {Parameter: "steerZero", SD: 0.75}}
			d.Advise = nil
			f, err := Fit(t.Context(), d, FitOptions{})
			if err != nil {
				t.Fatal(err)
			}
			got, ok := f.Fitted["steerZero"]
			if !ok || !(math.Abs(got.PriorSD-0.75) <= 1e-12) || !(got.SD > 0 && got.SD <= 0.75) {
				t.Errorf("fitted %+v, want an SD of 0.75 before the readings and no more after", f.Fitted)
			}
		})
	}
}

// TestFitFindsPlay: a run in droop that reads higher by 0.6 mm at one end than the run in
// bump shows play there, and the mean of the gap is the gauge's zero; one that reads
// higher throughout shows none.
func TestFitFindsPlay(t *testing.T) {
	d, _ := simulated(t, "fit01.json")
	up := d.Readings[0]
	up.Direction = "bump"
	n := float64(len(up.Values))
	for _, tt := range []struct {
		name       string
		gap, whole float64
		want       int
	}{{"play at one end", 0.6, 0, 1}, {"another zero", 0, 0.6, 0}} {
		down := up
		down.Direction = "droop"
		down.Values = append([][2]float64(nil), up.Values...)
		for i := range down.Values {
			down.Values[i][1] += tt.whole
		}
		down.Values[0][1] += tt.gap
		d.Readings = []study.Reading{up, down}
		f, err := Fit(t.Context(), d, FitOptions{})
		if err != nil {
			t.Fatal(err)
		}
		if len(f.Play) != tt.want {
			t.Errorf("%s: play %+v, want %d of it", tt.name, f.Play, tt.want)
			continue
		}
		for _, p := range f.Play {
			near(t, "gap of the play, mm", p.Gap, -tt.gap*(1-1/n), 1e-9)
			if p.Sets != [2]int{0, 1} || p.Travel != up.Values[0][0] {
				t.Errorf("%s: play %+v, want it between sets 0 and 1 at travel %g", tt.name, p, up.Values[0][0])
			}
		}
	}
}

// TestFitRefusesTravelsThatCannotBe: travel read elsewhere than at the wheel asks for the
// car as it stood; one that cannot be built, or does not go there, has no readings.
func TestFitRefusesTravelsThatCannotBe(t *testing.T) {
	run := func(travel float64, changes study.Changes) error {
		d := document(t, "")
		d.Readings = []study.Reading{{Side: study.Left, Base: 300, Repeatability: 0.05, TravelAs: "lower-ball-joint", Changes: changes, Values: [][2]float64{{0, 1}, {10, 1.1}, {travel, 1.2}}}}
		_, err := Fit(t.Context(), d, FitOptions{})
		return err
	}
	if err := run(20, nil); err != nil {
		t.Fatalf("travels that can be: %v", err)
	}
	if err := run(900, nil); err == nil || !strings.Contains(err.Error(), "900") {
		t.Errorf("900 mm of travel: %v, want an error with the travel", err)
	}
	if err := run(20, study.Changes{"rideHeight": 150, "lowerBallJointHeight": -300}); err == nil || !strings.Contains(err.Error(), "static position cannot be met") {
		t.Errorf("a car that cannot be built: %v, want an error that says so", err)
	}
}

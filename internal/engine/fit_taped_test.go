package engine

import (
	"encoding/json"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"toewright/internal/study"
)

// tapedCar is a job of testdata/cases: the study, and the car that was taped.
func tapedCar(t *testing.T, name string) (d, truth *study.Document) {
	t.Helper()
	data, err := os.ReadFile(filepath.Join("../../testdata/cases", name))
	if err != nil {
		t.Fatal(err)
	}
	var c struct {
		Study    json.RawMessage
		Expected struct {
			Points map[string]struct{ True study.Vec3 }
		}
	}
	if err := json.Unmarshal(data, &c); err != nil {
		t.Fatal(err)
	}
	if d, err = study.Decode(c.Study); err != nil {
		t.Fatal(err)
	}
	truth = d.Clone()
	for name, at := range c.Expected.Points {
		truth.Suspension.Left.Points[strings.TrimPrefix(name, "left.")] = at.True
	}
	return d, truth
}

// read adds what two indicators 300 mm apart read on the true car, to 0.01 mm.
func read(t *testing.T, d, truth *study.Document) {
	t.Helper()
	sweep, err := Sweep(t.Context(), truth, SweepOptions{})
	if err != nil {
		t.Fatal(err)
	}
	base := d.Units.FromMillimetres(300)
	for _, s := range sweep.Sweeps[:1] {
		r := study.Reading{Side: study.Left, Base: base, Repeatability: d.Units.FromMillimetres(0.05), SlopeSD: new(float64)}
		for _, p := range s.Positions {
			toe := base * math.Tan(float64(p.Toe)*math.Pi/180)
			r.Values = append(r.Values, [2]float64{p.Travel, d.Units.FromMillimetres(math.Round(100*d.Units.Millimetres(toe)) / 100)})
		}
		d.Readings = append(d.Readings, r)
	}
	d.Advise = &study.Advise{Parameter: "tieRodOuterHeight", Min: -d.Units.FromMillimetres(40), Max: d.Units.FromMillimetres(40)}
}

// TestFitTakesTapeAlong fits tape and gauge of simulated jobs in one estimate: the toe is
// then the gauge's, the places still the tape's, and a slip of the tape is named.
func TestFitTakesTapeAlong(t *testing.T) {
	for _, name := range []string{"tp01_dw.json", "tp03_strut.json", "tp05_slip_10mm.json", "tp08_marks_off.json"} {
		t.Run(name, func(t *testing.T) {
			d, truth := tapedCar(t, name)
			tape, err := Locate(t.Context(), d, LocateOptions{})
			if err != nil {
				t.Fatal(err)
			}
			read(t, d, truth)
			f, err := Fit(t.Context(), d, FitOptions{})
			if err != nil {
				t.Fatal(err)
			}
			if f.Verdict == "not explained" || len(f.Outliers) > 0 || len(f.Slips) > 0 || len(f.TapeOutliers) != len(tape.Outliers) {
				t.Errorf("%s: %d outliers, %d of the tape as %d, slips %v", f.Verdict, len(f.Outliers), len(f.TapeOutliers), len(tape.Outliers), f.Slips)
			}
			if want := tape.DegreesOfFreedom + len(d.Readings[0].Values) - 1; f.DegreesOfFreedom != want {
				t.Errorf("%d degrees of freedom, want %d of tape and gauge", f.DegreesOfFreedom, want)
			}
			applied, err := ApplyFit(d, f)
			if err != nil {
				t.Fatal(err)
			}
			for key, v := range f.Fitted {
				name, axis, ok := splitCoordinate(key)
				if !ok {
					continue
				}
				got, want := applied.Suspension.Left.Points[name][axis], truth.Suspension.Left.Points[name][axis]
				if off := math.Abs(got - want); !(off <= 4*v.SD) || !(v.SD <= tape.Points["left."+name].SD[axis]*(1+1e-6)) {
					t.Errorf("%s is %.3f off, sd %.3f, by tape alone %.3f", key, off, v.SD, tape.Points["left."+name].SD[axis])
				}
			}
			got, want := endOfBump(t, applied), endOfBump(t, truth)
			if off := math.Abs(got - want); !(off <= 0.03) {
				t.Errorf("toe at full bump %.4f deg, want %.4f: the gauge reads 0.01", got, want)
			}
		})
	}
}

// endOfBump returns the left wheel's toe change at full bump.
func endOfBump(t *testing.T, d *study.Document) float64 {
	t.Helper()
	sweep, err := Sweep(t.Context(), d, SweepOptions{Candidate: study.BaseName})
	if err != nil {
		t.Fatal(err)
	}
	p := sweep.Sweeps[0].Positions
	for i := range p {
		if p[i].Travel == 0 {
			return float64(p[len(p)-1].Toe - p[i].Toe)
		}
	}
	t.Fatal("no position at travel 0")
	return 0
}

// TestTapeIsAPrior measures every coordinate where the file has it, of a car of each
// kind: a fit then says what it says with priors of the same spread.
func TestTapeIsAPrior(t *testing.T) {
	const sd = 2.5
	seen := map[string]bool{}
	for _, template := range study.Templates() {
		d := template.Document()
		if seen[d.Suspension.Type] {
			continue
		}
		seen[d.Suspension.Type] = true
		t.Run(template.Key, func(t *testing.T) {
			d.Priors, d.Readings = nil, nil
			read(t, d, d)
			for i := range d.Readings[0].Values {
				d.Readings[0].Values[i][1] += d.Units.FromMillimetres(0.05 * math.Sin(float64(i)))
			}
			if d.Suspension.Common != nil {
				d.Advise.Parameter = "dragLinkOuterHeight"
			}
			plain := d.Clone()
			spread := d.Units.FromMillimetres(sd * study.UnknownSD / math.Hypot(sd, study.UnknownSD))
			d.Measured = &study.Measured{}
			for _, p := range d.Points() {
				if p.Side == study.Right && d.Suspension.Common == nil {
					continue // not read
				}
				for k, list := range []*[]study.Plumbed{&d.Measured.Stations, &d.Measured.Sides, &d.Measured.Heights} {
					*list = append(*list, study.Plumbed{Of: d.SourcePath(p), Value: p.Place[k], SD: d.Units.FromMillimetres(sd)})
					prior := study.Prior{Parameter: p.Name + "." + "xyz"[k:k+1], SD: spread}
					if p.Side != "" && d.Suspension.Right != nil {
						prior.Parameter += "@" + string(p.Side)
					}
					prior.Shared = true
					plain.Priors = append(plain.Priors, prior)
				}
			}
			got, err := Fit(t.Context(), d, FitOptions{})
			if err != nil {
				t.Fatal(err)
			}
			want, err := Fit(t.Context(), plain, FitOptions{})
			if err != nil {
				t.Fatal(err)
			}
			g, w := got.Advice["left"], want.Advice["left"]
			for _, pair := range [][2]float64{{g.Best, w.Best}, {g.Low, w.Low}, {g.High, w.High}} {
				if !(math.Abs(pair[0]-pair[1]) <= 1e-5) {
					t.Errorf("advice by tape %+v, by priors %+v", g, w)
					break
				}
			}
			if !(math.Abs(got.ChiSquare-want.ChiSquare) <= 1e-6*(1+want.ChiSquare)) {
				t.Errorf("chi-square by tape %.9g, by priors %.9g", got.ChiSquare, want.ChiSquare)
			}
		})
	}
}

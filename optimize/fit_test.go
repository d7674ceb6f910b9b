package optimize_test

import (
	"context"
	"encoding/json"
	"math"
	"os"
	"path/filepath"
	"testing"

	"toewright/optimize"
	"toewright/solver"
)

// A fitCase is a simulated car of testdata/cases with its true best: readings and
// optimum come from an independent kinematics.
type fitCase struct {
	Study struct {
		Travel   struct{ Bump, Droop, Step float64 }
		Readings []struct {
			Side, Gauge         string
			Base, Repeatability float64
			Changes             map[string]float64
			Values              [][2]float64
		}
		Priors []struct {
			Parameter string
			SD        float64
		}
		Advise struct {
			Parameter      string
			Step, Min, Max float64
		}
	}
	TrueBest, TrueBestRMS float64
	TrueToeAtZero         []float64
}

func loadFitCase(t testing.TB, name string) (*optimize.GaugeFit, *fitCase) {
	t.Helper()
	base, _ := loadSearchCase(t, name)
	b, err := os.ReadFile(filepath.Join("../testdata/cases", name))
	if err != nil {
		t.Fatal(err)
	}
	var c fitCase
	if err := json.Unmarshal(b, &c); err != nil {
		t.Fatal(err)
	}
	p := &optimize.GaugeFit{Base: base}
	for _, r := range c.Study.Readings {
		s := optimize.ReadingSet{Base: r.Base, Repeatability: r.Repeatability}
		if s.Gauge, err = optimize.ParseGauge(r.Gauge); err != nil {
			t.Fatal(err)
		}
		for key, v := range r.Changes {
			s.Changes = append(s.Changes, changeOf(t, base, key, v))
		}
		for _, v := range r.Values {
			s.Readings = append(s.Readings, optimize.Reading{Travel: v[0], Value: v[1]})
		}
		p.Sets = append(p.Sets, s)
	}
	for _, q := range c.Study.Priors {
		k, sides, err := solver.FindParameter(base.Design(), q.Parameter)
		if err != nil {
			t.Fatal(err)
		}
		p.Priors = append(p.Priors, optimize.FitPrior{Parameter: k, Sides: sides, SD: q.SD})
	}
	return p, &c
}

func changeOf(t testing.TB, base *solver.Assembler, key string, v float64) solver.Change {
	t.Helper()
	c, err := solver.NewChange(base.Design(), key, v)
	if err != nil {
		t.Fatal(err)
	}
	return c
}

// request asks for the advice of a case.
func (c *fitCase) request(t testing.TB, base *solver.Assembler) *optimize.AdviceRequest {
	t.Helper()
	a := c.Study.Advise
	q := &optimize.AdviceRequest{Step: a.Step, Min: a.Min, Max: a.Max}
	var err error
	if q.Parameter, q.Sides, err = solver.FindParameter(base.Design(), a.Parameter); err != nil {
		t.Fatal(err)
	}
	w := c.Study.Travel
	if q.Window.Travels, err = solver.Grid(w.Bump, w.Droop, w.Step); err != nil {
		t.Fatal(err)
	}
	return q
}

func fitCar(t testing.TB, p *optimize.GaugeFit) *optimize.FittedCar {
	t.Helper()
	f, err := optimize.FitCar(context.Background(), p)
	if err != nil {
		t.Fatal(err)
	}
	return f
}

func adviceOf(t testing.TB, f *optimize.FittedCar, q *optimize.AdviceRequest) *optimize.Advice {
	t.Helper()
	as, err := f.Advise(q)
	if err != nil {
		t.Fatal(err)
	}
	if len(as) == 0 {
		t.Fatal("no advice")
	}
	return as[0]
}

// TestAdviceOnSimulatedCars reaches the true best of simulated cars.
func TestAdviceOnSimulatedCars(t *testing.T) {
	for _, name := range []string{"fit01.json", "fit02.json"} {
		t.Run(name, func(t *testing.T) {
			p, c := loadFitCase(t, name)
			f := fitCar(t, p)
			t.Logf("status %v chi %g dof %d outliers %v", f.Status, f.ChiSquare, f.Freedom, f.Outliers)
			a := adviceOf(t, f, c.request(t, p.Base))
			t.Logf("best %g (%g..%g) step %d true %g rms %v %v", a.Best, a.Low, a.High, a.Step, c.TrueBest, a.AtBest.RMS, a.AtValue.RMS)
			if !(math.Abs(a.Best-c.TrueBest) <= 0.75) {
				t.Errorf("best = %.4f, want %.4f within 0.75 mm", a.Best, c.TrueBest)
			}
		})
	}
}

func BenchmarkFitCar(b *testing.B) {
	p, c := loadFitCase(b, "fit01.json")
	b.ReportAllocs()
	for b.Loop() {
		fitCar(b, p)
	}
	_ = c
}

func BenchmarkAdvise(b *testing.B) {
	p, c := loadFitCase(b, "fit01.json")
	f := fitCar(b, p)
	q := c.request(b, p.Base)
	b.ReportAllocs()
	for b.Loop() {
		adviceOf(b, f, q)
	}
}

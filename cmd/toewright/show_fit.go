package main

import (
	"cmp"
	"slices"

	"toewright/internal/engine"
)

// mostFitted is how many of the unknowns are listed: those that the readings moved
// or settled most.
const mostFitted = 8

// showFit prints what the fit comes to in sentences, then the numbers behind it.
func showFit(r *report, f *engine.FitResult) {
	for _, line := range f.Words {
		r.sentence(line)
	}
	showFitted(r, f)
	showSettled(r, f)
	showPredicted(r, f)
	if len(f.Next) > 0 {
		r.heading("what to measure next, the most useful first")
		for _, m := range f.Next {
			r.sentence(m.Words)
		}
	}
}

func showFitted(r *report, f *engine.FitResult) {
	r.heading("what the readings say most of, changes from the file")
	t := &table{left: map[int]bool{4: true}}
	t.add("", "change", "sd", "sd before", "")
	for _, key := range mostMoved(f) {
		v := f.Fitted[key]
		change, unit := r.parameter(key, v.Value)
		sd, _ := r.parameter(key, v.SD)
		before, _ := r.parameter(key, v.PriorSD)
		t.add(key, change, sd, before, unit)
	}
	r.table(t)
}

// mostMoved returns the keys of the unknowns whose standard deviation the readings
// lowered most.
func mostMoved(f *engine.FitResult) []string {
	var keys []string
	for key := range f.Fitted {
		keys = append(keys, key)
	}
	left := func(key string) float64 { return f.Fitted[key].SD / f.Fitted[key].PriorSD }
	slices.SortFunc(keys, func(a, b string) int {
		return cmp.Or(cmp.Compare(left(a), left(b)), cmp.Compare(a, b))
	})
	return keys[:min(len(keys), mostFitted)]
}

func showSettled(r *report, f *engine.FitResult) {
	if len(f.Settled) == 0 {
		return
	}
	r.heading("known far better together than apart")
	t := &table{}
	t.add("", "sd", "sd before")
	for _, s := range f.Settled {
		sign := " - "
		if s.Sum {
			sign = " + "
		}
		t.add(s.First+sign+s.Second, r.length(s.SD), r.length(s.BeforeSD))
	}
	r.table(t)
}

func showPredicted(r *report, f *engine.FitResult) {
	r.heading("toe change less target as fitted, with its 90 %% band, in %s", r.ToeMark())
	t := &table{}
	t.add("", "rms", "from", "to", "largest", "from", "to")
	for _, c := range f.Cars {
		t.add(oneLine(c.Candidate), r.toe(float64(c.RMS.Value)), r.toe(float64(c.RMS.Low)), r.toe(float64(c.RMS.High)),
			r.toe(float64(c.Peak.Value)), r.toe(float64(c.Peak.Low)), r.toe(float64(c.Peak.High)))
	}
	r.table(t)
}

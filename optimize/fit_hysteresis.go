package optimize

import "math"

// Hysteresis is the largest difference between two runs in opposite directions.
type Hysteresis struct {
	Sets   [2]int  // bump run and droop run
	Travel float64 // where it is, mm
	Gap    float64 // between the runs, their zeros evened out, mm
	Score  float64 // in units of its standard deviation: beyond 3 or so there is play
}

// Hystereses compares the runs in bump with those in droop of the same side and
// set-up, at the travels that they share.
func (p *GaugeFit) Hystereses() []Hysteresis {
	var out []Hysteresis
	for i := range p.Sets {
		for k := range p.Sets {
			a, b := &p.Sets[i], &p.Sets[k]
			if a.Run == BumpRun && b.Run == DroopRun && a.Side == b.Side && sameChanges(a.Changes, b.Changes) {
				if h, ok := hysteresis(a, b); ok {
					h.Sets = [2]int{i, k}
					out = append(out, h)
				}
			}
		}
	}
	return out
}

// hysteresis compares two runs; false where they share fewer than two travels.
func hysteresis(bump, droop *ReadingSet) (Hysteresis, bool) {
	var travels, gaps []float64
	for _, r := range bump.Readings {
		for _, q := range droop.Readings {
			if r.Travel == q.Travel {
				travels = append(travels, r.Travel)
				gaps = append(gaps, r.Value-q.Value)
			}
		}
	}
	if len(gaps) < 2 {
		return Hysteresis{}, false
	}
	var h Hysteresis
	shared := mean(gaps)
	for i, g := range gaps {
		if math.Abs(g-shared) >= math.Abs(h.Gap) {
			h.Travel, h.Gap = travels[i], g-shared
		}
	}
	n := float64(len(gaps))
	h.Score = math.Abs(h.Gap) / (math.Hypot(bump.Repeatability, droop.Repeatability) * math.Sqrt(1-1/n))
	return h, true
}

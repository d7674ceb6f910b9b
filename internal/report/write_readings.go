package report

import (
	"fmt"

	"toewright/internal/engine"
)

// readings writes whether the readings bear the model out, where they put the
// candidate, and whether it did what it should once fitted.
func (p *page) readings() {
	f := p.Fit
	if f == nil {
		return
	}
	var lines []string
	for _, words := range f.Words[:len(f.Nothing)+1] { // and the verdict
		lines = append(lines, words+".")
	}
	for i := range f.Cars {
		if f.Cars[i].Candidate == p.Candidate {
			lines = append(lines, p.predicted(&f.Cars[i].Peak))
		}
	}
	if f.Verify != nil {
		lines = append(lines, p.verified(f.Verify)...)
	}
	p.points("Readings", lines)
}

// predicted says what the candidate comes to on the car as read.
func (p *page) predicted(b *engine.BandResult) string {
	return fmt.Sprintf("On the car as read: largest error %s, between %s and %s with 90 %% probability.",
		p.toeText(float64(b.Value)), p.toeText(float64(b.Low)), p.toeText(float64(b.High)))
}

// verified says of each set of readings taken after fitting whether it passed.
func (p *page) verified(v *engine.VerifyResult) []string {
	var lines []string
	for i := range v.Sets {
		s := &v.Sets[i]
		line := fmt.Sprintf("Readings after fitting, set %d, %s: ", s.Set+1, s.Side)
		if s.Passed {
			lines = append(lines, line+"passed.")
			continue
		}
		lines = append(lines, line+fmt.Sprintf("NOT PASSED: at travel %s %s it is %s off.",
			p.n.travel(s.Travels[s.Worst]), p.n.LengthUnit(), p.n.full(s.Off[s.Worst])))
	}
	return lines
}

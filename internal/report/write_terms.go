package report

import (
	"fmt"
	"strings"

	"toewright/internal/engine"
	"toewright/internal/study"
	"toewright/solver"
)

// terms ends the sheet with what its numbers hold for and the cautions.
func (p *page) terms() {
	p.open("section", "pair")
	if p.alike() {
		p.conditions()
		p.cautions()
	} else {
		p.effects()
		p.open("div", "")
		p.conditions()
		p.cautions()
		p.close("div")
	}
	p.close("section")
}

// conditions writes what the numbers hold for.
func (p *page) conditions() {
	w, unit := p.Study.Window(), " "+p.n.LengthUnit()
	lines := []string{
		"Curves: " + p.n.travel(w.Droop) + unit + " of droop to " + p.n.travel(w.Bump) + unit +
			" of bump at the wheel centre, both wheels together, straight ahead, from ride height.",
		"Errors and ranges: over " + p.windowWords() + " in steps of " + p.n.travel(p.Window.Step) + unit + p.targetWords() + ".",
		"Toe is per wheel, toe-in positive; its unit: " + p.n.ToeUnit() + ".",
		p.settings(),
	}
	lines = append(lines, p.reaches()...)
	p.points("Conditions", lines)
}

func (p *page) targetWords() string {
	if p.flat() {
		return ", against no toe change"
	}
	return ", against the study's target"
}

// settings says at which static values the candidate stands, and what takes them up.
func (p *page) settings() string {
	k := p.record()
	text := "Held: toe, camber, caster"
	if k != nil {
		text = "Held: " + held(k.Hold)
	}
	f := &p.after().Figures[solver.Left]
	text += fmt.Sprintf(". The left wheel stands at toe %s°, camber %s°, caster %s°",
		p.n.AngleNumber(float64(f.StaticToe)), p.n.AngleNumber(float64(f.StaticCamber)), p.n.AngleNumber(float64(f.StaticCaster)))
	if by := p.adjuster(); by != "" {
		text += "; camber and caster are set by the " + by
	}
	return text + "."
}

// adjuster names the part that takes up camber and caster.
func (p *page) adjuster() string {
	kind, err := solver.KindByName(p.Study.Suspension.Type)
	if err != nil {
		return ""
	}
	for _, a := range kind.Adjusters() {
		if key := p.Study.Suspension.Adjuster; key == a.Key || key == "" {
			return a.Label
		}
	}
	return ""
}

// reaches says where a car locks within the travel.
func (p *page) reaches() []string {
	var lines []string
	for i := range p.Cars {
		for side := range p.Cars[i].Curves {
			c := &p.Cars[i].Curves[side]
			if c.Reach == nil {
				continue
			}
			line := fmt.Sprintf("%s, %s wheel locks", p.carName(c.Candidate), c.Side)
			if b := c.Reach.Bump; b != nil {
				line += " at " + p.n.travel(*b) + " " + p.n.LengthUnit() + " of bump"
			}
			if d := c.Reach.Droop; d != nil {
				line += " at " + p.n.travel(*d) + " " + p.n.LengthUnit() + " of droop"
			}
			lines = append(lines, line+": "+study.Spoken(c.Reach.Link)+" stands in the way.")
		}
	}
	return lines
}

// cautions says what must not be forgotten.
func (p *page) cautions() {
	p.open("div", "cautions whole")
	p.open("p", "")
	p.element("strong", "", "Steering parts can kill when they fail. ")
	p.write(strings.Join(engine.Cautions, " ") + " ")
	p.write("Stand the car on supports rated for it and contain the springs; keep to the maker's torques, thread engagement and split pins. " +
		"The rules of the series, the law of the place and the judgement of a licensed engineer go before this sheet.")
	p.close("p")
	p.close("div")
}

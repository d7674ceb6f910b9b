package report

import (
	"toewright/internal/engine"
	"toewright/internal/number"
)

// effect is a figure beside the toe that a change may spoil.
type effect struct {
	label string
	kind  kind
	of    func(*engine.Figures) engine.Number
}

var effects = []effect{
	{"static camber", angleKind, func(f *engine.Figures) engine.Number { return f.StaticCamber }},
	{"camber range", angleKind, func(f *engine.Figures) engine.Number { return f.CamberRange }},
	{"static caster", angleKind, func(f *engine.Figures) engine.Number { return f.StaticCaster }},
	{"caster range", angleKind, func(f *engine.Figures) engine.Number { return f.CasterRange }},
	{"kingpin inclination", angleKind, func(f *engine.Figures) engine.Number { return f.StaticKingpin }},
	{"scrub radius", lengthKind, func(f *engine.Figures) engine.Number { return f.ScrubRadius }},
	{"caster trail", lengthKind, func(f *engine.Figures) engine.Number { return f.Trail }},
	{"roll-centre height", lengthKind, func(f *engine.Figures) engine.Number { return f.RollCentre }},
	{"half-track range", lengthKind, func(f *engine.Figures) engine.Number { return f.HalfTrackRange }},
	{"inner ball angle", angleKind, func(f *engine.Figures) engine.Number { return f.InnerBallAngle }},
	{"outer ball angle", angleKind, func(f *engine.Figures) engine.Number { return f.OuterBallAngle }},
	{"toe-out on turns", angleKind, func(f *engine.Figures) engine.Number { return f.ToeOutOnTurns }},
	{"Ackermann", percentKind, func(f *engine.Figures) engine.Number { return f.Ackermann }},
	{"steering ratio", ratioKind, func(f *engine.Figures) engine.Number { return f.SteeringRatio }},
	{"turning circle", longKind, func(f *engine.Figures) engine.Number { return f.TurningCircle }},
}

// effects writes what else the candidate comes to. A figure that no side has is left
// out.
func (p *page) effects() {
	p.open("div", "whole")
	p.element("h2", "", map[bool]string{true: "What else changes", false: "What else it comes to"}[p.before() != nil])
	p.open("table", "numbers effects")
	p.open("thead", "")
	p.effectHead()
	p.close("thead")
	p.open("tbody", "")
	for i := range effects {
		if effects[i].known(p) {
			p.effectRow(&effects[i])
		}
	}
	p.close("tbody")
	p.close("table")
	p.element("p", "small", "Ranges are greatest less least, ball angles the largest from the joint's neutral place, "+
		"within the window. Toe-out and Ackermann: inner wheel at 20°. Turning circle: kerb to kerb at lock.")
	p.close("div")
}

// effectHead writes the headings. Where both sides have columns there is no room for
// differences.
func (p *page) effectHead() {
	names := []string{"", ""}
	for _, side := range p.sides() {
		switch {
		case p.before() == nil:
			names = append(names, p.sideName(side))
		case p.alike():
			names = append(names, "before", "after", "by")
		default:
			names = append(names, side.String()+" was", "is")
		}
	}
	p.headings(names...)
}

// known reports whether any side of the candidate has the figure.
func (e *effect) known(p *page) bool {
	f := &p.after().Figures
	return e.of(&f[0].Figures).Valid() || e.of(&f[1].Figures).Valid()
}

func (p *page) effectRow(e *effect) {
	p.open("tr", "")
	p.element("th", "", e.label)
	p.element("td", "unit", p.n.unit(e.kind))
	for _, side := range p.sides() {
		now := e.of(&p.after().Figures[side].Figures)
		b := p.before()
		if b == nil {
			p.element("td", "first", p.n.figure(e.kind, now))
			continue
		}
		was := e.of(&b.Figures[side].Figures)
		p.element("td", "first", p.n.figure(e.kind, was))
		p.element("td", "", p.n.figure(e.kind, now))
		if p.alike() {
			by := now - was
			p.element("td", "", number.Signed(float64(by), p.n.figure(e.kind, by)))
		}
	}
	p.close("tr")
}

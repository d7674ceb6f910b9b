package model

import (
	"errors"
	"fmt"
	"strings"

	"toewright/internal/number"
	"toewright/internal/study"
	"toewright/solver"
)

// TieRodValue is a number that a study may state of its tie rod. Where it is 0 the study
// does not state it.
type TieRodValue struct {
	Key   string // in the file, such as "engagement" or "innerBall"
	Label string
	About string // where it is measured or read off
	Cone  bool   // in degrees, of a ball joint; others are lengths

	of func(*study.TieRod) *float64
}

// quantity returns what the number measures.
func (v *TieRodValue) quantity() solver.Quantity {
	if v.Cone {
		return solver.AngleQuantity
	}
	return solver.LengthQuantity
}

// TieRodValues are those numbers in the order in which they are shown.
var TieRodValues = []TieRodValue{
	{"threadPitch", "Thread pitch", "How much longer the rod gets by one turn of the adjuster. Read it off a thread gauge: 20 threads to the inch are 1/20 in. Of a sleeve with a left-hand and a right-hand thread it is the pitch of both together.", false,
		func(r *study.TieRod) *float64 { return &r.ThreadPitch }},
	{"engagement", "Thread engaged", "The length of thread that is screwed in on the car as its points were measured: count the turns that it takes to come off, times the pitch. Of a sleeve with two threads, both together.", false,
		func(r *study.TieRod) *float64 { return &r.Engagement }},
	{"minEngagement", "Least engagement", "The least that must stay screwed in, as the maker of the rod or the rod end states it. Of a sleeve with two threads, both together.", false,
		func(r *study.TieRod) *float64 { return &r.MinEngagement }},
	{"maxEngagement", "Most engagement", "What is screwed in where the adjuster bottoms and the rod gets no shorter. Empty is nowhere.", false,
		func(r *study.TieRod) *float64 { return &r.MaxEngagement }},
	{"innerBall", "Inner ball, half angle", aboutCone + " Neutral is the rod in line with a rack, else square to the stud. Of a solid axle it is the inner ball of the drag link.", true,
		coneOf(func(r *study.TieRod) **study.BallJoint { return &r.InnerBall })},
	{"outerBall", "Outer ball, half angle", aboutCone + " Neutral is the rod square to the stud.", true,
		coneOf(func(r *study.TieRod) **study.BallJoint { return &r.OuterBall })},
}

const aboutCone = "The cone of the joint: the most that the rod can lean off neutral, to either side. Take the rod end in hand, lean it from stop to stop, and take half of that angle; or read it in the maker's sheet."

// coneOf returns where the cone of a joint stands, in a joint that is made where there is
// none.
func coneOf(joint func(*study.TieRod) **study.BallJoint) func(*study.TieRod) *float64 {
	return func(r *study.TieRod) *float64 {
		at := joint(r)
		if *at == nil {
			*at = &study.BallJoint{}
		}
		return &(*at).Cone
	}
}

// TieRodText writes a number of the study's tie rod with all the decimals that it has,
// and its unit: "" where the study does not state it.
func (n Numbers) TieRodText(d *study.Document, v *TieRodValue) (text, unit string) {
	unit = n.quantityUnit(v.quantity())
	x := 0.0
	if d.TieRod != nil {
		rod := *d.TieRod // of may make a joint
		x = *v.of(&rod)
	}
	if x == 0 {
		return "", unit
	}
	if !v.Cone {
		x = n.Units.FromMillimetres(d.Units.Millimetres(x))
	}
	return n.Exact(x, !v.Cone), unit
}

// SetTieRod states a number of the tie rod as [Numbers.TieRodText] writes it. An empty
// text takes it away: with a cone its joint, with the last number the tie rod.
func (s *Session) SetTieRod(v *TieRodValue, text string) error {
	x, err := s.parseTieRod(v, strings.TrimSpace(text))
	if err != nil {
		return err
	}
	return s.Edit(strings.ToLower(v.Label), "", func(d *study.Document) {
		if d.TieRod == nil {
			d.TieRod = &study.TieRod{}
		}
		*v.of(d.TieRod) = x
		prune(d)
	})
}

// parseTieRod reads a number of the tie rod, in file units or degrees; 0 of an empty text.
func (s *Session) parseTieRod(v *TieRodValue, text string) (x float64, err error) {
	if text == "" {
		return 0, nil
	}
	x, err = NumbersOf(s.doc).parseQuantity(s.doc, v.quantity(), text)
	switch {
	case err != nil:
		return 0, err
	case !(x > 0):
		return 0, fmt.Errorf("%q is not more than 0; leave it empty where it is not known", number.Clip(text))
	case v.Cone && !(x <= rightAngle):
		return 0, errCone
	}
	return x, nil
}

// rightAngle, in degrees, is how far off neutral a rod can be at all.
const rightAngle = 90

// errCone is what an angle that no joint has is refused with.
var errCone = errors.New("no ball joint leans more than 90 degrees off neutral; type half of the angle from stop to stop")

// prune takes away joints without a cone, and a tie rod of which nothing is left.
func prune(d *study.Document) {
	for _, joint := range []**study.BallJoint{&d.TieRod.InnerBall, &d.TieRod.OuterBall} {
		if *joint != nil && (*joint).Cone == 0 {
			*joint = nil
		}
	}
	if *d.TieRod == (study.TieRod{}) {
		d.TieRod = nil
	}
}

// LosesAxis reports whether the axis of a joint goes when the value is taken away.
func (v *TieRodValue) LosesAxis(d *study.Document) bool {
	if d.TieRod == nil {
		return false
	}
	joint := map[string]*study.BallJoint{"innerBall": d.TieRod.InnerBall, "outerBall": d.TieRod.OuterBall}[v.Key]
	return joint != nil && joint.Axis != nil
}

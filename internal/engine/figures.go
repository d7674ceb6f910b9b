package engine

import (
	"math"

	"toewright/optimize"
	"toewright/solver"
)

// Figures are the numbers that are said of one wheel's curves over a window, of
// the positions that it reaches. Toe change is against the car's own toe at travel
// 0; error is toe change less the target. A figure that the car does not have, or
// that the study states too little for, is none.
type Figures struct {
	StaticToe  Number `json:"staticToe"`
	RMS        Number `json:"rms"`        // of the error, over the positions
	Peak       Number `json:"peak"`       // largest size of the error
	PeakTravel Number `json:"peakTravel"` // where it is largest
	PeakToPeak Number `json:"peakToPeak"` // range of the toe
	Slope      Number `json:"slope"`      // of the toe at travel 0, degrees per unit of length
	Curvature  Number `json:"curvature"`  // degrees per unit of length squared

	StaticCamber   Number `json:"staticCamber"`
	CamberRange    Number `json:"camberRange"` // greatest less least
	StaticCaster   Number `json:"staticCaster"`
	CasterRange    Number `json:"casterRange"`
	StaticKingpin  Number `json:"staticKingpinInclination"`
	ScrubRadius    Number `json:"scrubRadius"` // at travel 0, as are trail and roll centre
	Trail          Number `json:"trail"`
	RollCentre     Number `json:"rollCentreHeight"` // above the ground
	HalfTrackRange Number `json:"halfTrackRange"`
	WheelbaseRange Number `json:"wheelbaseRange"`

	InnerBallAngle Number `json:"innerBallAngle"` // largest from the joint's neutral place
	OuterBallAngle Number `json:"outerBallAngle"`
	// InnerBallAtLock and OuterBallAtLock are the same through the window straight ahead
	// and at full lock to either side; none where the study states no steering.lock, or
	// the car does not get everywhere there.
	InnerBallAtLock Number `json:"innerBallAtLock"`
	OuterBallAtLock Number `json:"outerBallAtLock"`
	TieRodLength    Number `json:"tieRodLength"`
	ArmLength       Number `json:"steeringArmLength"` // level, from the steering axis to the ball

	SteeringFigures
	CrossesZero bool `json:"crossesZero"` // toe goes from toe-in to toe-out on the way
}

// less returns the figures of f less those of the yardstick y. Whether the toe
// crosses zero is f's own.
func (f Figures) less(y *Figures) Figures {
	mine, theirs := f.numbers(), y.numbers()
	for i := range mine {
		*mine[i] -= *theirs[i]
	}
	return f
}

// numbers lists all figures that have differences.
func (f *Figures) numbers() []*Number {
	return []*Number{
		&f.StaticToe, &f.RMS, &f.Peak, &f.PeakTravel, &f.PeakToPeak, &f.Slope, &f.Curvature,
		&f.StaticCamber, &f.CamberRange, &f.StaticCaster, &f.CasterRange, &f.StaticKingpin,
		&f.ScrubRadius, &f.Trail, &f.RollCentre, &f.HalfTrackRange, &f.WheelbaseRange,
		&f.InnerBallAngle, &f.OuterBallAngle, &f.InnerBallAtLock, &f.OuterBallAtLock,
		&f.TieRodLength, &f.ArmLength,
		&f.ToeOutOnTurns, &f.Ackermann, &f.SteeringRatio, &f.TurningCircle,
	}
}

// noFigures returns figures none of which there is.
func noFigures() Figures {
	var f Figures
	for _, n := range f.numbers() {
		*n = none
	}
	return f
}

// figures returns what the positions of one side's curve say.
func (s *sweeper) figures(c *solver.Curve, t *optimize.Target) Figures {
	f := noFigures()
	toe, ok := solver.NewFigures(c.Positions, t.At)
	if !ok {
		return f
	}
	s.toeFigures(&toe, &f)
	s.atRest(c.Positions, &f)
	s.ranges(c.Positions, &f)
	return f
}

// toeFigures sets what is said of the toe.
func (s *sweeper) toeFigures(t *solver.Figures, f *Figures) {
	unit := s.doc.Units.Millimetres(1)
	f.RMS, f.Peak = degrees(t.RMS.Radians()), degrees(t.Peak.Radians())
	f.PeakTravel = Number(s.doc.Units.FromMillimetres(t.PeakTravel))
	f.PeakToPeak = degrees(t.PeakToPeak.Radians())
	f.Slope, f.Curvature = degrees(t.Slope*unit), degrees(t.Curvature*unit*unit)
	f.CrossesZero = t.Crosses
}

// atRest sets what holds at travel 0.
func (s *sweeper) atRest(ps []solver.Position, f *Figures) {
	for i := range ps {
		if ps[i].Travel != 0 {
			continue
		}
		p := s.position(&ps[i])
		f.StaticToe, f.StaticCamber = Number(p.Toe), Number(p.Camber)
		f.StaticCaster, f.StaticKingpin = p.Caster, p.KingpinInclination
		f.ScrubRadius, f.Trail, f.RollCentre = p.ScrubRadius, p.Trail, p.RollCentreHeight
		return
	}
}

// ranges sets by how much the positions differ, and what is largest among them.
func (s *sweeper) ranges(ps []solver.Position, f *Figures) {
	extremes := func(of func(*solver.Position) float64) (least, most float64) {
		least, most = math.Inf(1), math.Inf(-1)
		for i := range ps {
			x := of(&ps[i])
			least, most = math.Min(least, x), math.Max(most, x) // NaN stays
		}
		return least, most
	}
	width := func(of func(*solver.Position) float64) float64 {
		least, most := extremes(of)
		return most - least
	}
	largest := func(of func(*solver.Position) float64) Number {
		_, most := extremes(of)
		return degrees(most)
	}
	mm := s.doc.Units.FromMillimetres
	f.CamberRange = degrees(width(func(p *solver.Position) float64 { return p.Camber.Radians() }))
	f.CasterRange = degrees(width(func(p *solver.Position) float64 { return p.Caster.Radians() }))
	f.HalfTrackRange = Number(mm(width(func(p *solver.Position) float64 { return p.HalfTrackChange })))
	f.WheelbaseRange = Number(mm(width(func(p *solver.Position) float64 { return p.WheelbaseChange })))
	f.InnerBallAngle = largest(func(p *solver.Position) float64 { return p.Joints.Inner.Radians() })
	f.OuterBallAngle = largest(func(p *solver.Position) float64 { return p.Joints.Outer.Radians() })
}

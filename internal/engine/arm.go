package engine

import (
	"cmp"
	"context"
	"slices"

	"gonum.org/v1/gonum/spatial/r3"

	"toewright/internal/study"
	"toewright/solver"
)

// ArmOptions say whose steering arm is asked for.
type ArmOptions struct {
	Candidate string   `json:"candidate,omitzero"` // "base", where empty, is the base car
	Step      *float64 `json:"step,omitzero"`      // that the shop works to, in the file's units; nil is the last decimal shown
}

// ArmResult is what [Arm] returns: lengths in the file's units.
type ArmResult struct {
	Units     study.Units `json:"units"`
	Candidate string      `json:"candidate"`
	Step      float64     `json:"step"` // on which the sizes to make lie
	Window    Window      `json:"window"`
	Sides     []ArmSide   `json:"sides"` // left, then right
}

// ArmSide is one side's steering arm as the shop that makes it reads it, each
// displacement that of the hole for the outer ball from the original hole.
type ArmSide struct {
	Side string `json:"side"`
	// Car is the displacement forward, outboard and up.
	Car  [3]float64 `json:"car"`
	Face *FaceMove  `json:"face,omitzero"` // nil where the study states no face
	// AlongStud is its part along the stud, upward positive, AcrossStud what is left,
	// without sign.
	AlongStud  float64 `json:"alongStud"`
	AcrossStud float64 `json:"acrossStud"`
	Arm        Lengths `json:"arm"` // level, from the steering axis to the ball
	TieRod     Lengths `json:"tieRod"`
	// DragLink is a solid axle's, nil for others.
	DragLink *Lengths `json:"dragLink,omitzero"`
	// Turns of the tie rod's adjuster make the change of its length, positive for
	// longer; Thread is what is then engaged. None where the study does not state the
	// pitch, or the thread engaged before.
	Turns  Number `json:"turns"`
	Thread Number `json:"thread"`
	Place  Places `json:"place"`
	// Part is the arm as a part to be made.
	Part ArmPart `json:"part"`
	// Peak is the wheel's largest toe change less target over the window with the ball where
	// the candidate has it, PeakMade with the ball where the sizes to make put it; static toe
	// is set again. None where the window is not reached.
	Peak     Number `json:"peak"`
	PeakMade Number `json:"peakMade"`
}

// FaceMove is a displacement in the axes of the face that an arm is bolted to: along
// its normal, which points from knuckle to arm, along its bolts, and across them.
// Axes are these directions forward, outboard and up, of length 1.
type FaceMove struct {
	By   [3]float64    `json:"by"`
	Axes [3][3]float64 `json:"axes"`
}

// Lengths are a length on the original car and on the candidate.
type Lengths struct {
	Before float64 `json:"before"`
	After  float64 `json:"after"`
}

// Places are where the original arm stands at static height, in vehicle axes, for a
// drawing. Axis and Stud are directions of length 1.
type Places struct {
	Hole  [3]float64 `json:"hole"` // for the outer ball
	Foot  [3]float64 `json:"foot"` // point of the steering axis at the hole's height
	Inner [3]float64 `json:"inner"`
	Wheel [3]float64 `json:"wheel"` // centre
	Axis  [3]float64 `json:"axis"`  // of steering, upward
	Stud  [3]float64 `json:"stud"`
}

// Arm returns what a candidate makes of both steering arms. The original is the
// base car with those coordinates that the candidate corrects: what is measured
// otherwise is not a part to be made.
func Arm(ctx context.Context, d *study.Document, o ArmOptions) (*ArmResult, error) {
	step := given(o.Step, finestStep(d))
	if !(step > 0) {
		return nil, wrongf("step", "%g %s is no step to work to, want more than 0", step, d.Units)
	}
	s, err := newJudge(d, "")
	if err != nil {
		return nil, err
	}
	name := cmp.Or(o.Candidate, study.BaseName)
	car, err := s.byName(name)
	if err != nil {
		return nil, err
	}
	original, err := s.original(car)
	if err != nil {
		return nil, err
	}
	var at solver.Placed
	if err := original.Place(solver.NewWorkspace(), [2]float64{}, 0, &at); err != nil {
		return nil, explain(err, label(study.BaseName))
	}
	w := s.window
	out := &ArmResult{Units: d.Units, Candidate: name, Step: step, Window: Window{Bump: w.Bump, Droop: w.Droop, Step: w.Step}}
	for _, side := range solver.Sides {
		if f := s.armFace(side); f != nil && !(r3.Norm(f.Normal) > 0) {
			return nil, wrongf("suspension."+side.String()+".armFace.normal", "has no direction; state a vector such as [0, -1, 0]")
		}
		r := car.axle.ArmReport(original, side, s.armFace(side))
		one := s.armSide(&r, &at)
		one.Part = s.armPart(&r, step)
		out.Sides = append(out.Sides, one)
	}
	s.rounding(car, original, out)
	return out, ctx.Err()
}

// rounding finds the toe of the car with its balls exactly placed and as they are made.
func (s *sweeper) rounding(exact car, original *solver.Axle, out *ArmResult) {
	peaks := func(c car, set func(*ArmSide, Number)) {
		if c.axle == nil || s.move(c, Attitude{}) != nil {
			return
		}
		wanted := targets(s.doc)
		for _, side := range solver.Sides {
			if c := &s.curves[side]; c.Reach.Whole() {
				set(&out.Sides[side], s.figures(c, &wanted[side]).Peak)
			}
		}
	}
	peaks(exact, func(a *ArmSide, x Number) { a.Peak = x })
	made := car{name: exact.name}
	if changes, err := s.madeChanges(exact, original, out.Sides); err == nil {
		if axle, err := s.base.Assemble(changes, exact.axle.Hold()); err == nil {
			made.axle = axle
		}
	}
	peaks(made, func(a *ArmSide, x Number) { a.PeakMade = x })
}

// original returns the base car with the coordinates that a candidate corrects.
func (c *cars) original(of car) (*solver.Axle, error) {
	var corrected []solver.Change
	for _, change := range of.axle.Changes() {
		if change.Parameter.Coordinate() {
			corrected = append(corrected, change)
		}
	}
	axle, err := c.base.Assemble(corrected, solver.HoldAll)
	return axle, explain(err, label(study.BaseName))
}

// armFace returns the face of a side's steering arm, nil where the study states
// none.
func (c *cars) armFace(s solver.Side) *solver.ArmFace {
	corner := c.doc.Suspension.Corner(study.Side(s.String()))
	f := corner.ArmFace
	if f == nil {
		return nil
	}
	out := &solver.ArmFace{Normal: solverVec(f.Normal)}
	if len(f.Bolts) > 1 {
		out.Pattern = r3.Sub(solverVec(f.Bolts[1]), solverVec(f.Bolts[0]))
	}
	return out
}

func solverVec(v study.Vec3) solver.Vec { return solver.Vec{X: v[0], Y: v[1], Z: v[2]} }

func (c *cars) armSide(r *solver.ArmReport, original *solver.Placed) ArmSide {
	out := ArmSide{
		Side: r.Side.String(), Car: c.lengths(r.Car),
		AlongStud: c.length(r.AlongStud), AcrossStud: c.length(r.AcrossStud),
		Arm: c.change(r.Length), TieRod: c.change(r.TieRod), Turns: none, Thread: none, Peak: none, PeakMade: none,
		Place: c.places(r, original),
	}
	if face := c.armFace(r.Side); face != nil {
		out.Face = &FaceMove{By: c.lengths(r.Face)}
		for i, axis := range face.Axes(r.Side) {
			out.Face.Axes[i] = components(axis)
		}
	}
	if c.design.Kind.CommonPoints != nil {
		link := c.change(r.DragLink)
		out.DragLink = &link
	}
	if rod := c.doc.TieRod; rod != nil {
		grown := c.length(r.TieRod.Change())
		if rod.ThreadPitch != 0 {
			out.Turns = Number(grown / rod.ThreadPitch)
		}
		if rod.Engagement != 0 {
			out.Thread = Number(rod.Engagement - grown)
		}
	}
	return out
}

func (c *cars) places(r *solver.ArmReport, original *solver.Placed) Places {
	a := &r.Original
	return Places{
		Hole: c.lengths(a.Hole), Foot: c.lengths(a.Foot),
		Inner: c.lengths(innerBall(c.design.Kind, original, r.Side)),
		Wheel: c.lengths(original.Wheel[r.Side].WheelCentre),
		Axis:  components(a.Axis), Stud: components(a.Stud),
	}
}

// innerBall returns where a side's tie rod has its other ball: on the gear or the
// body, or on the other arm where it runs from arm to arm.
func innerBall(kind *solver.Kind, at *solver.Placed, s solver.Side) solver.Vec {
	role := solver.TieRodInnerRole
	if kind.CommonPoints != nil {
		role, s = solver.TieRodOuterRole, 1-s
	}
	return at.Side[s][roleIndex(kind, role)]
}

// roleIndex returns the index of the side point with a role that the kind has.
func roleIndex(kind *solver.Kind, role solver.Role) int {
	return slices.IndexFunc(kind.SidePoints, func(h solver.Hardpoint) bool { return h.Role == role })
}

// length returns a length of mm in the file's units.
func (c *cars) length(mm float64) float64 { return c.doc.Units.FromMillimetres(mm) }

func components(v solver.Vec) [3]float64 { return [3]float64{v.X, v.Y, v.Z} }

func (c *cars) lengths(v solver.Vec) [3]float64 {
	return [3]float64{c.length(v.X), c.length(v.Y), c.length(v.Z)}
}

func (c *cars) change(r solver.RodChange) Lengths {
	return Lengths{c.length(r.Before), c.length(r.After)}
}

package solver

// Placed is where every part of an axle stands in one position, in vehicle axes:
// what a picture of it needs.
type Placed struct {
	// Side are the hardpoints of each side, in the order of Kind.SidePoints, and
	// Common those of neither, in the order of Kind.CommonPoints.
	Side   [2][]Vec
	Common []Vec
	// Gear are the points of a centre link, in the order of [GearPoints].
	Gear []Vec
	// Spin are the wheels' unit spin axes, pointing outboard.
	Spin [2]Vec
	// Wheel says what a sweep says of the same position.
	Wheel [2]Position
}

// Place moves the axle to the given travels of the two wheels, mm from the static
// height, and steering input, mm or radians, and sets out to where its parts then
// stand. It allocates nothing where out has room. It returns a [*ReachError]
// where the linkage cannot be moved there; the other side of an independent suspension
// stands in out all the same.
func (x *Axle) Place(ws *Workspace, travel [2]float64, steer float64, out *Placed) error {
	return x.PlaceSides(ws, BothSides, travel, steer, out)
}

// PlaceSides is [Axle.Place] where no more than the given sides are looked at: of an
// independent suspension the other one stays in out as it was.
func (x *Axle) PlaceSides(ws *Workspace, sides Selection, travel [2]float64, steer float64, out *Placed) error {
	if err := x.checkSteer(steer); err != nil {
		return err
	}
	at := Attitude{
		Heave: (travel[Left] + travel[Right]) / 2,
		Roll:  (travel[Right] - travel[Left]) / 2,
		Steer: steer,
	}
	x.placeGear(steer, out)
	if x.beam != nil {
		return x.placeBeam(ws, at, out)
	}
	var first error
	for _, s := range Sides {
		if !sides.Includes(s) {
			continue
		}
		if err := x.placeCorner(ws, at, s, out); err != nil && first == nil {
			first = err
		}
	}
	return first
}

func (x *Axle) placeCorner(ws *Workspace, at Attitude, s Side, out *Placed) error {
	if err := x.originOfCorner(ws, at, s); err != nil {
		return err
	}
	c, st := x.corners[s], x.static[s]
	p := c.poseOf(&ws.origin, at.travel(s))
	shift, _ := shiftOf(x.balls[s], at.Steer)
	pts := out.Side[s][:0]
	for i := range x.Design().Kind.SidePoints {
		v := st.pts[i]
		switch h := &st.u.points[i]; {
		case h.body == mainBody:
			v = p.at(sub(v, c.wheel))
		case h.Body == GearBody:
			v = axpy(1, shift, v)
		}
		pts = append(pts, s.Mirrored(v))
	}
	out.Side[s] = pts
	c.wheelOf(&p, &ws.wheel)
	x.placeWheel(ws, s, at.travel(s), out)
	return nil
}

// placeWheel sets what out says of the wheel in the workspace.
func (x *Axle) placeWheel(ws *Workspace, s Side, travel float64, out *Placed) {
	out.Spin[s] = s.Mirrored(ws.wheel.spin)
	x.measure(ws, &SweepInput{Ground: true}, s, travel, &out.Wheel[s])
}

// shiftOf returns the displacement of an inner ball, which may be nil: fixed.
func shiftOf(b innerBall, steer float64) (d, rate Vec) {
	if b == nil || steer == 0 {
		return Vec{}, Vec{}
	}
	return b.shift(steer)
}

func (x *Axle) placeBeam(ws *Workspace, at Attitude, out *Placed) error {
	if err := x.originOfBeam(ws, at); err != nil {
		return err
	}
	b, st := x.beam, x.static[0]
	p := b.poseOf(&ws.origin)
	shift, _ := shiftOf(x.drag, at.Steer)
	out.Side[Left], out.Side[Right], out.Common = out.Side[Left][:0], out.Side[Right][:0], out.Common[:0]
	for i, v := range st.pts {
		h := &st.u.points[i]
		switch {
		case h.body == mainBody:
			v = b.at(&p, p.r.turn(sub(v, b.o)))
		case h.body != chassisBody:
			v = b.knucklePoint(&p, h.body-leftBody, v)
		case h.Body == GearBody:
			v = axpy(1, shift, v)
		}
		switch {
		case i >= axleLinks:
			out.Common = append(out.Common, v)
		default:
			s := Side(i / axleSidePoints)
			out.Side[s] = append(out.Side[s], v)
		}
	}
	for _, s := range Sides {
		b.wheelOf(&p, int(s), &ws.wheel)
		x.placeWheel(ws, s, at.travel(s), out)
	}
	return nil
}

// knucklePoint returns the place in V of a point of a knuckle that stands at v in
// the static position.
func (b *beam) knucklePoint(p *axlePose, wheel int, v Vec) Vec {
	k, e := &b.ends[wheel], &p.ends[wheel]
	arm := sub(v, axpy(1, b.o, k.foot))
	return b.at(p, axpy(1, e.foot, p.r.turn(about(k.dir, arm, e.h))))
}

// placeGear sets the points of the gear.
func (x *Axle) placeGear(steer float64, out *Placed) {
	g := &x.gear
	out.Gear = append(out.Gear[:0], g.Points[:g.PointCount()]...)
	if g.Kind != CentreLink || steer == 0 {
		return
	}
	pts := g.points()
	arm := newCrank(pts[pitmanPivot], g.PitmanAxis, pts[pitmanBall])
	pitman := arm.at(constant(steer))
	out.Gear[pitmanBall] = pitman.v
	if g.HasIdler {
		f := newFourBar(g, pts)
		out.Gear[idlerBall] = f.idler.at(f.idlerTurn(pitman)).v
	}
}

package solver

// originOfBeam brings the workspace to the start of a sweep of a solid axle.
func (x *Axle) originOfBeam(ws *Workspace, from Attitude) error {
	l := x.pathLength(from.Steer, from.travel(Left), from.travel(Right))
	ws.origin = state{}
	if l == 0 {
		return nil
	}
	ws.beam = beamPath{b: x.beam, gear: newGearPath(x.drag, 0, from.Steer/l)}
	for _, s := range Sides {
		ws.beam.rate[s] = from.travel(s) / l
	}
	ws.tracer.start(&ws.beam, &ws.origin)
	if end := ws.tracer.advance(l); end != nil {
		return x.reachError(Left, from, end.s/l, x.beam.linkName(end.link))
	}
	ws.origin = ws.tracer.q
	return nil
}

// linkName names constraint i of an axle.
func (b *beam) linkName(i int) string {
	switch {
	case i < len(b.links):
		return b.links[i].name
	case i == 4:
		return "drag link"
	case i == 5:
		return "tie rod"
	}
	return "beam"
}

func (x *Axle) sweepBeam(ws *Workspace, in *SweepInput, out *[2]Curve) error {
	if err := x.originOfBeam(ws, in.From); err != nil {
		return err
	}
	ws.beam = beamPath{
		b: x.beam, gear: newGearPath(x.drag, in.From.Steer, 0),
		from: [2]float64{in.From.travel(Left), in.From.travel(Right)}, rate: in.Motion.rates(),
	}
	for _, s := range Sides {
		out[s].reserve(len(in.Travels), in.rateColumns())
		x.holdJoints(ws, s, in)
	}
	x.prepareRates(ws, in, Left)
	zero := splitAtZero(in.Travels)
	last := x.follow(ws, &ws.beam, in.Travels[zero:], 1, func(i int, t float64) {
		x.measureBeam(ws, in, t, zero+i, out)
	})
	first := x.follow(ws, &ws.beam, in.Travels[:zero], -1, func(i int, t float64) {
		x.measureBeam(ws, in, t, i, out)
	})
	for _, s := range Sides {
		c := &out[s]
		if last.end != nil {
			c.Reach.endBump(last.end, x.beam.linkName(last.end.link))
		}
		if first.end != nil {
			c.Reach.endDroop(first.end, x.beam.linkName(first.end.link))
		}
		c.trim(zero-first.count, zero+last.count)
	}
	return nil
}

// measureBeam sets position i of both curves to where the tracer stands.
func (x *Axle) measureBeam(ws *Workspace, in *SweepInput, travel float64, i int, out *[2]Curve) {
	at := &ws.instant.pose
	x.beam.pose(&ws.tracer.q, at)
	moves := in.Instant && !in.ToeOnly && in.fully(travel)
	known := moves && ws.beam.instant(&ws.tracer, &ws.instant)
	drag := x.dragStands(ws, in)
	for _, s := range Sides {
		p := &out[s].Positions[i]
		if in.ToeOnly {
			*p = Position{Travel: travel, Toe: toeOf(s.Mirrored(x.beam.spinOf(at, int(s))))}
			continue
		}
		x.measureEnd(ws, in, s, drag, travel, p)
		if known {
			x.instantOfEnd(ws, s, &p.Instant)
		} else if moves {
			p.Instant.blank()
		}
	}
	if in.By != nil {
		x.rateBeam(ws, in, i, out)
	}
}

// measureEnd sets p from the wheel at one end of an axle in the pose of the workspace.
func (x *Axle) measureEnd(ws *Workspace, in *SweepInput, s Side, drag dragLink, travel float64, p *Position) {
	at := &ws.instant.pose
	x.beam.wheelOf(at, int(s), &ws.wheel)
	x.measure(ws, in, s, travel, p)
	if in.Joints != nil && in.fully(travel) {
		x.jointsOfBeam(ws, int(s), at, drag, &p.Joints)
	}
}

package solver

// Diagnosis says why a toe curve is not what is wanted, and what would correct it.
type Diagnosis struct {
	Side  Side
	Shape CurveShape
	// Remedies are moves of the outer and the inner ball, up or down, and of the
	// inner ball in or out, which makes the rod longer or shorter: each alone,
	// then height and length together. They are alternatives.
	Remedies []Remedy
	// Inner is where the inner ball would have to be, if HasInner.
	Inner    IdealInner
	HasInner bool
	// Travels are those over which all this holds, mm: those asked for that the
	// axle reaches.
	Travels []float64
}

// Diagnose explains the toe curve of side s over travels against the target toe
// change; a nil target is flat. Both wheels move; travels ascend and contain 0,
// else an [*InputError] is returned. On a solid axle it is the drag link that
// steers a curve and that is diagnosed.
func (x *Axle) Diagnose(ws *Workspace, s Side, travels []float64, target func(travel float64) Angle) (*Diagnosis, error) {
	var out [2]Curve
	if err := x.Sweep(ws, &SweepInput{Travels: travels, Sides: selectionOf(s)}, &out); err != nil {
		return nil, err
	}
	ps := out[s].Positions
	home := homeOf(ps)
	if home < 0 {
		return nil, &InputError{"travel", "must contain 0, from which toe change counts"}
	}
	d := &Diagnosis{Side: s}
	var e []float64
	for i := range ps {
		d.Travels = append(d.Travels, ps[i].Travel)
		e = append(e, float64(ps[i].Toe-ps[home].Toe-wantedAt(target, ps[i].Travel)))
	}
	d.Shape = NewCurveShape(d.Travels, e)
	d.Inner, d.HasInner = x.IdealInner(ws, s, d.Travels, target)
	return d, d.remedy(x, ws, target)
}

// remedy sets the remedies.
func (d *Diagnosis) remedy(x *Axle, ws *Workspace, target func(float64) Angle) error {
	for _, keys := range remedyKeysOf(x.Design().Kind) {
		r := remedySearch{x: x, ws: ws, side: d.Side, travels: d.Travels, target: target}
		for _, key := range keys {
			p, _, err := FindParameter(x.Design(), key)
			if err != nil {
				return err
			}
			m := Change{Parameter: p}
			if p.Sided() {
				m.Sides = selectionOf(d.Side)
			}
			r.moves = append(r.moves, m)
		}
		if found, ok := r.find(); ok {
			d.Remedies = append(d.Remedies, found)
		}
	}
	return nil
}

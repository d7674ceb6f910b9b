package solver

import (
	"errors"
	"math"
	"slices"
)

// lowest returns the height of the lowest point of a wheel: of its plane, r from the
// centre, where e is the unit spin axis.
func lowest(centre, e Vec, r float64) float64 { return centre.Z - r*math.Hypot(e.X, e.Y) }

// lift returns by how much the lowest point of the wheel of side s stands higher in
// the body than in the static position, mm. It returns a [*ReachError] where the
// linkage cannot be moved to the attitude.
func (x *Axle) lift(ws *Workspace, s Side, at Attitude) (float64, error) {
	if x.beam != nil {
		if err := x.originOfBeam(ws, at); err != nil {
			return 0, err
		}
		pose := x.beam.poseOf(&ws.origin)
		x.beam.wheelOf(&pose, int(s), &ws.wheel)
	} else {
		if err := x.originOfCorner(ws, at, s); err != nil {
			return 0, err
		}
		pose := x.corners[s].poseOf(&ws.origin, at.travel(s))
		x.corners[s].wheelOf(&pose, &ws.wheel)
	}
	return lowest(ws.wheel.centre, ws.wheel.spin, x.tyreRadius) - x.low[s], nil
}

const (
	// contactLimit is how near, mm, the contacts come to the travel asked for. The
	// rounding of a pose leaves some 1e-12.
	contactLimit = 1e-10
	// leastContactStep is the step, mm, at which a linkage that goes no further is
	// at its lock. A step leaves of the error what camber takes of the wheel's height
	// by travel, a twentieth on usual cars.
	leastContactStep = 1e-9
)

// SweepAtContact is [Axle.Sweep] with travel counted where the tyres stand: by the
// lowest point of the wheel's plane at the tyre's radius, relative to the body, from
// where it is in the static position. So count the motion, the attitude, the positions'
// Travel, the rates by travel, and Reach, which is that of a wheel that moves. Wheels of an independent suspension move each by
// itself, those of a solid axle are brought to their travels together. It refuses By
// and a car without a tyre radius.
func (x *Axle) SweepAtContact(ws *Workspace, in *SweepInput, out *[2]Curve) error {
	switch {
	case in.By != nil:
		return &InputError{"derivatives", "are not taken by the travel of the contact"}
	case !(x.tyreRadius > 0):
		return &InputError{"tyreRadius", "is not stated: travel at the contact needs it"}
	}
	for s := range out {
		out[s] = Curve{Positions: out[s].Positions[:0]}
	}
	if x.beam != nil {
		q := contactQuest{x: x, ws: ws, in: in, sides: Sides[:]}
		return q.sweep(out)
	}
	for _, s := range Sides {
		if !in.Sides.Includes(s) {
			continue
		}
		q := contactQuest{x: x, ws: ws, in: in, sides: []Side{s}}
		if err := q.sweep(out); err != nil {
			return err
		}
	}
	return nil
}

// contactQuest brings the contacts of the wheels that move together to the travels of
// a sweep.
type contactQuest struct {
	x     *Axle
	ws    *Workspace
	in    *SweepInput
	sides []Side
	at    [2]float64 // travels of the wheel centres, mm
	one   [2]Curve   // of a single position
}

// sweep sets the curves of the quest's sides, from travel 0 outward.
func (q *contactQuest) sweep(out *[2]Curve) error {
	switch lock, err := q.bring(0); {
	case err != nil:
		return err
	case lock != nil:
		return lock
	}
	home, zero := q.at, splitAtZero(q.in.Travels)
	droop := slices.Clone(q.in.Travels[:zero])
	slices.Reverse(droop)
	for i, travels := range [][]float64{droop, q.in.Travels[zero:]} {
		q.at = home
		for _, t := range travels {
			lock, err := q.bring(t)
			if err != nil {
				return err
			}
			if lock != nil {
				if err := q.end(i == 0, lock, out); err != nil {
					return err
				}
				break
			}
			if err := q.measure(t, out); err != nil {
				return err
			}
		}
		for _, s := range q.sides {
			if i == 0 {
				slices.Reverse(out[s].Positions)
			}
		}
	}
	return nil
}

// wanted returns the lift of a wheel that a travel asks for.
func (q *contactQuest) wanted(s Side, travel float64) float64 {
	return q.in.From.travel(s) + q.in.Motion.rates()[s]*travel
}

// attitude returns that of the axle with its wheel centres where they are.
func (q *contactQuest) attitude() Attitude {
	return Attitude{Heave: (q.at[Left] + q.at[Right]) / 2, Roll: (q.at[Right] - q.at[Left]) / 2, Steer: q.in.From.Steer}
}

// bring moves the wheel centres so that the contacts take a travel: by what each lacks,
// or by as much of that as brings them nearer. Where that becomes nothing it returns the
// lock, the wheels just short of it.
func (q *contactQuest) bring(travel float64) (lock *ReachError, err error) {
	var lack [2]float64
	if lock, err = q.lacks(travel, &lack); err != nil || lock != nil {
		return lock, err
	}
	for sizeOf(lack) > contactLimit {
		if lock, err = q.step(travel, &lack); err != nil || lock != nil {
			return lock, err
		}
	}
	return nil, nil
}

func sizeOf(lack [2]float64) float64 { return max(math.Abs(lack[Left]), math.Abs(lack[Right])) }

// step moves the wheel centres by what the contacts lack, halved until the linkage
// follows and they lack less, and sets what they then lack. It returns what ends the
// travel where no step does.
func (q *contactQuest) step(travel float64, lack *[2]float64) (lock *ReachError, err error) {
	from := q.at
	for share := 1.0; share*sizeOf(*lack) >= leastContactStep || share == 1; share /= 2 {
		for _, s := range q.sides {
			q.at[s] = from[s] + share*lack[s]
		}
		now := *lack
		if lock, err = q.lacks(travel, &now); err != nil {
			return nil, err
		}
		if lock == nil && sizeOf(now) < sizeOf(*lack) {
			*lack = now
			return nil, nil
		}
	}
	q.at = from
	if lock == nil {
		if sizeOf(*lack) < leastContactStep {
			*lack = [2]float64{} // as near as rounding allows
			return nil, nil
		}
		lock = &ReachError{Side: q.sides[0], Axle: q.x.beam != nil, Link: leanLink, Travel: travel, Steer: q.in.From.Steer}
	}
	return lock, nil
}

// leanLink is what ends the travel of a contact that goes no further because the wheel
// leans faster than it rises.
const leanLink = "lean of the wheel"

// lacks sets by how much each contact is short of the travel asked for.
func (q *contactQuest) lacks(travel float64, lack *[2]float64) (lock *ReachError, err error) {
	for _, s := range q.sides {
		lift, err := q.x.lift(q.ws, s, q.attitude())
		if errors.As(err, &lock) {
			return lock, nil
		}
		if err != nil {
			return nil, err
		}
		lack[s] = q.wanted(s, travel) - lift
	}
	return nil, nil
}

// measure adds what the sides do where they stand.
func (q *contactQuest) measure(travel float64, out *[2]Curve) error {
	in := *q.in
	in.Travels, in.From, in.Sides = []float64{0}, q.attitude(), BothSides
	if len(q.sides) == 1 {
		in.Sides = [...]Selection{LeftOnly, RightOnly}[q.sides[0]]
	}
	if err := q.x.Sweep(q.ws, &in, &q.one); err != nil {
		return err
	}
	for _, s := range q.sides {
		p := q.one[s].Positions[0]
		p.Travel = travel
		out[s].Positions = append(out[s].Positions, p)
	}
	if in.Instant && !in.ToeOnly {
		return q.rescale(in, out)
	}
	return nil
}

// rescale turns the rates of the positions added last, which are by the travel of the
// wheels' centres, into those by their contacts': each rises with its centre and by what
// camber lowers of the wheel, and on a solid axle both by either centre.
func (q *contactQuest) rescale(in SweepInput, out *[2]Curve) error {
	rises, toes, cambers := [2][2]float64{{1, 0}, {0, 1}}, [2][2]float64{}, [2][2]float64{} // by wheel and by the centre moved
	for _, centre := range q.sides {
		in.Motion = [...]Motion{LeftWheel, RightWheel}[centre]
		if err := q.x.Sweep(q.ws, &in, &q.one); err != nil {
			return err
		}
		for _, s := range q.sides {
			p := &q.one[s].Positions[0]
			toes[s][centre], cambers[s][centre] = p.Instant.ToeRate, p.Instant.CamberRate
			rises[s][centre] += q.x.tyreRadius * math.Sin(float64(p.Camber)) * p.Instant.CamberRate
		}
	}
	asked := q.in.Motion.rates()
	det := rises[0][0]*rises[1][1] - rises[0][1]*rises[1][0]
	centres := [2]float64{
		(asked[0]*rises[1][1] - rises[0][1]*asked[1]) / det,
		(rises[0][0]*asked[1] - asked[0]*rises[1][0]) / det,
	}
	for _, s := range q.sides {
		n := &out[s].Positions[len(out[s].Positions)-1].Instant
		n.ToeRate = toes[s][0]*centres[0] + toes[s][1]*centres[1]
		n.CamberRate = cambers[s][0]*centres[0] + cambers[s][1]*centres[1]
		n.ToeCurvature = nan
	}
	return nil
}

// end sets the reach of the quest's sides at a lock in droop or in bump, from where
// the wheels stand just short of it.
func (q *contactQuest) end(droop bool, lock *ReachError, out *[2]Curve) error {
	at := 0.0
	for _, s := range q.sides {
		lift, err := q.x.lift(q.ws, s, q.attitude())
		if err != nil {
			return err
		}
		if rate := q.in.Motion.rates()[s]; rate != 0 {
			at = math.Abs((lift - q.in.From.travel(s)) / rate)
		}
	}
	for _, s := range q.sides {
		r := &out[s].Reach
		if droop {
			r.Droop, r.DroopEnds, r.DroopLink = at, true, lock.Link
		} else {
			r.Bump, r.BumpEnds, r.BumpLink = at, true, lock.Link
		}
	}
	return nil
}

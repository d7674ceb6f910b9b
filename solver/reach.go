package solver

import "fmt"

// Reach says how far an axle can be moved within a sweep.
type Reach struct {
	// Bump and Droop are the distances to the lock, mm, positive, where Ends is
	// true for that direction; else the sweep reached all it was asked for.
	Bump, Droop             float64
	BumpEnds, DroopEnds     bool
	BumpLink, DroopLink     string // the link that ends the travel
	BumpUnsure, DroopUnsure bool   // the linkage could not be followed, though no lock was found
}

// Whole reports whether every position asked for was reached.
func (r *Reach) Whole() bool { return !r.BumpEnds && !r.DroopEnds }

// Link names the link that ends the travel first.
func (r *Reach) Link() string {
	if r.DroopEnds && (!r.BumpEnds || r.Droop < r.Bump) {
		return r.DroopLink
	}
	return r.BumpLink
}

// ReachError reports a position that a linkage cannot take.
type ReachError struct {
	Side   Side
	Axle   bool    // the whole axle rather than one side
	Link   string  // the link that ends the movement
	Travel float64 // of the wheel, asked for, mm; of an axle of its left one
	Steer  float64 // steering input asked for, mm or radians
	Share  float64 // of the way there that was possible, 0 to 1
	Angle  bool    // Steer is an angle
}

func (e *ReachError) Error() string {
	where := e.Side.String() + " side"
	if e.Axle {
		where = "axle"
	}
	steer := fmt.Sprintf("%.4g mm", e.Steer)
	if e.Angle {
		steer = fmt.Sprintf("%.4g deg", Angle(e.Steer).Degrees())
	}
	asked, less := "steering "+steer+" cannot be reached at static height", "steer less"
	if e.Travel != 0 {
		asked, less = fmt.Sprintf("travel %.4g mm", e.Travel), "ask for less travel"
		if e.Steer != 0 {
			asked, less = asked+" steered "+steer, "ask for less of either"
		}
		asked += " cannot be reached"
	}
	return fmt.Sprintf("solver: %s: %s: %s stands in the way after %.0f %% of it; %s", where, asked, e.Link, 100*e.Share, less)
}

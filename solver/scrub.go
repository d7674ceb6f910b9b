package solver

import "math"

// Scrub returns how far a tyre set at a toe angle is dragged sideways while it
// rolls a distance, in the unit of that distance.
func Scrub(toe Angle, distance float64) float64 { return distance * math.Sin(float64(toe)) }

// Package solver moves a car's front or rear axle: hardpoints, steering gear and
// static settings in, toe and all that goes with it along the wheel's travel out.
// Links are rigid and joints ideal.
//
// # Frames, units and signs
//
// V, the vehicle's frame, is that of ISO 8855: x forward, y left, z up, its origin
// on the ground at the axle's centreline. K is a knuckle's own frame, with V's
// directions in the design position. Every corner is solved as a left one: points
// of the right side pass through a mirror on their way in and out. Lengths are in
// mm and angles in radians, as [Angle].
//
//   - Travel: rise of the wheel centre in V from the static position; bump positive.
//   - Toe: toe-in positive, of each wheel; static toe is included.
//   - Camber: positive with the wheel's top outboard.
//   - Caster: positive with the top of the steering axis rearward.
//   - Kingpin inclination: positive with its top inboard.
//   - Steer angle: positive to the left, of both wheels.
//   - Roll of the body: positive with its left side up; dive with its nose down.
//
// # From a design to a curve
//
// A [Design] is the car as it was measured, of one [Kind]. An [Assembler], made of
// it once, applies a list of [Change] values, each of a [Parameter], in three steps:
// coordinates, parts, setpoints. The last step solves the static position anew, the
// knuckle rigid and wheel-centre height kept: the [Adjuster] takes up camber and
// caster, the tie rod toe. The result is an [Axle], which does not change any more.
// [Axle.Sweep] moves it, in a [Workspace], and fills a [Curve] for each side.
//
// A position is found by following the linkage from its static position, not by
// solving each position for itself: so a curve never jumps to another way of
// assembling the same links. Where the linkage locks, [Reach] says how far it went
// and what stands in the way. An error is of type [*InputError], [*StaticError] or
// [*ReachError].
package solver

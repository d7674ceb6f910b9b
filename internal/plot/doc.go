// Package plot turns numbers into pictures: scales, ticks, curves, contours and
// projected linkages, as SVG path data and places for text. Its functions are pure;
// whoever shows the picture only puts the pieces on the paper.
//
// # Paper
//
// A [Point] is on the paper: x to the right, y downward, in SVG user units (CSS
// pixels). Angles on the paper are in degrees, clockwise as seen, as SVG has them.
//
// # Car
//
// A [Vec] is in vehicle axes, as ISO 8855 has them: x forward, y to the left, z
// up, in mm. A [View] says how the paper lies to the car. The elevation is seen
// from behind, by the driver, so that the left wheel is at the left of the paper;
// the plan below it is seen from above with forward up, so that both wheels stand
// under those of the elevation.
//
// # Speed
//
// Functions named Append add to a buffer and return it, as append does. With a
// buffer that is used again they allocate nothing, so that a drag can redraw every
// curve within a frame of the screen.
//
// # Gaps
//
// A NaN or infinite value is a gap: a curve breaks there, a hit passes over it and
// a contour leaves it open.
package plot

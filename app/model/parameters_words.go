package model

import "strings"

// parameterWords say of each parameter that is no coordinate what changes on the car,
// and which way is up.
var parameterWords = map[string]string{
	"tieRodOuterHeight":    "How far the ball at the steering arm moves along its stud, up positive: a spacer under it, a stud of another length or an arm with another drop. The slope of the curve answers to it first.",
	"tieRodInnerHeight":    "How far the ball at the rack or the link moves, up positive: the rack on other mounts, or a spacer at the ball.",
	"tieRodInnerLateral":   "How far the ball at the rack or the link moves, outboard positive. It changes the length at which the tie rod swings, and so the curve's bend.",
	"steeringArmLength":    "How far the outer ball moves away from the steering axis, level. A longer arm steers slower.",
	"steeringArmOffset":    "How far the outer ball moves square to the arm, outboard positive. It changes how much more the inner wheel steers than the outer one.",
	"lowerBallJointHeight": "How far the lower ball joint moves in the knuckle, up positive: a joint of another length.",
	"upperBallJointHeight": "How far the upper ball joint moves in the knuckle, up positive: a joint of another length.",
	"dragLinkOuterHeight":  "How far the drag link's ball at the steering arm moves, up positive.",
	"dragLinkInnerHeight":  "How far the drag link's ball at the steering gear moves, up positive.",
	"tieRodLength":         "Longer positive. It shows only where static toe is not set again: an alignment takes it back.",
	"dragLinkLength":       "Longer positive. It shows only where static toe is not set again: an alignment takes it back.",
	"rideHeight":           "How far the body sits above where it was measured, up positive. Wheel travel is then counted from there.",
	"toe":                  "The toe of each wheel at ride height, toe-in positive, set at the tie rods.",
	"camber":               "The camber of each wheel at ride height, positive with the top outward, set at the upper joint.",
	"caster":               "The caster of each steering axis at ride height, positive with the top rearward, set at the upper joint.",
	"tyreRadius":           "How much larger the loaded radius of the tyre is: another wheel, or another tyre.",
}

// AboutParameter says what a parameter changes, by its key without a side.
func AboutParameter(key string) string {
	if about, ok := parameterWords[key]; ok {
		return about
	}
	if axis := key[strings.LastIndex(key, ".")+1:]; axis == "x" || axis == "y" || axis == "z" {
		return "This coordinate of the point as measured: x forward, y outboard, z up. It makes another car of it, rather than another part on it."
	}
	return ""
}

package model

import (
	"cmp"
	"strings"
)

// pointWords say of each hardpoint what it is on the car and where the tape or the plumb
// bob goes. The four rods or links of an axle are told once for all.
var pointWords = map[string]string{
	"lowerFrontPivot":  "Middle of the front bushing in which the lower arm turns on the body; a place further along its bolt does as well, if that points at the rear pivot.",
	"lowerRearPivot":   "Middle of the rear bushing in which the lower arm turns on the body; of a tension rod, the middle of its rubber at the body.",
	"lowerBallJoint":   "Centre of the ball that joins lower arm and knuckle, inside its housing: neither the end of the stud nor the grease nipple.",
	"upperFrontPivot":  "Middle of the front bushing in which the upper arm turns on the body; where both share one shaft, any place near the front on its centre line.",
	"upperRearPivot":   "Middle of the rear bushing in which the upper arm turns on the body; where both share one shaft, any place near the rear on its centre line.",
	"upperBallJoint":   "Centre of the ball that joins upper arm and knuckle, inside its housing: neither the end of the stud nor the rivets.",
	"strutTop":         "Centre of the bearing or rubber in which the strut tilts under its tower: on the centre line of the rod, below its nut.",
	"strutLower":       "Any place on the centre line of the strut's tube, as low as the tape reaches: the further from the top, the truer the line.",
	"frontPivot":       "Middle of the front bushing or pin on which the swing arm turns; a place further along its bolt does as well, if that points at the rear pivot.",
	"rearPivot":        "Middle of the rear bushing or pin on which the swing arm turns: of a leading or trailing arm, its other pivot across the car; of a split beam's tension rod, the rod's end at the frame.",
	"kingpinUpper":     "Upper end of the kingpin on its centre line; of an arm with ball joints, the centre of the upper ball.",
	"kingpinLower":     "Lower end of the kingpin on its centre line; of an arm with ball joints, the centre of the lower ball.",
	"tieRodOuter":      "Centre of the ball at the steering arm, where it swings in the rod's end: on the centre line of its stud, above or below the arm by the height of the socket.",
	"tieRodInner":      "Centre of the ball at the rod's inner end, where it swings: on a rack the ball under the bellows, on a centre link the one on the link, of a toe link its bolt at the body.",
	"wheelCentre":      "Where the hub's own line passes the middle of the rim's width: from the hub's face inboard by the wheel's offset (ET), outboard where that is negative.",
	"kingpins.0":       "Upper end of the kingpin on its centre line; of an axle with ball joints, the centre of the upper ball.",
	"kingpins.1":       "Lower end of the kingpin on its centre line; of an axle with ball joints, the centre of the lower ball.",
	"steeringArmBalls": "Centre of the tie rod's ball at the arm of this side, where it swings in its socket.",
	"wheelCentres":     "On the hub's line in the middle of the rim's width: from the hub's face inboard by the wheel's offset (ET), outboard where that is negative.",
	"rods.inner":       "Middle of the bushing or ball at the body's end of this rod, on the line of its bolt; an arm with two bushings counts as two rods.",
	"rods.outer":       "Middle of the bushing or ball at the knuckle's end of this rod; the two rods of one arm end in the same place.",
	"links.inner":      "Middle of the bushing at the body's end of this link, on the line of its bolt; a panhard rod is one of the four links.",
	"links.outer":      "Middle of the bushing at the axle's end of this link, on the line of its bolt.",
	"dragLink.inner":   "Centre of the ball at the steering gear's end of the drag link, where it swings, with the wheels straight ahead.",
	"dragLink.outer":   "Centre of the ball at the other end of the drag link, where it swings on the steering arm of the knuckle that it pulls.",
	"pitmanPivot":      "Any place on the centre line of the steering gear's output shaft, about which the pitman arm turns.",
	"pitmanBall":       "Centre of the ball by which the pitman arm moves the centre link or the drag link, with the wheels straight ahead.",
	"idlerPivot":       "Any place on the line about which the idler arm turns: the middle of its bushing or shaft at the frame.",
	"idlerBall":        "Centre of the ball at which the idler arm carries the centre link, with the wheels straight ahead.",
	"spring.body":      "Middle of the spring's seat on the body, on the spring's own line.",
	"spring.moving":    "Middle of the spring's seat on the part that carries it, on the spring's own line.",
	"damper.body":      "Middle of the bushing or ball at the body's end of the damper.",
	"damper.moving":    "Middle of the bushing or ball at the damper's other end.",
	"armFace.point":    "Any place on the face of the knuckle that the steering arm is bolted to.",
	"armFace.normal":   "The direction square to that face, of any length: 0 -1 0 of a face that looks inboard on the left.",
	"armFace.bolts":    "Centre of the bolt where it passes the face.",
}

// AboutPoint says what a hardpoint is, by its name in any kind of suspension or gear;
// nothing of another name.
func AboutPoint(name string) string {
	if about, ok := pointWords[name]; ok {
		return about
	}
	family, _, _ := strings.Cut(name, ".")
	last := strings.LastIndex(name, ".")
	return cmp.Or(pointWords[family+"."+name[last+1:]], pointWords[name[:max(last, 0)]])
}

package study

import "fmt"

const (
	// coarsestThread is by how many mm a turn of an adjuster may lengthen a rod: two
	// threads of 3 mm, the coarse pitch of M24 (ISO 261), one at each end.
	coarsestThread = 6.0
	// widestCone, in degrees, is well above the half angles of rod ends and ball joints,
	// which are mostly 15 to 30 (common practice).
	widestCone = 45.0
)

// checkRods looks at the tie rod and the drag link for a thread that is engaged less or
// more than it may be, threads to the inch for a pitch, and whole angles for cones.
func checkRods(d *Document) []Finding {
	found := append(checkRod(d, "tieRod", d.TieRod), checkRod(d, "dragLink", d.DragLink)...)
	if d.DragLink != nil && !d.HasDragLink() {
		found = append(found, Finding{"dragLink", Warning, fmt.Sprintf("a %s has no drag link", d.Suspension.Type), "is it the tie rod's?"})
	}
	return found
}

func checkRod(d *Document, key string, rod *TieRod) []Finding {
	if rod == nil {
		return nil
	}
	var found []Finding
	slip := func(path, message, suggestion string) {
		found = append(found, Finding{key + "." + path, Warning, message, suggestion})
	}
	if d.Units.Millimetres(rod.ThreadPitch) > coarsestThread {
		slip("threadPitch", fmt.Sprintf("%g %s by one turn is more than any adjuster's", rod.ThreadPitch, d.Units), "it is 1 divided by the threads to the inch, not their number")
	}
	if e := rod.Engagement; e > 0 && e < rod.MinEngagement {
		slip("engagement", fmt.Sprintf("%g %s is less than the least, %g", e, d.Units, rod.MinEngagement), "measure again, and do not drive it like that")
	}
	if rod.MaxEngagement > 0 {
		if e := rod.Engagement; e > rod.MaxEngagement {
			slip("engagement", fmt.Sprintf("%g %s is more than the most, %g", e, d.Units, rod.MaxEngagement), "measure again where the adjuster bottoms")
		}
		if rod.MinEngagement > rod.MaxEngagement {
			slip("minEngagement", fmt.Sprintf("%g %s is more than the most, %g", rod.MinEngagement, d.Units, rod.MaxEngagement), "are the two swapped?")
		}
	}
	for _, ball := range []struct {
		path string
		*BallJoint
	}{{"innerBall.cone", rod.InnerBall}, {"outerBall.cone", rod.OuterBall}} {
		if ball.BallJoint != nil && ball.Cone > widestCone {
			slip(ball.path, fmt.Sprintf("%g degrees is more than a ball joint leans", ball.Cone), "it is half of the angle from stop to stop")
		}
	}
	return found
}

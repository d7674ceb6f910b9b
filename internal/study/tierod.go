package study

// TieRod is what the adjuster and the ends of a tie rod or drag link allow. It does not
// move the wheel: it turns lengths into turns of the adjuster, and limits of a search
// into numbers. A solid axle's tie rod has a ball on each arm; its inner ball, unless the
// drag link states its own, is the drag link's ball on the gear.
type TieRod struct {
	ThreadPitch   float64    `json:"threadPitch,omitzero" rule:"positive"`      // ThreadPitch is the change of length by one turn of the adjuster.
	Engagement    float64    `json:"engagement,omitzero" rule:"positive"`       // Engagement is the length of thread engaged on the car as measured.
	MinEngagement float64    `json:"minEngagement,omitzero" rule:"notnegative"` // MinEngagement is the least that the maker allows.
	MaxEngagement float64    `json:"maxEngagement,omitzero" rule:"positive"`    // MaxEngagement is where the adjuster bottoms; 0 is nowhere.
	InnerBall     *BallJoint `json:"innerBall,omitzero"`
	OuterBall     *BallJoint `json:"outerBall,omitzero"`
}

// BallJoint is a ball joint's freedom.
type BallJoint struct {
	// Axis is the joint's direction on the left side at which it stands neutral, in the
	// file's own static position: of a rack's inner ball the rod's, else the stud's. Nil is
	// that of the rack or the pitman arm inside, mirrored on the side without the pitman
	// arm, the stud axis of the corner outside, or vertical. A drag link has one of each
	// ball, and so an axis of no side.
	Axis *Vec3 `json:"axis,omitzero"`
	// Cone is the most degrees that the rod may lean off neutral to either side: in line
	// with a rack, else square to the stud.
	Cone float64 `json:"cone" rule:"required,positive"`
	Stud *Stud   `json:"stud,omitzero"` // Stud is the outer ball's; an inner one has none.
}

// Stud is what a ball's stud bends by.
type Stud struct {
	Diameter float64 `json:"diameter" rule:"required,positive"` // Diameter is where it is clamped.
	Height   float64 `json:"height" rule:"required,positive"`   // Height is that of the ball over the face that clamps it.
}

// tieRodProblem refuses a stud of the inner ball, of which nothing is taken.
func (d *Document) tieRodProblem() *problem {
	if d.TieRod != nil && d.TieRod.InnerBall != nil && d.TieRod.InnerBall.Stud != nil {
		return problemf("tieRod.innerBall.stud", "is for the outer ball alone; state it at tieRod.outerBall")
	}
	return nil
}

// OuterBall returns the tie rod's joint on the arm, nil where the study states none.
func (d *Document) OuterBall() *BallJoint { return d.TieRod.outerBall() }

// DragOuterBall returns the drag link's joint on the arm, nil where the study states none.
func (d *Document) DragOuterBall() *BallJoint { return d.DragLink.outerBall() }

// InnerBall returns the joint on the gear, of a solid axle the drag link's, nil where the
// study states none.
func (d *Document) InnerBall() *BallJoint {
	if d.HasDragLink() && d.DragLink != nil && d.DragLink.InnerBall != nil {
		return d.DragLink.InnerBall
	}
	if d.TieRod == nil {
		return nil
	}
	return d.TieRod.InnerBall
}

func (r *TieRod) outerBall() *BallJoint {
	if r == nil {
		return nil
	}
	return r.OuterBall
}

// HasDragLink reports whether the car has one.
func (d *Document) HasDragLink() bool { return d.Suspension.Type == "solid-axle" }

package calls

import (
	"strings"
	"testing"

	"toewright/internal/study"
)

// TestDirectionsOfNoLength: an axis of a stud or a joint that has no direction is refused by its
// key in every call that places the car, and not taken for one that is not stated.
func TestDirectionsOfNoLength(t *testing.T) {
	zero := &study.Vec3{}
	ball := func() *study.BallJoint { return &study.BallJoint{Cone: 20, Axis: zero} }
	for _, tt := range []struct {
		template, key string
		spoil         func(*study.Document)
	}{
		{"double-wishbone-rack", "suspension.left.studAxis", func(d *study.Document) { d.Suspension.Left.StudAxis = zero }},
		{"strut-rack", "tieRod.innerBall.axis", func(d *study.Document) { d.TieRod.InnerBall = ball() }},
		{"swing-arm-rack", "tieRod.outerBall.axis", func(d *study.Document) { d.TieRod.OuterBall = ball() }},
		{"solid-axle-pitman", "dragLink.outerBall.axis", func(d *study.Document) { d.DragLink = &study.TieRod{OuterBall: ball()} }},
		{"solid-axle-rack", "dragLink.innerBall.axis", func(d *study.Document) { d.DragLink = &study.TieRod{InnerBall: ball()} }},
	} {
		for _, name := range []string{Sweep, Compare, Search, Choose, Map} {
			r, d := requestOf(t, name), study.Template{Key: tt.template}.Document()
			tt.spoil(d)
			if _, err := r.Ask(t.Context(), d, nil); err == nil || !strings.HasPrefix(err.Error(), tt.key+": has no direction") {
				t.Errorf("%s: %v, want %s named", name, err, tt.key)
			}
		}
	}
}

func requestOf(t *testing.T, name string) *Request {
	t.Helper()
	for _, c := range Public() {
		if c.Name == name {
			return c.New()
		}
	}
	t.Fatalf("there is no call %s", name)
	return nil
}

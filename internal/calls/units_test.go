package calls

import (
	"context"
	"strings"
	"testing"

	"toewright/internal/study"
)

// TestRefusalsInInches asks every call about a car in inches that cannot be, its ball joints
// swapped: what is said of lengths is in inches.
func TestRefusalsInInches(t *testing.T) {
	d := study.Template{Key: "double-wishbone-centre-link"}.Document()
	p := d.Suspension.Left.Points
	p["upperBallJoint"], p["lowerBallJoint"] = p["lowerBallJoint"], p["upperBallJoint"]
	said := 0
	for _, c := range append(Public(), pageOnly()...) {
		_, err := c.New().Ask(context.Background(), d, nil)
		if err == nil {
			continue // the sheet leaves out what it cannot say
		}
		if strings.Contains(err.Error(), " mm") {
			t.Errorf("%s: %v", c.Name, err)
		}
		if strings.Contains(err.Error(), " in above ") {
			said++
		}
	}
	if said < 5 {
		t.Errorf("%d calls say how far the points are off, want most", said)
	}
}

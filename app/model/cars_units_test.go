package model_test

import (
	"strings"
	"testing"

	"toewright/app/model"
)

// TestErrorsOfCarsInInches swaps the ball joints of a car in inches: the page says how far
// off they are in inches.
func TestErrorsOfCarsInInches(t *testing.T) {
	s := begun(t)["double-wishbone-centre-link"]
	d := s.Document().Clone()
	p := d.Suspension.Left.Points
	p["upperBallJoint"], p["lowerBallJoint"] = p["lowerBallJoint"], p["upperBallJoint"]
	c := model.Solve(d)
	err := c.Err
	if err == nil {
		err = c.List[0].Err
	}
	if err == nil || !strings.Contains(err.Error(), " in above ") || strings.Contains(err.Error(), " mm") {
		t.Errorf("the car is refused with %v", err)
	}
}

package study

import (
	"reflect"
	"testing"
)

func TestCheckTieRod(t *testing.T) {
	found := func(path, message, suggestion string) []Finding {
		return []Finding{{"tieRod." + path, Warning, message, suggestion}}
	}
	tests := []struct {
		name  string
		units Units
		rod   *TieRod
		want  []Finding
	}{
		{"none", Millimetre, nil, nil},
		{"all in order", Millimetre, &TieRod{ThreadPitch: 6, Engagement: 16, MinEngagement: 16, MaxEngagement: 16, InnerBall: &BallJoint{Cone: 45}, OuterBall: &BallJoint{Cone: 22}}, nil},
		{"most is not known", Millimetre, &TieRod{Engagement: 90, MinEngagement: 16}, nil},
		{"engagement is not known", Millimetre, &TieRod{MinEngagement: 16, MaxEngagement: 40}, nil},
		{"threads to the inch", Inch, &TieRod{ThreadPitch: 20}, found("threadPitch", "20 in by one turn is more than any adjuster's", "it is 1 divided by the threads to the inch, not their number")},
		{"pitch in inches", Inch, &TieRod{ThreadPitch: 0.05}, nil},
		{"out too far", Millimetre, &TieRod{Engagement: 12, MinEngagement: 16}, found("engagement", "12 mm is less than the least, 16", "measure again, and do not drive it like that")},
		{"in too far", Inch, &TieRod{Engagement: 1.5, MaxEngagement: 1.25}, found("engagement", "1.5 in is more than the most, 1.25", "measure again where the adjuster bottoms")},
		{"swapped", Millimetre, &TieRod{MinEngagement: 40, MaxEngagement: 16}, found("minEngagement", "40 mm is more than the most, 16", "are the two swapped?")},
		{"whole angle inside", Millimetre, &TieRod{InnerBall: &BallJoint{Cone: 60}}, found("innerBall.cone", "60 degrees is more than a ball joint leans", "it is half of the angle from stop to stop")},
		{"whole angle outside", Millimetre, &TieRod{OuterBall: &BallJoint{Cone: 50}}, found("outerBall.cone", "50 degrees is more than a ball joint leans", "it is half of the angle from stop to stop")},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			d := decode(t, []byte(smallText))
			d.Units, d.TieRod = tt.units, tt.rod
			if got := checkRods(d); !reflect.DeepEqual(got, tt.want) {
				t.Errorf("got  %+v\nwant %+v", got, tt.want)
			}
		})
	}
}

package ui

import (
	"math"
	"testing"
)

func TestPlayGoesThroughTheTravel(t *testing.T) {
	d := openDrawing(t)
	asked := 0
	d.ask = func() { asked++ }
	d.play.start()
	for _, tt := range []struct{ now, want float64 }{
		{10, 0}, {10 + period/4, 60}, {10 + period/2, 0}, {10 + 3*period/4, -60},
	} {
		d.frame(tt.now)
		if got := d.desk.View.Travel[0]; math.Abs(got-tt.want) > 1e-9 {
			t.Errorf("travel after %g s = %g, want %g", tt.now-10, got, tt.want)
		}
	}
	if asked != 4 {
		t.Errorf("%d frames were asked for, want one after each of 4", asked)
	}
	d.down(place(t, d, leftWheel))
	if d.play.on {
		t.Error("the wheels play on while a hand holds one")
	}
}

func TestStepsInPlaceOfMotion(t *testing.T) {
	d := openDrawing(t)
	var seen []float64
	for range 8 {
		d.play.step(d.desk)
		seen = append(seen, math.Round(d.desk.View.Travel[0]))
	}
	for i, want := range []float64{42, 60, 42, 0, -42, -60, -42, 0} {
		if seen[i]+0 != want+0 {
			t.Errorf("travels of the steps = %v, want full bump, back, full droop and back", seen)
			break
		}
	}
}

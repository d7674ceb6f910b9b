package engine

import (
	"context"
	"math"
	"testing"
)

const mapped = `"search": {"variables": [{"parameter": "tieRodOuterHeight", "min": -20, "max": 0}, {"parameter": "tieRodInnerHeight", "min": -10, "max": 10}],
  "limits": [{"result": "tieRodLength", "max": 330}, {"result": "outerBallAngle", "max": 20}]},`

// TestMapRoomOfTheBaseCar compares the cell of the base car with what is said of the car
// by itself.
func TestMapRoomOfTheBaseCar(t *testing.T) {
	const tolerance = 1e-9 // mm or deg: the same sums, in another order
	d := document(t, mapped)
	room, err := MapRoom(context.Background(), d, MapOptions{Columns: new(3), Rows: new(3)})
	if err != nil {
		t.Fatal(err)
	}
	standing, err := Standing(context.Background(), d, StandingOptions{})
	if err != nil {
		t.Fatal(err)
	}
	if len(room) != 2*9 {
		t.Fatalf("%d numbers, want 2 limits of 9 cells", len(room))
	}
	for i, l := range standing.Limits {
		const base = 1*3 + 2 // the middle row's last column
		if got, want := room[i*9+base], float64(l.Max-l.Value); !(math.Abs(got-want) <= tolerance) {
			t.Errorf("%s has room %g, want %g", l.Name, got, want)
		}
	}
}

func TestMapRoomIsCancelled(t *testing.T) {
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	if _, err := MapRoom(ctx, document(t, mapped), MapOptions{}); err != context.Canceled {
		t.Errorf("cancelled room gives %v, want %v", err, context.Canceled)
	}
}

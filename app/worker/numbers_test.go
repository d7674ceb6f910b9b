package worker

import (
	"math"
	"slices"
	"testing"

	"toewright/internal/calls"
	"toewright/internal/engine"
	"toewright/internal/study"
	"toewright/solver"
	"toewright/wasm"
)

func TestNumbersComeBackAsTheyWent(t *testing.T) {
	want := []float64{0, -1.5, math.Inf(1), math.SmallestNonzeroFloat64, 1e300}
	got, err := Numbers(pack(want))
	if err != nil || !slices.Equal(got, want) {
		t.Errorf("%v came back as %v, %v", want, got, err)
	}
	hole, err := Numbers(pack([]float64{math.NaN()}))
	if err != nil || len(hole) != 1 || !math.IsNaN(hole[0]) {
		t.Errorf("a gap came back as %v, %v", hole, err)
	}
}

func TestNumbersCutOff(t *testing.T) {
	if _, err := Numbers(pack([]float64{1, 2})[:12]); err == nil {
		t.Error("a number cut in half is no error")
	}
}

// TestRowsMakeTheMap has three workers fill the rows of a map and compares them with the map
// that the command draws.
func TestRowsMakeTheMap(t *testing.T) {
	team := Team{wasm.NewLocalPool(3, Handlers())}
	d, o := study.Template{Key: "double-wishbone-rack"}.Document(), engine.MapOptions{X: "tieRodOuterHeight", Y: "tieRodInnerHeight", Columns: new(5), Rows: new(7)}
	raw, err := team.Call(t.Context(), calls.MapCells, d, o, nil)
	if err != nil {
		t.Fatal(err)
	}
	joined, err := Numbers(raw)
	if err != nil {
		t.Fatal(err)
	}
	whole, err := engine.Map(t.Context(), d, o)
	if err != nil {
		t.Fatal(err)
	}
	if len(joined) != 35 {
		t.Fatalf("%d cells, want 35", len(joined))
	}
	for i, v := range joined {
		if got, want := solver.Angle(v).Degrees(), float64(whole.Cells[i/5][i%5]); got != want {
			t.Errorf("cell %d = %g deg, want %g", i, got, want)
		}
	}
}

package optimize_test

import (
	"context"
	"math"
	"slices"
	"testing"

	"toewright/optimize"
	"toewright/solver"
)

func freeOf(t testing.TB, a *solver.Assembler, key string, lo, hi float64) optimize.Free {
	t.Helper()
	p, sel, err := solver.FindParameter(a.Design(), key)
	if err != nil {
		t.Fatal(err)
	}
	return optimize.Free{Parameter: p, Sides: sel, Min: lo, Max: hi}
}

func textbookJudge(t testing.TB) optimize.Judge {
	t.Helper()
	travels, err := solver.Grid(50, 50, 10)
	if err != nil {
		t.Fatal(err)
	}
	return optimize.Judge{Base: textbook(t), Hold: solver.HoldAll, Travels: travels, Sides: solver.LeftOnly}
}

// TestMapShowsOneVariableOptima: on the textbook's linkage the best outer height
// alone is +1.9701 mm with 0.001974 deg rms, the best inner height alone
// -2.0789 mm with 0.005248 deg, from 0.083455 deg (recomputed with scipy).
func TestMapShowsOneVariableOptima(t *testing.T) {
	j := textbookJudge(t)
	m := optimize.ParameterMap{
		Judge:   j,
		X:       freeOf(t, j.Base, "tieRodOuterHeight", 0, 2*1.9701),
		Y:       freeOf(t, j.Base, "tieRodInnerHeight", -2*2.0789, 0),
		Columns: 3, Rows: 3,
	}
	cells, err := m.Fill(context.Background(), optimize.Span{End: m.Rows}, optimize.Parallel{})
	if err != nil {
		t.Fatal(err)
	}
	for _, tt := range []struct {
		name     string
		col, row int
		want     float64
	}{
		{"as it is", 0, 2, 0.083455},
		{"outer height", 1, 2, 0.001974},
		{"inner height", 0, 1, 0.005248},
	} {
		if got := cells[tt.row*m.Columns+tt.col].RMS.Degrees(); !(math.Abs(got-tt.want) <= 1e-6) {
			t.Errorf("%s: %.6f deg, want %.6f", tt.name, got, tt.want)
		}
	}
	part, err := m.Fill(context.Background(), optimize.Span{First: 1, End: 3}, optimize.Parallel{})
	if err != nil {
		t.Fatal(err)
	}
	if !slices.Equal(part, cells[m.Columns:]) {
		t.Error("rows filled by themselves differ from the whole map's")
	}
}

func TestMapRefuses(t *testing.T) {
	j := textbookJudge(t)
	good := optimize.ParameterMap{Judge: j, X: freeOf(t, j.Base, "caster", 0.1, 0.2), Y: freeOf(t, j.Base, "tieRodInnerHeight", -5, 5), Columns: 4, Rows: 4}
	for _, tt := range []struct {
		name  string
		spoil func(*optimize.ParameterMap)
	}{
		{"one column", func(m *optimize.ParameterMap) { m.Columns = 1 }},
		{"huge", func(m *optimize.ParameterMap) { m.Rows = 1 << 20 }},
		{"same axis twice", func(m *optimize.ParameterMap) { m.Y = m.X }},
		{"bounds turned round", func(m *optimize.ParameterMap) { m.X.Min, m.X.Max = m.X.Max, m.X.Min }},
		{"bounds no number", func(m *optimize.ParameterMap) { m.X.Max = math.NaN() }},
		{"no travel 0", func(m *optimize.ParameterMap) { m.Travels = []float64{1, 2} }},
	} {
		m := good
		tt.spoil(&m)
		if _, err := m.Fill(context.Background(), optimize.Span{End: 1}, optimize.Parallel{}); err == nil {
			t.Errorf("%s: accepted", tt.name)
		}
	}
}

package nlp

import (
	"context"
	"math"
	"testing"
)

// TestUnitBoxDerivatives checks the chain rule from unit variables.
func TestUnitBoxDerivatives(t *testing.T) {
	m := withLimits(rosenbrock(), 1, disc(1))
	box := newBox(m, []Variable{{"x", -2, 3}, {"y", 10, 10.5}})
	unit := functionModel{m.Size(), func(u []float64, v *Values) bool {
		pt := &point{u: u, values: *v}
		return box.evaluate(pt)
	}}
	checkJacobians(t, unit, []float64{0.3, 0.6}, []float64{1, 1})
}

func TestUnitBoxRejects(t *testing.T) {
	poison := func(put func(v *Values)) Model {
		inner := withLimits(rosenbrock(), 1, disc(1))
		return functionModel{inner.Size(), func(x []float64, v *Values) bool {
			inner.Evaluate(x, v)
			put(v)
			return true
		}}
	}
	tests := []struct {
		name string
		put  func(v *Values)
		want bool
	}{
		{"finite", func(*Values) {}, true},
		{"residual NaN", func(v *Values) { v.R[1] = math.NaN() }, false},
		{"residual infinite", func(v *Values) { v.R[0] = math.Inf(-1) }, false},
		{"limit NaN", func(v *Values) { v.G[0] = math.NaN() }, false},
		{"derivative NaN", func(v *Values) { v.JR.Set(1, 1, math.NaN()) }, false},
		{"limit's derivative infinite", func(v *Values) { v.JG.Set(0, 0, math.Inf(1)) }, false},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			m := poison(tt.put)
			box := newBox(m, square(2, -1, 1))
			if got := box.evaluate(newPoint(m.Size())); got != tt.want || box.count != 1 {
				t.Errorf("evaluate() = %t after %d evaluations, want %t after 1", got, box.count, tt.want)
			}
		})
	}
}

func TestUnitBoxStopped(t *testing.T) {
	cancelled, cancel := context.WithCancel(context.Background())
	cancel()
	tests := []struct {
		name  string
		ctx   context.Context
		count int
		want  Status
	}{
		{"goes on", context.Background(), 9, NotRun},
		{"budget used", context.Background(), 10, EvaluationLimit},
		{"cancelled", cancelled, 0, Cancelled},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			b := &unitBox{ctx: tt.ctx, count: tt.count, budget: 10}
			if got := b.stopped(); got != tt.want {
				t.Errorf("stopped() = %v, want %v", got, tt.want)
			}
		})
	}
}

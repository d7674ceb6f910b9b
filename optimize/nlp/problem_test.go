package nlp

import (
	"context"
	"errors"
	"math"
	"strings"
	"testing"
)

func TestRunErrors(t *testing.T) {
	model, ok := rosenbrock(), square(2, -2, 2)
	tests := []struct {
		name string
		p    Problem
		part string // of the message
	}{
		{"no model", Problem{Variables: ok}, "no model"},
		{"no residuals", Problem{Model: functionModel{size: Size{Variables: 2}}, Variables: ok}, "0 residuals"},
		{"number of variables", Problem{Model: model, Variables: ok[:1]}, "1 variables for a model of 2"},
		{"empty range", Problem{Model: model, Variables: []Variable{ok[0], {"rack height", 3, 3}}}, "variable 1 (rack height) has range 3 to 3"},
		{"NaN range", Problem{Model: model, Variables: []Variable{ok[0], {"b", math.NaN(), 3}}}, "NaN"},
		{"start", Problem{Model: model, Variables: ok, Start: []float64{1}}, "start has 1 values, want 2"},
		{"objective", Problem{Model: model, Variables: ok, Objective: Objective{Weights: []float64{1}}}, "1 weights for 2 residuals"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			_, err := Run(context.Background(), tt.p, nil)
			var want *ProblemError
			if !errors.As(err, &want) || !strings.Contains(err.Error(), tt.part) {
				t.Errorf("Run() error = %v, want a *ProblemError with %q", err, tt.part)
			}
		})
	}
}

func TestUnitStart(t *testing.T) {
	variables := []Variable{{"a", 0, 10}, {"b", -1, 1}}
	tests := []struct {
		name  string
		start []float64
		want  []float64
	}{
		{"none is the middle", nil, []float64{0.5, 0.5}},
		{"inside", []float64{2, 0.5}, []float64{0.2, 0.75}},
		{"moved into the range", []float64{-2, 5}, []float64{0, 1}},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			p := Problem{Variables: variables, Start: tt.start}
			if got := p.unitStart(); !nearAll(got, tt.want, 1e-15) {
				t.Errorf("unitStart() = %v, want %v", got, tt.want)
			}
		})
	}
}

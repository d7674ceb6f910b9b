package strictjson

import (
	"math"
	"testing"
)

func TestUnbindErrors(t *testing.T) {
	tests := []struct {
		name string
		car  car
		want string
	}{
		{"NaN in a list", car{Point: [3]float64{0, math.NaN(), 0}}, "point.1: NaN is not a number that can be stored"},
		{"infinity in a map", car{Changes: map[string]float64{"a": math.Inf(1)}}, "changes.a: +Inf is not a number that can be stored"},
		{"below a pointer", car{Wheel: &wheel{Toe: math.Inf(-1)}}, "wheel.toe: -Inf is not a number that can be stored"},
		{"own form", car{Code: -1}, "code: negative code"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			_, err := Unbind(tt.car, "")
			if err == nil || err.Error() != tt.want {
				t.Errorf("Unbind = %v, want %s", err, tt.want)
			}
		})
	}
}

package engine

import (
	"encoding/json"
	"math"
	"testing"
)

func TestNumberJSON(t *testing.T) {
	tests := []struct {
		number Number
		text   string
	}{
		{1.5, "1.5"}, {0, "0"}, {-1e-9, "-1e-09"}, {0.1, "0.1"},
		{none, "null"}, {Number(math.Inf(1)), "null"}, {Number(math.Inf(-1)), "null"},
	}
	for _, tt := range tests {
		got, err := json.Marshal(tt.number)
		if err != nil || string(got) != tt.text {
			t.Errorf("Marshal(%g) = %s, %v, want %s", float64(tt.number), got, err, tt.text)
		}
		var back Number
		if err := json.Unmarshal(got, &back); err != nil {
			t.Fatal(err)
		}
		if back.Valid() != tt.number.Valid() || tt.number.Valid() && back != tt.number {
			t.Errorf("Unmarshal(%s) = %g, want %g", got, float64(back), float64(tt.number))
		}
	}
	var n Number
	if err := json.Unmarshal([]byte(`"1"`), &n); err == nil {
		t.Errorf("Unmarshal of a text gave %g", float64(n))
	}
}

package model_test

import (
	"testing"

	"toewright/app/model"
	"toewright/internal/study"
	"toewright/solver"
)

// TestEveryParameterIsExplained goes through all that can be changed on any car.
func TestEveryParameterIsExplained(t *testing.T) {
	for _, template := range study.Templates() {
		for _, p := range solver.Parameters(model.Open(template.Document()).Cars().Design) {
			if len(model.AboutParameter(p.Key)) < 20 {
				t.Errorf("%s: nothing is said of %s", template.Key, p.Key)
			}
		}
	}
}

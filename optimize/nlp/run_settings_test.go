package nlp

import "testing"

func TestSettingsDefaults(t *testing.T) {
	tests := []struct {
		name      string
		s         *Settings
		variables int
		want      Settings // Progress aside
	}{
		{"nil, few variables", nil, 3, Settings{Restarts: 24, Evaluations: 12_000, Iterations: 100}},
		{"zero, more variables", &Settings{}, 5, Settings{Restarts: 40, Evaluations: 20_000, Iterations: 100}},
		{"many variables", nil, 30, Settings{Restarts: 96, Evaluations: 48_000, Iterations: 100}},
		{"own", &Settings{Seed: 9, Restarts: 2, Evaluations: 7, Iterations: 5}, 3, Settings{Seed: 9, Restarts: 2, Evaluations: 7, Iterations: 5}},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			got := tt.s.WithDefaults(tt.variables)
			if got.Progress == nil {
				t.Error("Progress = nil, want a function")
			}
			if got.Seed != tt.want.Seed || got.Restarts != tt.want.Restarts ||
				got.Evaluations != tt.want.Evaluations || got.Iterations != tt.want.Iterations {
				t.Errorf("withDefaults(%d) = %+v, want %+v", tt.variables, got, tt.want)
			}
		})
	}
}

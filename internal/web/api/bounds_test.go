package api

import (
	"fmt"
	"net/http"
	"strings"
	"testing"
)

// TestBoundsOfWork: a study that asks for more work than its bytes show is refused before
// it begins, by the key that asks for it.
func TestBoundsOfWork(t *testing.T) {
	var cars, runs, values []string
	for i := range 4000 {
		cars = append(cars, fmt.Sprintf(`{"name": "%d", "changes": {"tieRodOuterHeight": -%d}}`, i, i%20))
	}
	for i := range mostReadings/2 + 1 {
		values = append(values, fmt.Sprintf("[%d, 0.%d]", i%81-40, i%10))
	}
	run := `{"side": "left", "base": 300, "values": [` + strings.Join(values, ",") + `]}`
	for range mostRuns + 1 {
		runs = append(runs, `{"side": "left", "base": 300, "values": [[0, 0], [10, 0.1]]}`)
	}
	with := func(key, list string) string {
		return strings.Replace(saloon, `"travel":`, `"`+key+`": [`+list+`], "travel":`, 1)
	}
	tests := []struct{ name, call, study, key string }{
		{"candidates", "sweep", strings.NewReplacer(`"step": 10`, `"step": 0.5`, `{"name": "low ball", "changes": {"tieRodOuterHeight": -8}}`, strings.Join(cars, ",")).Replace(saloon), "candidates"},
		{"readings", "fit", with("readings", run+","+run), "readings"},
		{"runs", "fit", with("readings", strings.Join(runs, ",")), "readings"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			r := post(t, New(Config{}), tt.call, tt.study)
			if f := readFault(t, r); r.StatusCode != http.StatusRequestEntityTooLarge || f.Key != tt.key {
				t.Errorf("%s = %d %q %q, want 413 and %s", tt.call, r.StatusCode, f.Key, f.Message, tt.key)
			}
		})
	}
}

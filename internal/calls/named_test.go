package calls

import (
	"strings"
	"testing"

	"toewright/internal/study"
)

// TestNamesOfNothing gives each option of each call that takes a name one that nothing has: the
// refusal says by which option it came.
func TestNamesOfNothing(t *testing.T) {
	tried := 0
	for _, c := range Public() {
		for i := range c.New().Options {
			d, r := study.Template{Key: "double-wishbone-rack"}.Document(), c.New()
			o := r.Options[i]
			if o.Kind != Text || o.Name == "date" {
				continue
			}
			d.Series = []study.MeasuredCar{{Car: "1", Readings: d.Readings}}
			tried++
			if err := o.Set("nobody"); err != nil {
				t.Fatal(err)
			}
			want := o.Name
			if want == "target-of" {
				want = "search.targetOf" // in whose place it stands
			}
			if _, err := r.Ask(t.Context(), d, nil); err == nil || !strings.HasPrefix(err.Error(), want+": ") || !strings.Contains(err.Error(), "nobody") {
				t.Errorf("%s --%s nobody: %v, want it named", c.Name, o.Name, err)
			}
		}
	}
	if tried < 15 {
		t.Errorf("%d options were tried, want 15", tried)
	}
}

// TestKeysThatNameNothing does so with the study's own keys that name a candidate, in each call
// that goes by them.
func TestKeysThatNameNothing(t *testing.T) {
	for key, spoil := range map[string]func(*study.Document){
		"yield.candidate":   func(d *study.Document) { d.Yield.Candidate = "nobody" },
		"display.yardstick": func(d *study.Document) { d.Display = &study.Display{Yardstick: "nobody"} },
		"search.targetOf":   func(d *study.Document) { d.Search.TargetOf = "nobody" },
	} {
		refused := 0
		for _, c := range Public() {
			d := study.Template{Key: "double-wishbone-rack"}.Document()
			d.Series = []study.MeasuredCar{{Car: "1", Readings: d.Readings}}
			spoil(d)
			if _, err := c.New().Ask(t.Context(), d, nil); err != nil && strings.Contains(err.Error(), "nobody") {
				if refused++; !strings.HasPrefix(err.Error(), key+": ") {
					t.Errorf("%s: %v, want %s named", c.Name, err, key)
				}
			}
		}
		if refused < 2 {
			t.Errorf("%s of a car that there is not: refused by %d calls, want 2 or more", key, refused)
		}
	}
}

// TestMapsBounds: bounds without room are refused by the option, in the parameter's own unit.
func TestMapsBounds(t *testing.T) {
	for _, tt := range []struct {
		template, key string
		low, high     string
	}{
		{"double-wishbone-rack", "caster", "5", "2"},
		{"double-wishbone-centre-link", "tieRodOuterHeight", "0.5", "0.25"},
		{"strut-rack", "camber", "-1", "-1"},
	} {
		for _, axis := range []string{"x", "y"} {
			r := mapRequest(t, map[string]string{axis: tt.key, axis + "-min": tt.low, axis + "-max": tt.high})
			_, err := r.Ask(t.Context(), study.Template{Key: tt.template}.Document(), nil)
			want := axis + "-min: " + tt.low + " is not below " + axis + "-max, " + tt.high + ", of " + tt.key
			if err == nil || err.Error() != want {
				t.Errorf("%s: %v, want %s", tt.template, err, want)
			}
		}
	}
}

func mapRequest(t *testing.T, options map[string]string) *Request {
	t.Helper()
	for _, c := range Public() {
		if c.Name != Map {
			continue
		}
		r := c.New()
		for _, o := range r.Options {
			if v, ok := options[o.Name]; ok {
				if err := o.Set(v); err != nil {
					t.Fatal(err)
				}
			}
		}
		return r
	}
	t.Fatal("there is no map")
	return nil
}

// TestTwinNames: where two candidates have one name, each option that takes a name refuses it and
// says which to rename: the part drawn or judged would be either.
func TestTwinNames(t *testing.T) {
	tried := 0
	for _, c := range Public() {
		for i := range c.New().Options {
			d, r := study.Template{Key: "double-wishbone-rack"}.Document(), c.New()
			o := r.Options[i]
			if !o.OfCar {
				continue
			}
			d.Series = []study.MeasuredCar{{Car: "1", Readings: d.Readings}}
			d.Candidates[2].Name = d.Candidates[1].Name
			tried++
			if err := o.Set(d.Candidates[1].Name); err != nil {
				t.Fatal(err)
			}
			if _, err := r.Ask(t.Context(), d, nil); err == nil || !strings.Contains(err.Error(), "two are called") || !strings.Contains(err.Error(), "candidates.2") {
				t.Errorf("%s --%s of two cars: %v, want it refused", c.Name, o.Name, err)
			}
			r = c.New()
			if err := r.Options[i].Set(d.Candidates[0].Name); err != nil {
				t.Fatal(err)
			}
			if _, err := r.Ask(t.Context(), d, nil); err != nil && strings.Contains(err.Error(), "two are called") {
				t.Errorf("%s --%s of another car: %v", c.Name, o.Name, err)
			}
		}
	}
	if tried < 12 {
		t.Errorf("%d options were tried, want 12", tried)
	}
}

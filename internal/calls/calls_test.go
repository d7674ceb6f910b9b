package calls

import (
	"encoding/json"
	"reflect"
	"regexp"
	"slices"
	"strings"
	"testing"

	"toewright/internal/engine"
	"toewright/internal/study"
)

// all returns every call.
func all() []Call { return append(Public(), pageOnly()...) }

// TestTable: every call has a name of its own, a line that says what it does, and
// requests that share nothing.
func TestTable(t *testing.T) {
	seen := map[string]bool{}
	for _, c := range all() {
		if !regexp.MustCompile(`^[a-z]+(-[a-z]+)*$`).MatchString(c.Name) || seen[c.Name] {
			t.Errorf("name %q is no word, or is there twice", c.Name)
		}
		seen[c.Name] = true
		if c.Summary == "" || strings.HasSuffix(c.Summary, ".") || c.Result == nil {
			t.Errorf("%s: summary %q, result %v", c.Name, c.Summary, c.Result)
		}
		if a, b := c.New(), c.New(); a.Values == b.Values || !reflect.ValueOf(a.Values).Elem().IsZero() {
			t.Errorf("%s: requests share their options, or begin with some", c.Name)
		}
	}
}

// sample is a value that an option takes.
func sample(o Option) string {
	switch o.Kind {
	case Word:
		return o.Words[len(o.Words)-1]
	case Text:
		return "low ball"
	}
	return "3"
}

// TestEveryOption: each option of each call says what it is for, is set by its own name
// alone, leaves its mark in what goes to the engine, and refuses nothing at all and what it
// cannot read, in our words.
func TestEveryOption(t *testing.T) {
	for _, c := range all() {
		for i := range c.New().Options {
			r := c.New()
			o := r.Options[i]
			twins := slices.IndexFunc(r.Options[:i], func(p Option) bool { return p.Name == o.Name })
			if o.Usage == "" || strings.HasSuffix(o.Usage, ".") || strings.Count(o.Usage, "`")%2 != 0 || strings.Contains(o.Description(), "`") || twins >= 0 {
				t.Errorf("%s --%s: usage %q, twin %d", c.Name, o.Name, o.Usage, twins)
			}
			if (o.Kind == Word) != (len(o.Words) > 0) || o.OfCar && o.Kind != Text {
				t.Errorf("%s --%s: a %s with words %q, of a car %t", c.Name, o.Name, o.Kind, o.Words, o.OfCar)
			}
			wrong := []string{""}
			switch o.Kind {
			case Text:
			case Number:
				wrong = append(wrong, "no such thing", "NaN", "inf", "-Inf", "1e400", "1,5", "3mm")
			default:
				wrong = append(wrong, "no such thing", "1.5", "1e3", "99999999999999999999")
			}
			for _, text := range wrong {
				if err := o.Set(text); err == nil || strings.Contains(err.Error(), "strconv") || strings.Contains(err.Error(), "pars") {
					t.Errorf("%s --%s takes %q: %v", c.Name, o.Name, text, err)
				}
			}
			if err := o.Set(sample(o)); err != nil {
				t.Errorf("%s --%s %s: %v", c.Name, o.Name, sample(o), err)
			}
			plain, _ := json.Marshal(c.New().Values)
			set, err := json.Marshal(r.Values)
			if err != nil || string(set) == string(plain) {
				t.Errorf("%s --%s leaves no mark: %s, %v", c.Name, o.Name, set, err)
			}
		}
	}
}

// set sets options of a call by their names.
func set(t *testing.T, name string, options map[string]string) (any, error) {
	t.Helper()
	i := slices.IndexFunc(all(), func(c Call) bool { return c.Name == name })
	r := all()[i].New()
	for key, value := range options {
		at := slices.IndexFunc(r.Options, func(o Option) bool { return o.Name == key })
		if err := r.Options[at].Set(value); err != nil {
			return nil, err
		}
	}
	return r.Values, nil
}

func TestOptionsOfASweep(t *testing.T) {
	got, err := set(t, Sweep, map[string]string{"candidate": "low ball", "motion": "roll", "steer": "-3.5", "heave": "10", "roll": "1"})
	want := &engine.SweepOptions{Candidate: "low ball", Motion: "roll", Attitude: engine.Attitude{Steer: -3.5, Heave: 10, Roll: 1}}
	if err != nil || !reflect.DeepEqual(got, want) {
		t.Errorf("options = %+v, %v, want %+v", got, err, want)
	}
}

// TestZeroIsGiven: a seed of 0 is one, not none.
func TestZeroIsGiven(t *testing.T) {
	got, err := set(t, Search, map[string]string{"seed": "0"})
	if err != nil || got.(*engine.SearchOptions).Seed == nil || *got.(*engine.SearchOptions).Seed != 0 {
		t.Errorf("options = %+v, %v, want a seed of 0", got, err)
	}
}

func TestOptionsRefuse(t *testing.T) {
	for _, tt := range []struct{ name, option, value, part string }{
		{"a word that is none", "minimise", "mean", `"mean" is none of rms, peak`},
		{"a seed that is no whole number", "seed", "1.5", `"1.5" is no whole number`},
		{"a slope that is no number", "target-slope", "steep", `"steep" is no number`},
	} {
		t.Run(tt.name, func(t *testing.T) {
			if _, err := set(t, Search, map[string]string{tt.option: tt.value}); err == nil || err.Error() != tt.part {
				t.Errorf("error %v, want %q", err, tt.part)
			}
		})
	}
}

// TestWhoReports: a call whose options have somebody to report to reports to whom it is
// asked by.
func TestWhoReports(t *testing.T) {
	template := study.Template{Key: "double-wishbone-rack"}
	for _, c := range Public() {
		r := c.New()
		field := reflect.ValueOf(r.Values).Elem().FieldByName("Progress")
		if !field.IsValid() {
			continue
		}
		_, _ = r.Ask(t.Context(), cancelledEarly(template), func(engine.Progress) {})
		if field.IsNil() {
			t.Errorf("%s: its options have Progress, which nobody sets", c.Name)
		}
	}
}

// cancelledEarly returns a study that every call is done with at once: it has no car.
func cancelledEarly(template study.Template) *study.Document {
	d := template.Document()
	d.Suspension = study.Suspension{}
	return d
}

package api

import (
	"cmp"
	"encoding/json"
	"io"
	"net/http"
	"strings"
	"testing"

	"toewright/internal/calls"
	"toewright/internal/study"
)

// naturalZero are the options that are 0 where they are not given.
var naturalZero = map[string]bool{"steer": true, "heave": true, "roll": true}

// beside is what an option does nothing without.
var beside = map[string]string{"ackermann": "aim=ackermann", "speed": "distance=100", "y-min": "x-min=-9", "y-max": "y-min=-9"}

// besideIn is the same of one call.
var besideIn = map[string]string{"drawing step": "as=svg", "report base": "form=card"}

// fullStudy has something for each option to stand in place of, and nothing of it is 0.
func fullStudy(t *testing.T) string {
	t.Helper()
	d := study.Template{Key: "double-wishbone-rack"}.Document()
	d.Vehicle.CorneringStiffness = 900
	d.Yield.Cars, d.Yield.Seed, d.Search.Seed = 200, 7, 7
	d.Search.Limits, d.Search.Target = nil, [][2]float64{{-50, 0.3}, {0, 0}, {50, 0.2}}
	d.Series = []study.MeasuredCar{{Car: "1", Readings: d.Readings}}
	d.Measured = &study.Measured{}
	for name, at := range d.Suspension.Left.Points {
		d.Measured.Heights = append(d.Measured.Heights, study.Plumbed{Of: "left." + name, Value: at[2]})
	}
	text, err := study.Encode(d)
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}

// TestZeroOfEveryOption: 0 is a value, never what stands for an option that is not
// given: it is answered for, or refused by its name.
func TestZeroOfEveryOption(t *testing.T) {
	body, h := fullStudy(t), New(Config{})
	for _, c := range calls.Public() {
		plain := map[string]string{}
		for _, f := range c.New().Options {
			if f.Kind != calls.Whole && f.Kind != calls.Number {
				continue
			}
			with := cmp.Or(besideIn[c.Name+" "+f.Name], beside[f.Name])
			if plain[with] == "" {
				status, text := reply(t, h, c.Name+"?"+with, body)
				if plain[with] = text; status != http.StatusOK {
					t.Fatalf("%s?%s: %d %s", c.Name, with, status, text)
				}
			}
			status, zero := reply(t, h, c.Name+"?"+with+"&"+f.Name+"=0", body)
			switch {
			case status == http.StatusBadRequest || status == http.StatusUnprocessableEntity:
				if !strings.Contains(zero, f.Name) || naturalZero[f.Name] {
					t.Errorf("%s, %s=0: %s, want it named or answered for", c.Name, f.Name, zero)
				}
			case status != http.StatusOK:
				t.Errorf("%s, %s=0: %d %s", c.Name, f.Name, status, zero)
			case naturalZero[f.Name] != (zero == plain[with]):
				t.Errorf("%s, %s=0: answered as where not given is %t, want %t", c.Name, f.Name, zero == plain[with], naturalZero[f.Name])
			}
		}
	}
}

// reply returns the status and the text of an answer.
func reply(t *testing.T, h http.Handler, path, body string) (int, string) {
	t.Helper()
	r := post(t, h, path, body)
	text, err := io.ReadAll(r.Body)
	if err != nil {
		t.Fatal(err)
	}
	if r.StatusCode == http.StatusOK && !json.Valid(text) && !strings.HasPrefix(string(text), "<") && !strings.HasPrefix(r.Header.Get("Content-Type"), "text/plain") {
		t.Fatalf("%s: %.80q is neither JSON nor a page, a picture or plain text", path, text)
	}
	return r.StatusCode, string(text)
}

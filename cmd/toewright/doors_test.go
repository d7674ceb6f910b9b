package main

import (
	"encoding/json"
	"html"
	"net/http"
	"net/http/httptest"
	"regexp"
	"strings"
	"testing"

	"toewright/app/model"
	"toewright/internal/engine"
	"toewright/internal/number"
	sheets "toewright/internal/report"
	"toewright/internal/study"
	"toewright/internal/web/api"
	"toewright/solver"
)

// shownAs are ways to show a study.
var shownAs = map[string]*study.Display{
	"as the file":             nil,
	"mm":                      {Units: study.Millimetre},
	"inches":                  {Units: study.Inch},
	"sixteenths":              {Units: study.Inch, Fraction: 16},
	"thirty-seconds, a plate": {Units: study.Inch, Fraction: study.UsualFraction, Toe: "plate"},
	"sixty-fourths, a gauge":  {Units: study.Inch, Fraction: 64, Toe: "indicators", Base: 20},
	"mm over a plate":         {Units: study.Millimetre, Toe: "plate", Base: 25},
}

// doorsStudy is a template with a car of changes that are awkward in every unit.
func doorsStudy(t *testing.T, template study.Template, display *study.Display) *study.Document {
	t.Helper()
	d := template.Document()
	d.Display, d.Readings, d.Tolerances, d.Yield = display, nil, nil, nil
	key := "tieRodOuterHeight"
	if d.Suspension.Common != nil {
		key = "dragLinkOuterHeight"
	}
	d.Candidates = []study.Candidate{{Name: "made", Changes: study.Changes{
		key: study.Inch.Convert(-17.0/64, d.Units), "toe": 0.1235, "caster": 4.0625,
	}}}
	if _, err := engine.Sweep(t.Context(), d, engine.SweepOptions{Candidate: "made"}); err != nil {
		delete(d.Candidates[0].Changes, "caster")
	}
	return d
}

// TestSameDigitsOnEveryDoor reads numbers of one car on the page, of the command, from the
// calls and on paper, whatever is shown: the car's changes and its figures, and why its
// curve is what it is.
func TestSameDigitsOnEveryDoor(t *testing.T) {
	for _, template := range study.Templates() {
		for name, display := range shownAs {
			t.Run(template.Key+" "+name, func(t *testing.T) {
				d := doorsStudy(t, template, display)
				text, err := study.Encode(d)
				if err != nil {
					t.Fatal(err)
				}
				doors := map[string]string{
					"command": commandDoor(t, d, string(text)), "paper": paperDoor(t, d), "calls": callsDoor(t, d, string(text)),
				}
				for _, want := range pageDoor(t, d) {
					for door, text := range doors {
						if want.doors[door] && !strings.Contains(text, want.text) {
							t.Errorf("%s is %q on the page, which %s has not", want.name, want.text, door)
						}
					}
				}
			})
		}
	}
}

// written is a number as the page has it, and the doors that show it as well.
type written struct {
	name, text string
	doors      map[string]bool
}

// pageDoor returns what the page shows of the car.
func pageDoor(t *testing.T, d *study.Document) (list []written) {
	t.Helper()
	desk := model.NewDesk(d.Clone())
	n, cars := model.NumbersOf(d), desk.Session.Cars()
	car := cars.At(1)
	if car.Err != nil {
		t.Fatal(car.Err)
	}
	all := map[string]bool{"command": true, "paper": true, "calls": true}
	for _, v := range model.ChangesInWords(d, cars, car) {
		text := strings.TrimSuffix(v.Text, " deg")
		list = append(list, written{v.Label, number.Plain(strings.TrimPrefix(text, "+")), all})
	}
	for side, f := range car.Figures {
		list = append(list, written{solver.Side(side).String() + " peak", number.Plain(n.ToeNumber(f.Peak)), all})
		list = append(list, written{solver.Side(side).String() + " slope", number.Plain(n.Slope(solver.Angle(f.Slope).Degrees())), map[string]bool{"command": true, "calls": true}})
	}
	found, err := engine.Diagnose(t.Context(), d, engine.DiagnoseOptions{Candidate: "made"})
	if err != nil {
		t.Fatal(err)
	}
	worse := found.Cars[0] // the one that paper has
	if found.Cars[1].RMS > worse.RMS {
		worse = found.Cars[1]
	}
	_, words, _ := strings.Cut(worse.Words[0], ": ")
	return append(list, written{"diagnosis", words, all})
}

// commandDoor returns what the commands print of the car, on one line.
func commandDoor(t *testing.T, d *study.Document, text string) string {
	t.Helper()
	var out strings.Builder
	for _, args := range [][]string{{"compare", "-"}, {"diagnose", "-", "--candidate", "made"}} {
		var stderr strings.Builder
		if status := run(args, strings.NewReader(text), &out, &stderr); status != exitDone {
			t.Fatalf("%v: %s", args, stderr.String())
		}
	}
	r := newReport(d)
	for key, x := range d.Candidates[0].Changes { // as search prints best values
		value, unit := r.parameter(key, x)
		out.WriteString("\n" + beforeFraction(value, unit))
	}
	return strings.Join(strings.Fields(out.String()), " ")
}

// beforeFraction puts the unit of a value where a sentence has it: between decimals and
// fraction.
func beforeFraction(value, unit string) string {
	if decimals, fraction, ok := strings.Cut(value, " ("); ok {
		return decimals + " " + unit + " (" + fraction
	}
	return value + " " + unit
}

var tags = regexp.MustCompile(`<[^>]*>`)

// paperDoor returns what the bench sheet of the car shows.
func paperDoor(t *testing.T, d *study.Document) string {
	t.Helper()
	sheet, err := sheets.Gather(t.Context(), d, sheets.Options{Candidate: "made"})
	if err != nil {
		t.Fatal(err)
	}
	var b strings.Builder
	if err := sheets.Write(&b, sheet); err != nil {
		t.Fatal(err)
	}
	return number.Plain(html.UnescapeString(tags.ReplaceAllString(b.String(), " ")))
}

// callsDoor returns the answers of the calls, their numbers written as the study says.
func callsDoor(t *testing.T, d *study.Document, text string) string {
	t.Helper()
	server := httptest.NewServer(api.New(api.Config{}))
	defer server.Close()
	var compared engine.CompareResult
	var diagnosed engine.DiagnoseResult
	for call, answer := range map[string]any{"compare": &compared, "diagnose": &diagnosed} {
		resp, err := http.Post(server.URL+"/api/v1/"+call+"?candidate=made", "application/json", strings.NewReader(text))
		if err != nil {
			t.Fatal(err)
		}
		if err := json.NewDecoder(resp.Body).Decode(answer); err != nil || resp.StatusCode != http.StatusOK {
			t.Fatalf("%s: %s, %v", call, resp.Status, err)
		}
		resp.Body.Close()
	}
	s := d.Style()
	var out []string
	for _, c := range compared.Cars {
		out = append(out, s.Toe(float64(c.Peak)), s.Slope(float64(c.Slope)/d.Units.Millimetres(1)))
	}
	for _, c := range diagnosed.Cars {
		out = append(out, c.Words...)
	}
	for _, k := range d.Candidates {
		for key, x := range k.Changes {
			unit := string(d.Units)
			if key == "toe" || key == "caster" {
				unit = "deg"
			}
			out = append(out, s.AmountText(x, unit, d.Units))
		}
	}
	return number.Plain(strings.Join(out, " | "))
}

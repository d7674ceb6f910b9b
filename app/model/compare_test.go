package model_test

import (
	"encoding/json"
	"strings"
	"testing"

	"toewright/app/model"
	"toewright/internal/engine"
	"toewright/internal/study"
)

// answered returns what the engine says of each car of a desk, by index, as it comes back
// from a worker.
func answered(t *testing.T, d *model.Desk) map[int]*model.CarAnswer {
	t.Helper()
	out := map[int]*model.CarAnswer{}
	doc, cars := d.Session.Document(), 200
	for _, car := range d.Session.Cars().List {
		if car.Err != nil {
			continue
		}
		a := &model.CarAnswer{}
		r, err := engine.Compare(t.Context(), doc, engine.CompareOptions{Candidate: car.Name, Yardstick: car.Name})
		if err != nil {
			t.Fatal(err)
		}
		again := new(engine.CompareResult)
		if text, err := json.Marshal(r); err != nil || json.Unmarshal(text, again) != nil {
			t.Fatal(err)
		}
		a.Sides = again.Cars
		if len(again.Served) > 0 {
			a.Served = &again.Served[0]
		}
		if series, err := engine.Tolerance(t.Context(), doc, engine.ToleranceOptions{Candidate: car.Name, Cars: &cars}); err == nil {
			a.Series = series
		} else {
			a.SeriesFault = err.Error()
		}
		if loads, err := engine.Loads(t.Context(), doc, engine.LoadsOptions{Candidate: car.Name}); err == nil {
			a.Loads = loads
		}
		out[car.Index] = a
	}
	return out
}

func all(*model.CompareRow) bool { return true }

// rowOf returns the row of a key.
func rowOf(t *testing.T, c *model.Comparison, key string) *model.CompareRow {
	t.Helper()
	for i := range c.Rows {
		if c.Rows[i].Key == key {
			return &c.Rows[i]
		}
	}
	t.Fatalf("no row %q", key)
	return nil
}

// TestComparisonHasTheCommandsDigits compares every figure's cell with what the command
// compare prints: that of the same list of figures, of both sides.
func TestComparisonHasTheCommandsDigits(t *testing.T) {
	for _, key := range []string{"double-wishbone-rack", "double-wishbone-centre-link", "strut-rear", "solid-axle-pitman"} {
		d := model.NewDesk(template(t, key).Document())
		doc := d.Session.Document()
		r, err := engine.Compare(t.Context(), doc, engine.CompareOptions{})
		if err != nil {
			t.Fatal(err)
		}
		c := d.Compare(answered(t, d), model.CompareOrder{}, false, all)
		for i := range engine.CompareFigures {
			f := &engine.CompareFigures[i]
			for k := range c.Rows {
				row := &c.Rows[k]
				if row.Key != f.Key || row.Lacks != "" {
					continue
				}
				for j, car := range c.Cars {
					sides := r.Cars[2*car.Index : 2*car.Index+2]
					text := row.Cells[j].Text
					for s := range sides {
						if want := f.Number(doc.Style(), doc.Units, f.Of(&sides[s].Figures)); text[min(s, len(text)-1)] != want {
							t.Errorf("%s, %s of %s: %q, the command has %q", key, f.Key, car.Name, text, want)
						}
					}
				}
			}
		}
	}
}

// TestComparisonMarksTheBest looks at the demo: its flattest car is boxed, ties are both,
// and what is no better for being more or less has no box.
func TestComparisonMarksTheBest(t *testing.T) {
	d := deskWith(t)
	c := d.Compare(answered(t, d), model.CompareOrder{}, false, nil)
	if got := boxed(c, rowOf(t, c, "rms")); got != "Spacers 12 mm" {
		t.Errorf("flattest: %q", got)
	}
	for i := range c.Rows {
		r := &c.Rows[i]
		if r.Key == "steeringArmLength" || r.Key == "steeringRatio" || r.Key == "price" {
			if got := boxed(c, r); got != "" {
				t.Errorf("%s boxes %q", r.Key, got)
			}
		}
		if strings.HasPrefix(r.Key, "limit Clearance") {
			if got := boxed(c, r); got != "base, Rack lifted 8 mm, Lowered 25 mm, toe reset" {
				t.Errorf("most clearance: %q, want all three that share it", got)
			}
		}
	}
}

func boxed(c *model.Comparison, r *model.CompareRow) string {
	var names []string
	for i := range r.Cells {
		if r.Cells[i].Best {
			names = append(names, c.Cars[i].Name)
		}
	}
	return strings.Join(names, ", ")
}

// TestComparisonKeepsTheReferenceFirst sorts by a row, both ways: the reference stays.
func TestComparisonKeepsTheReferenceFirst(t *testing.T) {
	d := deskWith(t)
	if err := d.SetYardstick(1); err != nil {
		t.Fatal(err)
	}
	answers := answered(t, d)
	names := func(by model.CompareOrder) string {
		var list []string
		for _, car := range d.Compare(answers, by, false, nil).Cars {
			list = append(list, car.Name)
		}
		return strings.Join(list, "; ")
	}
	if got, want := names(model.CompareOrder{}), "Spacers 6 mm; base; Spacers 12 mm; Rack lifted 8 mm; Lowered 25 mm, toe reset"; got != want {
		t.Errorf("as in the study: %s, want %s", got, want)
	}
	if got, want := names(model.CompareOrder{Key: "rms"}), "Spacers 6 mm; Spacers 12 mm; Rack lifted 8 mm; Lowered 25 mm, toe reset; base"; got != want {
		t.Errorf("by rms: %s, want %s", got, want)
	}
	if got, want := names(model.CompareOrder{Key: "rms", Back: true}), "Spacers 6 mm; base; Lowered 25 mm, toe reset; Rack lifted 8 mm; Spacers 12 mm"; got != want {
		t.Errorf("by rms, worst first: %s, want %s", got, want)
	}
}

// TestComparisonShowsDifferences takes the reference's figures off the others', with signs.
func TestComparisonShowsDifferences(t *testing.T) {
	d := deskWith(t)
	answers := answered(t, d)
	plain, by := rowOf(t, d.Compare(answers, model.CompareOrder{}, false, nil), "steeringRatio"), rowOf(t, d.Compare(answers, model.CompareOrder{}, true, nil), "steeringRatio")
	if plain.Cells[0].Text[0] != by.Cells[0].Text[0] {
		t.Errorf("the reference shows %q, want its value %q", by.Cells[0].Text, plain.Cells[0].Text)
	}
	if got := by.Cells[2].Text[0]; got != "+0.08" && got != "+0.07" {
		t.Errorf("the ratio of %q differs by %q from %q", plain.Cells[2].Text, got, plain.Cells[0].Text)
	}
}

// TestComparisonSaysWhatIsMissing has rows that say which datum the study lacks, and cells
// that wait until they are computed.
func TestComparisonSaysWhatIsMissing(t *testing.T) {
	d := deskWith(t)
	if err := d.Session.Edit("less", "", func(doc *study.Document) { doc.Steering.PerTurn, doc.Tolerances, doc.Loads = 0, nil, nil }); err != nil {
		t.Fatal(err)
	}
	c := d.Compare(nil, model.CompareOrder{}, false, nil)
	for key, want := range map[string]string{"steeringRatio": "state steering", "series": "tolerances", "load tie rod": "no load case"} {
		if got := rowOf(t, c, key).Lacks; !strings.Contains(got, want) {
			t.Errorf("%s lacks %q, want %q in it", key, got, want)
		}
	}
	if k := rowOf(t, c, "outerBallAtLock").Cells[0]; !k.Waits {
		t.Errorf("a cell that nobody has computed shows %q", k.Text)
	}
	if k := rowOf(t, c, "rms").Cells[0]; k.Waits || len(k.Text) != 1 {
		t.Errorf("the toe is known in every frame, got %v", k)
	}
}

// TestComparisonBreaksLimits gives the demo a limit that its cars break.
func TestComparisonBreaksLimits(t *testing.T) {
	d := deskWith(t)
	most := 15.0
	if err := d.Session.SetLimits("limit", []study.Limit{{Result: "outerBallAngle", Max: &most}}); err != nil {
		t.Fatal(err)
	}
	c := d.Compare(answered(t, d), model.CompareOrder{}, false, nil)
	for i := range c.Rows {
		if !strings.HasPrefix(c.Rows[i].Key, "limit ") {
			continue
		}
		base, twelve := c.Rows[i].Cells[0], c.Rows[i].Cells[2]
		if base.Broken || !strings.HasSuffix(base.Spare, " spare") {
			t.Errorf("the base car: broken %t, %q", base.Broken, base.Spare)
		}
		if !twelve.Broken || !strings.HasPrefix(twelve.Spare, "short ") {
			t.Errorf("spacers of 12 mm: broken %t, %q", twelve.Broken, twelve.Spare)
		}
		return
	}
	t.Error("no row of the limit")
}

// TestComparisonIsTakenAlong writes the table as text and for a spreadsheet: as many
// columns in every row, prices as they are stated, no sign that a keyboard lacks.
func TestComparisonIsTakenAlong(t *testing.T) {
	d := deskWith(t)
	if err := d.Session.SetPrice(1, 49.5); err != nil {
		t.Fatal(err)
	}
	c := d.Compare(answered(t, d), model.CompareOrder{}, false, nil)
	name := func(car *model.Car) string { return car.Name }
	text := string(c.CSV(name))
	for _, want := range []string{"49.50", "car Spacers 6 mm", "at most 18.000 deg", "Steering ratio"} {
		if !strings.Contains(text, want) {
			t.Errorf("no %q in %s", want, text)
		}
	}
	if strings.ContainsAny(text, "−≤≥✗") {
		t.Errorf("signs that no keyboard has in %s", text)
	}
	lines := strings.Split(strings.TrimSpace(c.Text(name)), "\n")
	if len(lines) != len(strings.Split(strings.TrimSpace(text), "\n")) {
		t.Errorf("%d lines of text, another number of rows for a spreadsheet", len(lines))
	}
}

// TestShortChanges says in a word or two what cars change, and by how much two differ.
func TestShortChanges(t *testing.T) {
	d := deskWith(t)
	cars := d.Session.Cars()
	if got := strings.Join(d.ShortChanges(cars.At(1)), "; "); got != "outer ball −6.00" {
		t.Errorf("changes %q", got)
	}
	var got []string
	for _, v := range d.LessThan(cars.At(2), cars.At(1)) {
		got = append(got, v.Label+" "+v.Text)
	}
	if text := strings.Join(got, "; "); !strings.HasPrefix(text, "Outer ball −6.00 mm; Tie rod +") || !strings.Contains(text, "Peak −0.") {
		t.Errorf("differs by %q", text)
	}
}

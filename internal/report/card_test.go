package report

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"toewright/internal/engine"
	"toewright/internal/number"
	"toewright/internal/study"
)

// TestCardAgrees: what the card says of fit, setting and reading is what the engine says, to
// the last digit.
func TestCardAgrees(t *testing.T) {
	d := car(t, "double-wishbone-rack")
	const name, base = "Spacers 12 mm", 250.0
	page := written(t, gathered(t, d, Options{Candidate: name, Form: CardForm, Base: new(base)}))
	covers, err := engine.Covers(t.Context(), d, engine.CoversOptions{Candidate: name})
	if err != nil {
		t.Fatal(err)
	}
	rows := cells(t, page, "numbers readings")
	text := seen(page)
	for _, c := range covers.Covers {
		low, high := float64(c.Low), float64(c.High)
		decimals := 2
		if c.Parameter == "caster" || c.Parameter == "camber" {
			decimals = 3
		}
		if !strings.Contains(text, number.Decimal(low, decimals)) || !strings.Contains(text, number.Decimal(high, decimals)) {
			t.Errorf("the card has no %s from %v to %v", c.Parameter, low, high)
		}
	}
	sweep, err := engine.Sweep(t.Context(), d, engine.SweepOptions{Candidate: name})
	if err != nil {
		t.Fatal(err)
	}
	band, err := engine.Tolerance(t.Context(), tableStudy(d), engine.ToleranceOptions{Candidate: name, Cars: new(fewCars)})
	if err != nil {
		t.Fatal(err)
	}
	over := func(deg float64) float64 { return base * math.Tan(deg*math.Pi/180) }
	left := sweep.Sweeps[0].Positions
	rest := left[12].Toe
	for _, i := range []int{0, 2, 22, 24} {
		want := number.Decimal(over(left[i].Toe)-over(rest), 3)
		found := false
		for _, row := range rows {
			if row[0] == number.Trimmed(left[i].Travel, 3) {
				found = true
				low, high := math.NaN(), math.NaN() // the series does not go there
				for _, p := range band.Positions {
					if p.Side == "left" && p.Travel == left[i].Travel {
						low, high = float64(p.Low), float64(p.High)
					}
				}
				lo, hi := number.Decimal(over(rest+low)-over(rest), 3), number.Decimal(over(rest+high)-over(rest), 3)
				if row[2] != want || row[3] != lo || row[4] != hi {
					t.Errorf("at %v the card reads %q, want after %s, low %s, high %s", left[i].Travel, row, want, lo, hi)
				}
			}
		}
		if !found {
			t.Errorf("no row of readings at %v", left[i].Travel)
		}
	}
	arm, err := engine.Arm(t.Context(), d, engine.ArmOptions{Candidate: name})
	if err != nil {
		t.Fatal(err)
	}
	if a := &arm.Sides[0]; !strings.Contains(text, number.Decimal(math.Abs(float64(a.Turns)), 2)) || !strings.Contains(text, number.Decimal(a.TieRod.After, 2)) {
		t.Error("the card has no turns of the adjuster, or no length of the rod")
	}
	for _, c := range engine.Cautions {
		if !strings.Contains(text, c) {
			t.Errorf("no caution %q", c)
		}
	}
}

// TestCardHasItsBand: in either unit each row within the search's window has a band.
func TestCardHasItsBand(t *testing.T) {
	for _, unit := range []study.Units{study.Millimetre, study.Inch} {
		d := car(t, "double-wishbone-rack")
		d.Display = &study.Display{Units: unit}
		page := written(t, gathered(t, d, Options{Candidate: "Spacers 12 mm", Form: CardForm}))
		window, rows := d.Units.Convert(d.SearchWindow().Bump, unit), 0
		for _, row := range cells(t, page, "numbers readings") {
			travel, err := strconv.ParseFloat(strings.NewReplacer("−", "-", "+", "").Replace(row[0]), 64)
			if err != nil || math.Abs(travel) > window {
				continue // a head, or beyond the series
			}
			rows++
			if row[3] == "–" || row[4] == "–" {
				t.Errorf("in %s the card has no band at %s: %q", unit, row[0], row)
			}
		}
		if rows < 5 {
			t.Errorf("in %s the card has %d rows within the window", unit, rows)
		}
	}
}

func TestCardRefuses(t *testing.T) {
	d := car(t, "double-wishbone-rack")
	for key, o := range map[string]Options{"form": {Form: "poster"}, "base": {Form: CardForm, Base: new(0.0)}} {
		if _, err := Gather(t.Context(), d, o); err == nil || !strings.Contains(err.Error(), key) {
			t.Errorf("%+v gives %v, want a refusal that names %s", o, err, key)
		}
	}
}

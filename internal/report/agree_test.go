package report

import (
	"fmt"
	"math"
	"regexp"
	"strings"
	"testing"

	"toewright/internal/engine"
	"toewright/internal/number"
	"toewright/internal/study"
	"toewright/solver"
)

// TestTableAgrees compares each number of the table of toe with a sweep made here.
func TestTableAgrees(t *testing.T) {
	d := twoSided(t)
	rows := cells(t, written(t, gathered(t, d, Options{})), "numbers")[2:]
	d.Travel.Step = 10
	sweep, err := engine.Sweep(t.Context(), d, engine.SweepOptions{})
	if err != nil {
		t.Fatal(err)
	}
	positions := sweep.Sweeps[0].Positions
	if len(rows) != len(positions) {
		t.Fatalf("%d rows, want %d", len(rows), len(positions))
	}
	for i := range positions {
		row := rows[len(rows)-1-i]
		want := []string{number.Decimal(positions[i].Travel, 0)}
		for side := range solver.Sides {
			before, after := sweep.Sweeps[side].Positions, sweep.Sweeps[2+side].Positions
			was, now := before[i].Toe-before[6].Toe, after[i].Toe-after[6].Toe
			length := 300 * math.Tan(now*math.Pi/180)
			want = append(want, number.Decimal(was, 3), number.Decimal(now, 3), number.Signed(now-was, number.Decimal(now-was, 3)),
				number.Decimal(length, 3), number.Decimal(after[i].Toe, 3), number.Decimal(after[i].Camber, 3))
		}
		if got := strings.Join(row, " "); got != strings.Join(want, " ") {
			t.Errorf("row %q, want %q", got, strings.Join(want, " "))
		}
	}
}

// TestEffectsAgree compares what else changes with a comparison made here.
func TestEffectsAgree(t *testing.T) {
	d := car(t, "double-wishbone-rack")
	rows := cells(t, written(t, gathered(t, d, Options{Candidate: "Spacers 12 mm"})), "numbers effects")[1:]
	got, err := engine.Compare(t.Context(), d, engine.CompareOptions{Candidate: "Spacers 12 mm"})
	if err != nil {
		t.Fatal(err)
	}
	after, change := &got.Cars[0].Figures, &got.Cars[0].Difference
	tests := map[string][2]engine.Number{
		"scrub radius mm":       {after.ScrubRadius, change.ScrubRadius},
		"roll-centre height mm": {after.RollCentre, change.RollCentre},
		"camber range deg":      {after.CamberRange, change.CamberRange},
		"outer ball angle deg":  {after.OuterBallAngle, change.OuterBallAngle},
		"toe-out on turns deg":  {after.ToeOutOnTurns, change.ToeOutOnTurns},
	}
	for _, row := range rows {
		want, ok := tests[row[0]+" "+row[1]]
		if !ok {
			continue
		}
		delete(tests, row[0]+" "+row[1])
		text := func(x engine.Number) string {
			return number.Decimal(float64(x), map[string]int{"mm": 2, "deg": 3}[row[1]])
		}
		if row[3] != text(want[0]) || row[4] != number.Signed(float64(want[1]), text(want[1])) || row[2] != text(want[0]-want[1]) {
			t.Errorf("row %q, want %v by %v", row, want[0], want[1])
		}
	}
	if len(tests) != 0 {
		t.Errorf("no rows for %v", tests)
	}
}

// TestArmsAgree compares the dimensions of both arms with the engine's.
func TestArmsAgree(t *testing.T) {
	d := twoSided(t)
	rows := cells(t, written(t, gathered(t, d, Options{})), "dims")
	got, err := engine.Arm(t.Context(), d, engine.ArmOptions{Candidate: "Own arms"})
	if err != nil {
		t.Fatal(err)
	}
	for i, a := range got.Sides {
		want := map[string]string{
			"along the stud":        fmt.Sprintf("%.2f down", -a.AlongStud),
			"square to the stud":    fmt.Sprintf("%.2f", a.AcrossStud),
			"up or down":            fmt.Sprintf("%.2f down", -a.Car[2]),
			"forward or rearward":   fmt.Sprintf("%.2f forward", a.Car[0]),
			"outboard or inboard":   fmt.Sprintf("%.2f outboard", a.Car[1]),
			"square to the face":    fmt.Sprintf("%.2f forward", -a.Face.By[0]), // its normal looks back
			"steering arm":          fmt.Sprintf("%.2f → %.2f (−%.2f)", a.Arm.Before, a.Arm.After, a.Arm.Before-a.Arm.After),
			"turns of the adjuster": fmt.Sprintf("%.2f longer", a.Turns),
			"thread then engaged":   fmt.Sprintf("%.2f, at least 16.00 needed", a.Thread),
			"tie rod, ball to ball": fmt.Sprintf("%.2f → %.2f (+%.2f)", a.TieRod.Before, a.TieRod.After, a.TieRod.After-a.TieRod.Before),
		}
		for _, row := range rows {
			if text, ok := want[row[1]]; ok && row[2+i] != text {
				t.Errorf("%s, %s: %q, want %q", a.Side, row[1], row[2+i], text)
			}
			delete(want, row[1])
		}
		if len(want) != 0 {
			t.Errorf("%s: no rows for %v", a.Side, want)
		}
	}
}

// TestResultAgrees compares what stands largest on the page with the engine's figures.
func TestResultAgrees(t *testing.T) {
	d := car(t, "double-wishbone-rack")
	page := seen(written(t, gathered(t, d, Options{Candidate: "Spacers 12 mm"})))
	got, err := engine.Compare(t.Context(), d, engine.CompareOptions{})
	if err != nil {
		t.Fatal(err)
	}
	if want := fmt.Sprintf("each wheel: %.3f° → %.3f°", got.Cars[0].Peak, got.Cars[4].Peak); !strings.Contains(page, want) {
		t.Errorf("the page has no %q", want)
	}
}

// TestVerdictsAgree compares yield, limits and readings with the engine's.
func TestVerdictsAgree(t *testing.T) {
	d := car(t, "double-wishbone-rack")
	page := seen(written(t, gathered(t, d, Options{Candidate: "Spacers 12 mm"})))
	yield, err := engine.Tolerance(t.Context(), d, engine.ToleranceOptions{Candidate: "Spacers 12 mm", Cars: new(fewCars)})
	if err != nil {
		t.Fatal(err)
	}
	limits, err := engine.Standing(t.Context(), d, engine.StandingOptions{Candidate: "Spacers 12 mm"})
	if err != nil {
		t.Fatal(err)
	}
	fit, err := engine.Fit(t.Context(), d, engine.FitOptions{})
	if err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{
		fmt.Sprintf("200 cars by chance within the study's tolerances, static toe re-set: %.1f %% stay within 0.100° of largest error", 100*yield.Yield.Share),
		fmt.Sprintf("%.3f° as drawn, %.3f° or less on 95 of 100", yield.Figure.Nominal, yield.Figure.Percentile95),
		fmt.Sprintf("outer ball angle: %.3f deg, at most 18.000 deg: held", limits.Limits[0].Value),
		fmt.Sprintf("clearance of outer ball from rim: %.2f mm, at least 6.00 mm: held", limits.Limits[1].Value),
		fmt.Sprintf("On the car as read: largest error %.3f°", fit.Cars[2].Peak.Value),
		fit.Words[0],
	} {
		if !strings.Contains(page, want) {
			t.Errorf("the page has no %q", want)
		}
	}
}

// TestBrokenLimit: a limit that is not held cannot be overlooked.
func TestBrokenLimit(t *testing.T) {
	d := car(t, "double-wishbone-rack")
	most := 1.0
	d.Search.Limits = []study.Limit{{Result: "outerBallAngle", Max: &most}}
	if page := seen(written(t, gathered(t, d, Options{}))); !strings.Contains(page, "at most 1.000 deg: NOT HELD") {
		t.Error("the page does not say that the limit is not held")
	}
	d.Search.Limits[0].At = study.AtLock
	want := regexp.MustCompile(`outer ball angle at lock: [0-9.]+ deg at 50 mm (bump|droop)( and full (left|right) lock|, straight ahead) \((left|right) wheel\), at most 1.000 deg: NOT HELD`)
	if page := seen(written(t, gathered(t, d, Options{}))); !want.MatchString(page) {
		t.Errorf("the page has nothing like %s", want)
	}
}

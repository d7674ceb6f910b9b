package main

import (
	"fmt"
	"slices"

	"toewright/internal/engine"
)

// showCompare prints a table for each side, or one where the sides of every car
// are alike: a row for each figure and two columns for each car.
func showCompare(r *report, c *engine.CompareResult) {
	r.line("%s; differences are from %s", windowLine(r, c.Window), oneLine(c.Yardstick))
	left, right := bySide(c)
	where := circumstances(r, c.Motion, engine.Attitude{Heave: c.Heave, Roll: c.Roll, Steer: c.Steer})
	if slices.EqualFunc(left, right, alikeFigures) {
		showSide(r, left, c.Yardstick, "both sides"+where)
	} else {
		showSide(r, left, c.Yardstick, "left side"+where)
		showSide(r, right, c.Yardstick, "right side"+where)
	}
	showServed(r, c)
}

func bySide(c *engine.CompareResult) (left, right []engine.Compared) {
	for _, car := range c.Cars {
		if car.Side == "left" {
			left = append(left, car)
		} else {
			right = append(right, car)
		}
	}
	return left, right
}

func alikeFigures(a, b engine.Compared) bool {
	for _, row := range compareRows {
		if d := float64(row.Of(&a.Figures) - row.Of(&b.Figures)); d > sameOnPaper || d < -sameOnPaper {
			return false
		}
	}
	return a.CrossesZero == b.CrossesZero
}

// differs returns the text for a car that is not the yardstick itself.
func differs(c engine.Compared, yardstick, text string) string {
	if c.Candidate == yardstick {
		return ""
	}
	return text
}

func showSide(r *report, cars []engine.Compared, yardstick, heading string) {
	r.heading("%s", heading)
	t := &table{fold: fold{repeat: 2, group: 2}}
	head := []string{"", ""}
	for _, c := range cars {
		head = append(head, oneLine(c.Candidate), differs(c, yardstick, "change"))
	}
	t.add(head...)
	for i := range compareRows {
		if row := compareRows[i]; row.known(cars) {
			t.add(row.cells(r, cars, yardstick)...)
		}
	}
	r.table(t)
	showRemarks(r, cars)
}

// showRemarks prints what no number says.
func showRemarks(r *report, cars []engine.Compared) {
	for _, c := range cars {
		if c.CrossesZero {
			r.line("%s: toe goes from toe-in to toe-out within the window.", oneLine(c.Candidate))
		}
		if c.Reach != nil {
			r.line("%s: %s", oneLine(c.Candidate), lock(r, c.Reach))
		}
	}
}

// windowLine says over what travel figures are taken.
func windowLine(r *report, w engine.Window) string {
	return fmt.Sprintf("From %s of droop to %s of bump in steps of %s %s", r.travel(w.Droop), r.travel(w.Bump), r.travel(w.Step), r.LengthUnit())
}

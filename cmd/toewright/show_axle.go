package main

import "toewright/internal/engine"

// showAxle prints a row for each figure and a column for each car.
func showAxle(r *report, a *engine.AxleResult) {
	length := r.LengthUnit()
	perLength := r.file.Convert(1, r.Units) // shown lengths in one of the file
	t := &table{left: map[int]bool{1: true}, fold: fold{repeat: 2, group: 1}}
	header := []string{"", ""}
	for _, c := range a.Cars {
		header = append(header, oneLine(c.Candidate))
	}
	t.add(header...)
	row := func(label, unit string, of func(*engine.AxleCar) string) {
		cells := []string{label, unit}
		for i := range a.Cars {
			cells = append(cells, of(&a.Cars[i]))
		}
		t.add(cells...)
	}
	row("roll steer", "deg/deg", func(c *engine.AxleCar) string { return fixed(float64(c.RollSteer), 4) })
	row("axle steer by left bump", "deg/"+length, func(c *engine.AxleCar) string { return fixed(float64(c.AxleSteer.Left)/perLength, 5) })
	row("axle steer by right bump", "deg/"+length, func(c *engine.AxleCar) string { return fixed(float64(c.AxleSteer.Right)/perLength, 5) })
	row("roll centre above ground", length, func(c *engine.AxleCar) string { return r.length(float64(c.RollCentre)) })
	row("scrub by static toe, left (estimate)", "m/km", func(c *engine.AxleCar) string { return fixed(float64(c.Scrub.Left), 3) })
	row("scrub by static toe, right (estimate)", "m/km", func(c *engine.AxleCar) string { return fixed(float64(c.Scrub.Right), 3) })
	row("drag by static toe (estimate)", "W", func(c *engine.AxleCar) string { return fixed(float64(c.Drag), 1) })
	row("drift to the left, left wheel in bump (estimate)", length, func(c *engine.AxleCar) string { return r.length(float64(c.Drift.Left)) })
	row("drift to the left, right wheel in bump (estimate)", length, func(c *engine.AxleCar) string { return r.length(float64(c.Drift.Right)) })
	r.table(t)
	r.line("")
	r.line("Steer is positive to the left. Drag is at %g km/h, drift over %g m: estimates, kinematic, without tyre or driver.", a.Speed, a.Distance)
}

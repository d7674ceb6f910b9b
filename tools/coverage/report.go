package main

import (
	"fmt"
	"io"
	"strings"
)

// promise is a figure that the findings of all templates together must hold.
type promise struct {
	what     string
	got      float64
	low, top float64 // bounds of got
	unit     string
}

func (p *promise) kept() bool { return p.got >= p.low && p.got <= p.top }

// String returns the promise as a line of a table.
func (p *promise) String() string {
	verdict := "kept"
	if !p.kept() {
		verdict = "**not kept**"
	}
	want := fmt.Sprintf("%g to %g", p.low, p.top)
	switch {
	case p.low == 0:
		want = fmt.Sprintf("at most %g", p.top)
	case p.top == 100:
		want = fmt.Sprintf("at least %g", p.low)
	}
	return fmt.Sprintf("| %s | %s %s | %.3g %s | %s |", p.what, want, p.unit, p.got, p.unit, verdict)
}

// promises returns what the fit promises, on the findings of all templates.
func promises(f *findings) []promise {
	named := 100 * float64(f.named) / float64(f.spoils)
	unmoved := 100 * float64(f.unmoved) / float64(f.spoils)
	return []promise{
		{"90 % bands that hold the true best, two stacks", f.two.coverage(), 88, 92, "%"},
		{"90 % bands that hold the true best, one stack", f.one.coverage(), 88, 92, "%"},
		{"advice within 0.75 mm after two stacks", f.two.withinPercent(0.75), 98, 100, "%"},
		{"advice within 1.5 mm after one stack", f.one.withinPercent(1.5), 90, 100, "%"},
		{"advice within 1 mm after two stacks, rough template", f.roughTwo.withinPercent(1), 95, 100, "%"},
		{"mean width of the 90 % band after two stacks", f.two.meanWidth(), 0, 0.6, "mm"},
		{"gross errors named", named, 95, 100, "%"},
		{"gross errors that move the advice by less than 0.3 mm", unmoved, 95, 100, "%"},
		{"mean RMS error of the predicted curve, on the gauge", f.two.meanCurve(), 0, gaugeNoise, "mm"},
		{"90 % bands that hold the true best, zeros off and freed", f.freed.coverage(), 88, 92, "%"},
	}
}

const introduction = `# How far the advice can be trusted

Simulated cars of every template, all invented: each coordinate of each hardpoint is
off the file by a normal error of %g mm (one standard deviation), as taped on a shop
floor, or of %g mm, as a template with little measured. The car is read with two
indicators %g mm apart: ten readings a side over the template's own window, each with
a scatter of %g mm and rounded to %g mm, the zero anywhere. It is read without spacers
(one stack), fitted, and read again with the stack advised, in spacers of %g mm (two
stacks). The advised part is the outer tie rod ball, or the drag link's ball of a solid
axle. The true best is found by a search on the true geometry.

%d cars of each template and part, seed %d. Anyone can repeat it, to the digit:

    make coverage

This is geometry with rigid links. It says nothing of strength, or of rubber that gives
way. The gauge is honest, and known not to lean, but in the last table, which says what
becomes of the advice where it is not.

`

// write writes the page.
func write(w io.Writer, e experiment, all []findings) (kept bool, err error) {
	total := findings{name: "**all**"}
	for i := range all {
		total.join(&all[i])
	}
	var b strings.Builder
	if e.FaultsOnly {
		writeFaults(&b, e, &total)
		_, err = io.WriteString(w, b.String())
		return true, err
	}
	fmt.Fprintf(&b, introduction, tapedSD, roughSD, gaugeBase, gaugeNoise, gaugeDigit, spacer, e.Cars, e.Seed)
	kept = writePromises(&b, promises(&total))
	rows := append(all, total)
	writeTaped(&b, rows)
	writeRough(&b, rows)
	writeSpoilt(&b, rows)
	writeZeros(&b, rows)
	writeFaults(&b, e, &total)
	_, err = io.WriteString(w, b.String())
	return kept, err
}

func writePromises(b *strings.Builder, list []promise) bool {
	b.WriteString("## What is promised\n\n| Figure | Promised | Found | |\n| --- | --- | --- | --- |\n")
	kept := true
	for _, p := range list {
		fmt.Fprintln(b, p.String())
		kept = kept && p.kept()
	}
	return kept
}

func writeTaped(b *strings.Builder, rows []findings) {
	b.WriteString("\n## Hardpoints by tape\n\n" +
		"| Template | Cars | Band holds, 1 stack | within 1.5 mm | width | Band holds, 2 stacks | within 0.75 mm | worst | width | Curve error |\n" +
		"| --- | --: | --: | --: | --: | --: | --: | --: | --: | --: |\n")
	for i := range rows {
		one, two := &rows[i].one, &rows[i].two
		fmt.Fprintf(b, "| %s | %d | %.1f %% | %.1f %% | %.2f mm | %.1f %% | %.1f %% | %.2f mm | %.2f mm | %.3f mm |\n",
			rows[i].name, two.cars, one.coverage(), one.withinPercent(1.5), one.meanWidth(),
			two.coverage(), two.withinPercent(0.75), two.worst, two.meanWidth(), two.meanCurve())
	}
}

func writeRough(b *strings.Builder, rows []findings) {
	b.WriteString("\n## From a rough template\n\n" +
		"| Template | Cars | Band holds, 1 stack | width | Band holds, 2 stacks | within 1 mm | worst | width |\n" +
		"| --- | --: | --: | --: | --: | --: | --: | --: |\n")
	for i := range rows {
		one, two := &rows[i].roughOne, &rows[i].roughTwo
		fmt.Fprintf(b, "| %s | %d | %.1f %% | %.2f mm | %.1f %% | %.1f %% | %.2f mm | %.2f mm |\n",
			rows[i].name, two.cars, one.coverage(), one.meanWidth(),
			two.coverage(), two.withinPercent(1), two.worst, two.meanWidth())
	}
}

func writeSpoilt(b *strings.Builder, rows []findings) {
	fmt.Fprintf(b, "\n## One gross error of %g to %g mm among the readings of two stacks\n\n"+
		"| Template | Named | Advice moved by less than 0.3 mm | Band holds | Sound readings left out before |\n"+
		"| --- | --: | --: | --: | --: |\n", grossLeast*gaugeNoise, grossMost*gaugeNoise)
	for i := range rows {
		f := &rows[i]
		fmt.Fprintf(b, "| %s | %.1f %% | %.1f %% | %.1f %% | %d of %d cars |\n", f.name,
			100*float64(f.named)/float64(f.spoils), 100*float64(f.unmoved)/float64(f.spoils),
			f.spoilt.coverage(), f.two.leftOut, f.two.cars)
	}
}

func writeZeros(b *strings.Builder, rows []findings) {
	fmt.Fprintf(b, "\n## Travel read from a wrong height (%g mm) and steering off centre (%g mm of rack)\n\n"+
		"Both one standard deviation; stacks of 0 and %g mm.\n\n"+
		"| Template | Cars | Band holds, held at zero | width | Band holds, freed | width | within 0.75 mm |\n"+
		"| --- | --: | --: | --: | --: | --: | --: |\n", travelZeroSD, steerZeroSD, zerosStack)
	unusable := 0
	for i := range rows {
		held, freed := &rows[i].held, &rows[i].freed
		fmt.Fprintf(b, "| %s | %d | %.1f %% | %.2f mm | %.1f %% | %.2f mm | %.1f %% |\n", rows[i].name, freed.cars,
			held.coverage(), held.meanWidth(), freed.coverage(), freed.meanWidth(), freed.withinPercent(0.75))
		unusable = rows[i].unusable
	}
	fmt.Fprintf(b, "\n%d cars were drawn that cannot be used, since they do not make the window or have no best\n"+
		"height within the bounds, and were left aside.\n", unusable)
}

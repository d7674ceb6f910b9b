package main

import (
	"fmt"
	"io"
	"math"
	"strings"

	"toewright/internal/study"
)

const locatedIntroduction = `# How far a car by tape can be trusted

Simulated cars of every template, all invented: each coordinate of the true car is off the
template by a normal error of %g mm, and the study that is located starts up to %g mm off the true car in
each coordinate. By the form of [A car by tape](tape.md) every hardpoint is taped from the five nearest of
its side's six marks (scatter %g mm), from its nearest neighbour (%g mm), its height taken with a level
(%g mm), and one of its other coordinates plumbed (%g mm), all read to %g mm. Marks are exact in one half
of the jobs, and off by 1 mm in each coordinate, with ` + "`markSd`" + ` saying so, in the other. Four jobs in
five have a slip: a length 10 mm or a foot off, read from the wrong end of a metre rule, or two lengths
from one mark written each in the other's place.

%d jobs of each template by the form, seed %d. Anyone can repeat it, to the digit, by ` + "`make coverage`" + `.

*Held* are 90 %% bands that hold the true car: of each coordinate that is settled, and of the toe change at
both ends of the window of travel. A slip is *named* where it is said to be wrong, and *one of* where it is
said that it or another may be: what was measured cannot tell which, and the bands allow for either. The
bands of a car hold or miss much together, so that of a share of toe no more counts than the jobs: by chance
alone the share of %d cars has a standard deviation of %.1f %%.

`

// chanceOf returns the standard deviation of a share of nine in ten of n cars, percent.
func chanceOf(n int) float64 { return 100 * math.Sqrt(0.9*0.1/float64(n)) }

// locatedPromises returns what a location promises. How wide its bands are to be at most is
// held by a test of package engine.
func locatedPromises(f *locatedFindings) []promise {
	return []promise{
		{"90 % bands of coordinates that hold the true one", f.all.coverage(), 88, 92, "%"},
		{"90 % bands of toe change at the window's ends that hold the true one", f.all.toeCoverage(), 88, 92, "%"},
		{"slips named", f.all.namedShare(), 95, 100, "%"},
		{"jobs with a sound measure left out", percent(f.all.Spoilt, f.all.Jobs), 0, 2, "%"},
		{"jobs that land elsewhere", percent(f.all.Lost, f.all.Jobs), 0, 0.5, "%"},
	}
}

// writeLocated writes the page of located cars.
func writeLocated(w io.Writer, e locatedCars, f *locatedFindings) (kept bool, err error) {
	var b strings.Builder
	fmt.Fprintf(&b, locatedIntroduction, otherCarSD, templateOff, lengthSD, directSD, levelSD, plumbSD, tapeDigit, e.Cars, e.Seed, e.Cars, chanceOf(e.Cars))
	kept = writePromises(&b, locatedPromises(f))
	var names []string
	for _, t := range study.Templates() {
		names = append(names, t.Key)
	}
	writeOutcomes(&b, "By template, by the form", names, f.kinds)
	names = nil
	for _, s := range tapeSlips {
		names = append(names, s.name)
	}
	writeOutcomes(&b, "By slip, by the form", names, f.slips)
	names = nil
	for _, s := range tapeSchemes {
		names = append(names, s.name)
	}
	writeOutcomes(&b, "By what is measured, all templates", names, f.schemes)
	writeCars(&b, f)
	b.WriteString("\nFour lengths to a point leave one to spare: that tells that one of the four is wrong, and not which.\n")
	_, err = io.WriteString(w, b.String())
	return kept, err
}

// writeCars writes what the schemes leave of the toe of each template's cars.
func writeCars(b *strings.Builder, f *locatedFindings) {
	b.WriteString("\n## By car: sd of toe at the window's ends, deg\n\n" +
		"Without slips, marks exact. The same measures leave of a car's toe what its own sensitivity makes of them: the\n" +
		"last column is what the plumb line leaves by its 1.5 mm.\n\n|")
	rule := "\n| ---"
	for _, s := range tapeSchemes {
		b.WriteString(" | " + s.name)
		rule += " | --:"
	}
	b.WriteString(" | deg by mm |" + rule + " | --: |\n")
	for i, t := range study.Templates() {
		fmt.Fprintf(b, "| %s |", t.Key)
		sd := 0.0
		for scheme := range tapeSchemes {
			o := &f.cars[scheme+len(tapeSchemes)*i]
			sd = o.ToeSD / float64(o.Ends)
			fmt.Fprintf(b, " %.3f |", sd)
		}
		fmt.Fprintf(b, " %.3f |\n", sd/tapeSchemes[len(tapeSchemes)-1].sd)
	}
}

// writeOutcomes writes a table with a row for each name.
func writeOutcomes(b *strings.Builder, title string, names []string, rows []tapeOutcome) {
	fmt.Fprintf(b, "\n## %s\n\n| | Jobs | Coordinates held | Toe held | sd of toe | Slips | named | one of | Sound ones left out | Elsewhere |\n"+
		"| --- | --: | --: | --: | --: | --: | --: | --: | --: | --: |\n", title)
	for i := range rows {
		o := &rows[i]
		fmt.Fprintf(b, "| %s | %d | %.1f %% | %.1f %% | %.3f deg | %d | %d | %d | %d | %d |\n", names[i], o.Jobs,
			o.coverage(), o.toeCoverage(), o.ToeSD/float64(o.Ends), o.Slips, o.Named, o.Either, o.Left, o.Lost)
	}
}

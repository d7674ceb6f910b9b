package scene

import (
	"strconv"

	"toewright/internal/plot"
)

// Stylesheet returns the rules for the picture of [Markup], beyond those of package plot.
// Its colours are variables of the page that it stands on; a file has them from
// [fileColours]. Curves have three weights: that of the car whose number the picture's class
// states, such as "foremost2", is the strongest, that of the reference, such as
// "reference0", the next. See [Output.Class].
func Stylesheet() string {
	css := append([]byte(rules), ".drawing .line{stroke-width:1;stroke-opacity:0.55}\n"...)
	css = appendCurves(css, "reference", "{stroke-width:2;stroke-opacity:1;stroke-dasharray:none}\n")
	return string(appendCurves(css, "foremost", "{stroke-width:3;stroke-opacity:1;stroke-dasharray:none}\n"))
}

// appendCurves appends a rule for the curve of the car that a class names.
func appendCurves(css []byte, class, rule string) []byte {
	for i := range plot.MaxSeries {
		if i > 0 {
			css = append(css, ',')
		}
		css = append(css, "."+class+strconv.Itoa(i)+" .line."+plot.SeriesStyle(i).Class...)
	}
	return append(css, rule...)
}

// classOf returns the classes of a picture that shows a selected car against another. What
// has no colour of its own takes that of the selected one.
func classOf(car, reference int) string { return pictureClasses[car][reference] }

// pictureClasses are those of every selected car and reference: a frame makes no text.
var pictureClasses = func() (list [plot.MaxSeries][plot.MaxSeries]string) {
	for car := range list {
		for reference := range list[car] {
			list[car][reference] = "drawing foremost" + strconv.Itoa(car) + " reference" + strconv.Itoa(reference) + " " + plot.SeriesStyle(car).Class
		}
	}
	return list
}()

// fileColours are those of a file, which is always on white paper.
const fileColours = `:root{--paper:#fff;--sunk:#ece9df;--band:#e4e6dd;--ink:#1f2c38;--ink-soft:#4b5965;--line:#73818c;--accent:#a8261c;--sheet-font:"Helvetica Neue",Arial,"Liberation Sans",sans-serif}
`

// rules are in the order of the picture: its texts, the car, the charts.
const rules = `.drawing text{font-family:var(--sheet-font);font-size:12px;font-variant-numeric:tabular-nums}
.drawing .heading,.drawing .readout{font-size:14px;font-weight:600}
.drawing .readout{fill:var(--accent)}
.drawing .caption,.drawing .tick,.drawing .sense,.drawing .travel{fill:var(--ink-soft)}
.drawing .name{paint-order:stroke;stroke:var(--paper);stroke-width:4}
.drawing path{vector-effect:non-scaling-stroke}
.drawing .within{fill:var(--band)}
.drawing .target{stroke-width:1.2;stroke-opacity:1;opacity:1;stroke-dasharray:10 3 2 3}
.drawing .other{fill:none;stroke:currentColor;stroke-width:1.5;stroke-dasharray:1.5 3}
.drawing .set-ups{fill:none;stroke:currentColor;stroke-width:1.2;stroke-dasharray:6 4}
.drawing .binding{stroke-width:2}
.drawing .tried{fill:none;stroke:var(--accent);stroke-width:1.5;stroke-dasharray:2 2}
.drawing .gap{fill:var(--paper)}
.drawing .strokes{fill:none;stroke:var(--ink);stroke-width:1.2}
.drawing .ground{fill:none;stroke:var(--line);stroke-width:1}
.drawing .tyre{fill:none;stroke:var(--ink);stroke-width:1.6}
.drawing .axis{fill:none;stroke:var(--ink-soft);stroke-width:0.8;stroke-dasharray:12 3 2 3}
.drawing .body{fill:var(--sunk);stroke:var(--ink);stroke-width:1.2}
.drawing .solid{stroke-width:1.3}
.drawing .knuckle{fill:var(--paper);stroke:var(--ink);stroke-width:1.7;fill-opacity:0.85}
.drawing .ball{fill:var(--ink)}
.drawing .ghost{fill:none;stroke:var(--line);stroke-width:1;stroke-dasharray:4 3}
.drawing .rim{fill:none;stroke:var(--ink);stroke-width:1}
.drawing .letter{font-weight:700}
.drawing .pointed{fill:none;stroke:var(--accent);stroke-width:1.5}
.drawing .instant{fill:none;stroke:var(--ink-soft);stroke-width:0.8;stroke-dasharray:8 3 2 3}
.drawing path.load{fill:var(--ink);stroke:var(--ink);stroke-width:2}
.drawing text.load{font-weight:600}
.drawing .change{stroke:var(--accent)}
.drawing .head.change{fill:var(--accent);stroke:none}
.drawing text.change{fill:var(--accent);stroke:var(--paper);font-weight:600}
.drawing .fan{fill:none;stroke:var(--line);stroke-width:0.8}
.drawing .leader{fill:none;stroke:var(--accent);stroke-width:1;stroke-dasharray:3 3}
.drawing .marker{fill:var(--paper);stroke:var(--accent);stroke-width:2.5}
.drawing .reading{fill:var(--ink);opacity:0.8}
`

package scene

import (
	"strconv"

	"toewright/internal/plot"
)

// Stylesheet returns the rules for the picture of [Markup], beyond those of package plot.
// Its colours are variables of the page that it stands on; a file has them from
// [fileColours]. The curve of the car whose number the picture's class states, such as
// "foremost2", is the strongest.
func Stylesheet() string {
	css := []byte(rules)
	for i := range plot.MaxSeries {
		if i > 0 {
			css = append(css, ',')
		}
		css = append(css, ".foremost"+strconv.Itoa(i)+" .line."+plot.SeriesStyle(i).Class...)
	}
	return string(append(css, "{stroke-width:3}\n"...))
}

// fileColours are those of a file, which is always on white paper.
const fileColours = `:root{--paper:#fff;--sunk:#efece1;--ink:#22303c;--ink-soft:#4d5b67;--line:#8a97a1;--accent:#a8261c;--sheet-font:system-ui,sans-serif}
`

// rules are in the order of the picture: its texts, the car, the charts.
const rules = `.drawing text{font-family:var(--sheet-font);font-size:11px;font-variant-numeric:tabular-nums}
.drawing .heading,.drawing .caption{font-size:12px;letter-spacing:0.02em}
.drawing .heading{font-weight:600}
.drawing .caption{font-size:11px;fill:var(--ink-soft)}
.drawing .tick,.drawing .sense{fill:var(--ink-soft)}
.drawing .readout{font-size:13px;font-weight:600}
.drawing .name{font-size:12px;paint-order:stroke;stroke:var(--paper);stroke-width:4}
.drawing path{vector-effect:non-scaling-stroke}
.drawing .set-ups{fill:none;stroke:var(--ink-soft);stroke-width:1;stroke-dasharray:1.5 2.5}
.drawing .binding{stroke:var(--accent);stroke-width:1.4;stroke-dasharray:5 2}
.drawing .ground{fill:none;stroke:var(--line);stroke-width:1}
.drawing .tyre{fill:none;stroke:var(--ink);stroke-width:1.6}
.drawing .axis{fill:none;stroke:var(--ink-soft);stroke-width:0.8;stroke-dasharray:12 3 2 3}
.drawing .body{fill:var(--sunk);stroke:var(--ink);stroke-width:1.2}
.drawing .solid{stroke-width:1.3}
.drawing .knuckle{fill:var(--paper);stroke:var(--ink);stroke-width:1.7;fill-opacity:0.85}
.drawing .ball{fill:var(--ink)}
.drawing .ghost{fill:none;stroke:var(--line);stroke-width:1;stroke-dasharray:4 3}
.drawing .rim{fill:none;stroke:var(--ink);stroke-width:1}
.drawing .letter{font-size:12px;font-weight:700}
.drawing .pointed{fill:none;stroke:var(--accent);stroke-width:1.5}
.drawing .instant{fill:none;stroke:var(--ink-soft);stroke-width:0.8;stroke-dasharray:8 3 2 3}
.drawing .change{stroke:var(--accent)}
.drawing .head.change{fill:var(--accent);stroke:none}
.drawing text.change{fill:var(--accent);stroke:var(--paper);font-weight:600}
.drawing .fan{fill:none;stroke:var(--line);stroke-width:0.8}
.drawing .leader{fill:none;stroke:var(--ink-soft);stroke-width:1;stroke-dasharray:2 2}
.drawing .marker{fill:var(--paper);stroke:var(--accent);stroke-width:2.5}
.drawing .reading{fill:var(--ink);opacity:0.8}
`

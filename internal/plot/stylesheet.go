package plot

// Paper is what a picture is drawn on.
type Paper uint8

// The papers. Page is for a page that follows the reader's choice of light or dark.
const (
	White Paper = iota
	Light
	Dark
	Page
)

// Stylesheet returns the rules for the classes of this package:
//
//	line s0 .. s8   a curve in the colour and dash of its series
//	mark s0 .. s8   its markers, filled; band s0 .. s8 its band
//	grid zero frame the chart's own lines; target a wanted curve
//	part solid      outlines of parts, open or filled with the paper
//	thin head       dimensions: lines and arrow heads
//	bar             filled bars; paper the ground of a file
//	tick label title texts; figure a number that stands on lines
//
// Sizes of text are not in it: each [Mark] has its own.
func Stylesheet(paper Paper) string {
	css := []byte(rules)
	css = appendVariable(css, "--plot-ink", paper, palette[0].OnLight, palette[0].OnDark)
	css = appendVariable(css, "--plot-paper", paper, paper.light(), DarkPaper)
	for _, s := range palette {
		css = append(css, '.')
		css = append(css, s.Class...)
		css = append(css, "{color:"...)
		css = append(paper.appendColour(css, s.OnLight, s.OnDark), "}\n"...)
		if s.Dash != "" {
			css = append(css, ".line."+s.Class+"{stroke-dasharray:"+s.Dash+"}\n"...)
		}
	}
	return string(css)
}

func appendVariable(css []byte, name string, paper Paper, light, dark Colour) []byte {
	css = append(css, ":root{"+name+":"...)
	return append(paper.appendColour(css, light, dark), "}\n"...)
}

// light returns the colour of the paper where it is not dark.
func (p Paper) light() Colour {
	if p == White {
		return WhitePaper
	}
	return LightPaper
}

func (p Paper) appendColour(css []byte, light, dark Colour) []byte {
	switch p {
	case Page:
		return append(css, "light-dark("+light.Hex()+","+dark.Hex()+")"...)
	case Dark:
		return append(css, dark.Hex()...)
	}
	return append(css, light.Hex()...)
}

// rules are those that are alike for every paper: all colours are variables, or
// that of the series.
const rules = `.line,.target,.grid,.zero,.frame,.part,.thin{fill:none;stroke:var(--plot-ink)}
.line{stroke:currentColor;stroke-width:1.8;stroke-linejoin:round}
.mark{fill:currentColor}
.band{fill:currentColor;opacity:.18}
.target{stroke-width:3;opacity:.45;stroke-linejoin:round}
.grid{stroke-width:.6;opacity:.3}
.zero{stroke-width:1;opacity:.7}
.frame{stroke-width:1}
.part,.solid{stroke-width:1.4;stroke-linejoin:round}
.solid{fill:var(--plot-paper);stroke:var(--plot-ink)}
.thin{stroke-width:.7}
.head,.bar{fill:var(--plot-ink)}
.bar{stroke:var(--plot-paper);stroke-width:1}
.paper{fill:var(--plot-paper)}
text{fill:var(--plot-ink);font-family:system-ui,sans-serif}
.title{font-weight:600}
.figure{paint-order:stroke;stroke:var(--plot-paper);stroke-width:3}
`

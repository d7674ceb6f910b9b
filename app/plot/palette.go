package plot

// MaxSeries is the number of curves that a chart tells apart: the base car and
// eight candidates.
const MaxSeries = 9

// The papers that pictures are drawn on.
var (
	LightPaper = Colour{0xf7, 0xf5, 0xee}
	DarkPaper  = Colour{0x1c, 0x21, 0x26}
	WhitePaper = Colour{0xff, 0xff, 0xff}
)

// Series is how one curve looks: three signs that each tell it from the others, so
// that it is known in colour, with a colour-vision deficiency, and on a photocopy.
type Series struct {
	Class   string // for style sheets: "s0" .. "s8"
	Name    string // of the colour, for those who hear the page
	OnLight Colour // on [LightPaper] and white
	OnDark  Colour // on [DarkPaper]
	Dash    string // SVG stroke-dasharray; empty is a solid line
	Marker  Marker
}

// palette was found by a search: hues were held to the eight names, and the least
// distance between any two colours was made as large as it gets, at once for
// usual sight and for simulated protanopia, deuteranopia and (less weighty, for it
// is rare) tritanopia, with a contrast to the paper of at least 3.15. The test of
// this file holds what was reached.
var palette = [MaxSeries]Series{
	{"s0", "ink", Colour{0x22, 0x30, 0x3c}, Colour{0xdf, 0xe6, 0xea}, "", Disc},
	{"s1", "brick", Colour{0x79, 0x2f, 0x03}, Colour{0xc5, 0x7b, 0x79}, "9 4", Square},
	{"s2", "blue", Colour{0x04, 0x5e, 0xed}, Colour{0x43, 0x62, 0xe2}, "2 3", Up},
	{"s3", "green", Colour{0x42, 0x99, 0x7e}, Colour{0x3e, 0xfb, 0x71}, "10 3 2 3", Diamond},
	{"s4", "violet", Colour{0x55, 0x02, 0x89}, Colour{0x99, 0x8b, 0xf9}, "5 3", Down},
	{"s5", "ochre", Colour{0xa9, 0x86, 0x04}, Colour{0x89, 0x6a, 0x02}, "15 4", Plus},
	{"s6", "magenta", Colour{0xbe, 0x12, 0xa0}, Colour{0xbc, 0x37, 0x93}, "10 3 2 3 2 3", Cross},
	{"s7", "teal", Colour{0x00, 0x5f, 0x67}, Colour{0x76, 0xc1, 0xd1}, "2 7", Star},
	{"s8", "olive", Colour{0x68, 0x6d, 0x2b}, Colour{0xac, 0xb4, 0x02}, "16 3 5 3", Bar},
}

// SeriesStyle returns how series i looks, 0 being the base car. Beyond the last the
// looks begin again.
func SeriesStyle(i int) Series { return palette[(i%MaxSeries+MaxSeries)%MaxSeries] }

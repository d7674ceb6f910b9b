package plot

// MaxSeries is the number of curves that a chart tells apart: the base car and
// eight candidates.
const MaxSeries = 9

// The papers that pictures are drawn on.
var (
	LightPaper = Colour{0xf7, 0xf5, 0xee}
	DarkPaper  = Colour{0x1a, 0x1f, 0x24}
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
// is rare) tritanopia, with a contrast of at least 3.15 to light paper and of 4.5 to
// dark, where thin lines look dimmer. On dark paper all keep off the red pencil of the
// page. The test of this file holds what was reached.
var palette = [MaxSeries]Series{
	{"s0", "ink", Colour{0x1f, 0x2c, 0x38}, Colour{0xe4, 0xe9, 0xec}, "", Disc},
	{"s1", "brick", Colour{0x79, 0x2f, 0x03}, Colour{0xbc, 0x74, 0x69}, "9 4", Square},
	{"s2", "blue", Colour{0x04, 0x5e, 0xed}, Colour{0x88, 0xa2, 0xfe}, "2 3", Up},
	{"s3", "green", Colour{0x42, 0x99, 0x7e}, Colour{0x00, 0xf1, 0x97}, "10 3 2 3", Diamond},
	{"s4", "violet", Colour{0x55, 0x02, 0x89}, Colour{0xa2, 0x65, 0xff}, "5 3", Down},
	{"s5", "ochre", Colour{0xa9, 0x86, 0x04}, Colour{0xbb, 0x9b, 0x0c}, "15 4", Plus},
	{"s6", "magenta", Colour{0xbe, 0x12, 0xa0}, Colour{0xe1, 0x4a, 0xb6}, "10 3 2 3 2 3", Cross},
	{"s7", "teal", Colour{0x00, 0x5f, 0x67}, Colour{0x2c, 0xcb, 0xcc}, "2 7", Star},
	{"s8", "olive", Colour{0x68, 0x6d, 0x2b}, Colour{0xdd, 0xcb, 0x01}, "16 3 5 3", Bar},
}

// SeriesStyle returns how series i looks, 0 being the base car. Beyond the last the
// looks begin again.
func SeriesStyle(i int) Series { return palette[(i%MaxSeries+MaxSeries)%MaxSeries] }

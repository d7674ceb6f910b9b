package plot

// Align is how a text lies to its anchor, as SVG's text-anchor.
type Align uint8

// The ways to lie.
const (
	Start Align = iota
	Middle
	End
)

// String returns the value of the attribute text-anchor.
func (a Align) String() string { return [...]string{"start", "middle", "end"}[min(a, End)] }

// Anchor is the place of a text: a point of its baseline.
type Anchor struct {
	At    Point
	Align Align
	Turn  float64 // degrees clockwise about At
}

// TextWidth estimates the width of a text in a usual sans-serif of the size, in
// the unit of size. Fonts differ by a tenth either way: leave that much room.
func TextWidth(text string, size float64) float64 {
	em := 0.0
	for _, r := range text {
		em += runeWidth(r)
	}
	return em * size
}

func runeWidth(r rune) float64 {
	switch {
	case r == ' ' || r == '.' || r == ',' || r == ':' || r == 'i' || r == 'l' || r == 'j' || r == '|' || r == '\'':
		return 0.28
	case r == 'm' || r == 'w' || r == 'M' || r == 'W' || r == '@' || r == '%':
		return 0.88
	case r >= 'A' && r <= 'Z':
		return 0.68
	case r >= 0x2e80: // East Asian scripts, a full square
		return 1
	}
	return 0.56
}

// upright returns the angle, or its opposite if a text along it stood on its head;
// what is upright on the paper reads from below up, as drawings have it.
func upright(angle float64) float64 {
	switch {
	case angle >= 90:
		return angle - 180
	case angle < -90:
		return angle + 180
	}
	return angle
}

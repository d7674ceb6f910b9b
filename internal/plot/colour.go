package plot

// Colour is an opaque sRGB colour.
type Colour struct{ R, G, B uint8 }

const hexDigits = "0123456789abcdef"

// Hex returns the colour as "#rrggbb".
func (c Colour) Hex() string {
	text := []byte{'#'}
	for _, v := range [...]uint8{c.R, c.G, c.B} {
		text = append(text, hexDigits[v>>4], hexDigits[v&15])
	}
	return string(text)
}

// mixed returns the colour at the fraction t from c to d, in sRGB.
func (c Colour) mixed(d Colour, t float64) Colour {
	part := func(a, b uint8) uint8 { return uint8(mix(float64(a), float64(b), t) + 0.5) }
	return Colour{part(c.R, d.R), part(c.G, d.G), part(c.B, d.B)}
}

package study

// Units are the units of a study's lengths.
type Units string

// The units of lengths.
const (
	Millimetre Units = "mm"
	Inch       Units = "in"
)

// mmPerInch is exact by definition.
const mmPerInch = 25.4

// Millimetres returns the length x, in u, in millimetres.
func (u Units) Millimetres(x float64) float64 { return x * u.scale() }

// FromMillimetres returns the length x, in millimetres, in u.
func (u Units) FromMillimetres(x float64) float64 { return x / u.scale() }

// Convert returns the length x, in u, in the units to.
func (u Units) Convert(x float64, to Units) float64 {
	if u == to {
		return x
	}
	return to.FromMillimetres(u.Millimetres(x))
}

// scale returns the millimetres in one unit.
func (u Units) scale() float64 {
	if u == Inch {
		return mmPerInch
	}
	return 1
}

package number

// Units are the units of a study's lengths.
type Units string

// The units of lengths.
const (
	Millimetre Units = "mm"
	Inch       Units = "in"
)

// An inch is 25.4 mm by definition. The ratio of two whole numbers is used, since
// 25.4 itself is no binary fraction: so 3.5 in is 88.9 mm, not 88.89999999999999.
const (
	mmPerTen  = 254 // millimetres in
	tenInches = 10  // inches
)

// Millimetres returns the length x, in u, in millimetres.
func (u Units) Millimetres(x float64) float64 {
	if u == Inch {
		return x * mmPerTen / tenInches
	}
	return x
}

// FromMillimetres returns the length x, in millimetres, in u.
func (u Units) FromMillimetres(x float64) float64 {
	if u == Inch {
		return x * tenInches / mmPerTen
	}
	return x
}

// Convert returns the length x, in u, in the units to.
func (u Units) Convert(x float64, to Units) float64 {
	if u == to {
		return x
	}
	return to.FromMillimetres(u.Millimetres(x))
}

// Other returns the other of the two units.
func (u Units) Other() Units {
	if u == Inch {
		return Millimetre
	}
	return Inch
}

package number

// Mechanical is a quantity of strength work, in the unit that every file and result has.
// Where lengths are shown in inches the unit of the inch stands beside it.
type Mechanical struct {
	unit, beside             string
	by                       float64 // of the unit in the one beside
	decimals, besideDecimals int
}

// poundForce is in newtons, by definition of the pound (0.45359237 kg) and of standard
// gravity (9.80665 m/s²).
const poundForce = 0.45359237 * 9.80665

// mmPerInch is by definition.
const mmPerInch = float64(mmPerTen) / tenInches

// The quantities.
var (
	Force  = Mechanical{"N", "lbf", poundForce, 1, 1}
	Moment = Mechanical{"N m", "lbf ft", poundForce * 12 * mmPerInch / 1000, 2, 2}
	Stress = Mechanical{"MPa", "psi", poundForce / (mmPerInch * mmPerInch), 1, 0}
	Turn   = Mechanical{"deg", "", 1, 4, 0}
)

// mechanical returns the quantity that is measured in a unit, nil where none is.
func mechanical(unit string) *Mechanical {
	for _, q := range [...]*Mechanical{&Force, &Moment, &Stress} {
		if q.unit == unit {
			return q
		}
	}
	return nil
}

// both reports whether s shows two units.
func (q *Mechanical) both(s Style) bool { return s.Units == Inch && q.beside != "" }

// Unit returns the unit as s shows it: "N", "N (lbf)".
func (q *Mechanical) Unit(s Style) string {
	if !q.both(s) {
		return q.unit
	}
	return q.unit + parenthesised(q.beside)
}

// Number writes x without its unit as s shows it: "837.5", "837.5 (188.3)".
func (q *Mechanical) Number(s Style, x float64) string {
	text := Decimal(x, q.decimals)
	if text == gap || !q.both(s) {
		return text
	}
	return text + parenthesised(Decimal(x/q.by, q.besideDecimals))
}

// Text writes x with its unit as s shows it: "837.5 N", "837.5 N (188.3 lbf)".
func (q *Mechanical) Text(s Style, x float64) string {
	text := Decimal(x, q.decimals) + " " + q.unit
	if !q.both(s) {
		return text
	}
	return text + parenthesised(Decimal(x/q.by, q.besideDecimals)+" "+q.beside)
}

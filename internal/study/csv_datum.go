package study

import (
	"fmt"
	"math"
	"strings"
)

// Datum is how the axes of a table of points lie in those of the car: found by the marks that
// both have.
type Datum struct {
	Common []CommonPoint
	RMS    float64 // of how far they are off, file units

	turn       [3][3]float64
	from, into Vec3 // middle of the marks in the table, and in the car
}

// CommonPoint is a mark of the study that a table has as well.
type CommonPoint struct {
	Name string
	Off  float64 // from where the table, turned and moved, has it; file units
}

// worstDatum is how far marks may be off after a table was turned and moved, mm: more is an
// exchanged name, another unit or a left-handed axis, not the scatter of a tape (common practice).
const worstDatum = 10

// datum finds the axes of a table that has marks of the study among its points; nil where it
// has none, so that its axes are the car's.
func (p *pointParser) datum() (*Datum, error) {
	out := &Datum{}
	var from, into []Vec3
	for i := range p.rows {
		r := &p.rows[i]
		at, ok := p.mark(r)
		if !ok {
			continue
		}
		place, err := p.place(r)
		if err != nil {
			return nil, err
		}
		from, into = append(from, place), append(into, at)
		out.Common = append(out.Common, CommonPoint{Name: r.cell(p.name)})
	}
	if len(from) == 0 {
		return nil, nil
	}
	if !out.solve(from, into) {
		return nil, &CSVError{Line: 1, Message: fmt.Sprintf("%d of the study's marks are in the table, want none, or three and more that do not stand in one line", len(from))}
	}
	for i := range from {
		out.Common[i].Off = distance(out.Moved(from[i]), into[i])
		out.RMS += out.Common[i].Off * out.Common[i].Off / float64(len(from))
	}
	if out.RMS = math.Sqrt(out.RMS); !(p.doc.Units.Millimetres(out.RMS) <= worstDatum) {
		return nil, &CSVError{Line: 1, Message: fmt.Sprintf("marks %s are off by %.1f mm however the table is turned and moved: check their names, the unit, and that x, y and z are right-handed",
			out.names(), p.doc.Units.Millimetres(out.RMS))}
	}
	return out, nil
}

func (d *Datum) names() string {
	var names []string
	for _, c := range d.Common {
		names = append(names, c.Name)
	}
	return strings.Join(names, ", ")
}

// mark returns where the mark stands that a row names; false where it names none.
func (p *pointParser) mark(r *row) (Vec3, bool) {
	if p.doc.Measured == nil {
		return Vec3{}, false
	}
	at, ok := p.doc.Measured.Marks[strings.TrimSpace(r.cell(p.name))]
	return at, ok
}

// Moved returns a place of the table in the car's axes, to a millionth of the unit: what lies
// below is rounding.
func (d *Datum) Moved(v Vec3) Vec3 {
	out := d.into
	for i := range out {
		for k := range v {
			out[i] += d.turn[i][k] * (v[k] - d.from[k])
		}
		out[i] = math.Round(out[i]*1e6) / 1e6
	}
	return out
}

// solve sets the turn and the move by which places come nearest to others, in least squares:
// the turn is the unit quaternion that is the eigenvector of the largest eigenvalue of a matrix
// of their products (Horn 1987, from memory). It returns false for fewer than three places, or
// such as stand in one line.
func (d *Datum) solve(from, into []Vec3) bool {
	n := float64(len(from))
	for i := range from {
		for k := range 3 {
			d.from[k] += from[i][k] / n
			d.into[k] += into[i][k] / n
		}
	}
	var s [3][3]float64
	for i := range from {
		for a := range 3 {
			for b := range 3 {
				s[a][b] += (from[i][a] - d.from[a]) * (into[i][b] - d.into[b])
			}
		}
	}
	m := [4][4]float64{
		{s[0][0] + s[1][1] + s[2][2], s[1][2] - s[2][1], s[2][0] - s[0][2], s[0][1] - s[1][0]},
		{0, s[0][0] - s[1][1] - s[2][2], s[0][1] + s[1][0], s[2][0] + s[0][2]},
		{0, 0, s[1][1] - s[0][0] - s[2][2], s[1][2] + s[2][1]},
		{0, 0, 0, s[2][2] - s[0][0] - s[1][1]},
	}
	values, vectors := symmetric4(m)
	best, second := 0, -1
	for i := range values {
		if values[i] > values[best] {
			best = i
		}
	}
	for i := range values {
		if i != best && (second < 0 || values[i] > values[second]) {
			second = i
		}
	}
	// Of places in one line any turn about it is as good: the two largest are then the same.
	if !(values[best]-values[second] > lineShare*values[best]) {
		return false
	}
	w, x, y, z := vectors[0][best], vectors[1][best], vectors[2][best], vectors[3][best]
	d.turn = [3][3]float64{
		{w*w + x*x - y*y - z*z, 2 * (x*y - w*z), 2 * (x*z + w*y)},
		{2 * (x*y + w*z), w*w - x*x + y*y - z*z, 2 * (y*z - w*x)},
		{2 * (x*z - w*y), 2 * (y*z + w*x), w*w - x*x - y*y + z*z},
	}
	return true
}

// lineShare is the least part of an eigenvalue by which it must be the largest: places a
// hundredth of their length off a line.
const lineShare = 1e-4

// symmetric4 returns the eigenvalues of the symmetric matrix whose upper half is given, and the
// eigenvectors as columns, by Jacobi's rotations.
func symmetric4(a [4][4]float64) (values [4]float64, v [4][4]float64) {
	for i := range 4 {
		v[i][i] = 1
		for k := range i {
			a[i][k] = a[k][i]
		}
	}
	const sweeps = 50 // a handful is enough: each squares what is left beside the diagonal
	for range sweeps {
		for p := range 3 {
			for q := p + 1; q < 4; q++ {
				if a[p][q] == 0 {
					continue
				}
				angle := 0.5 * math.Atan2(2*a[p][q], a[q][q]-a[p][p])
				c, s := math.Cos(angle), math.Sin(angle)
				for k := range 4 {
					a[k][p], a[k][q] = c*a[k][p]-s*a[k][q], s*a[k][p]+c*a[k][q]
				}
				for k := range 4 {
					a[p][k], a[q][k] = c*a[p][k]-s*a[q][k], s*a[p][k]+c*a[q][k]
					v[k][p], v[k][q] = c*v[k][p]-s*v[k][q], s*v[k][p]+c*v[k][q]
				}
			}
		}
	}
	for i := range values {
		values[i] = a[i][i]
	}
	return values, v
}

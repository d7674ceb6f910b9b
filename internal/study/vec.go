package study

// Vec3 is a point or a direction in vehicle axes: x forward, y left, z up. A
// point is in the file's units.
type Vec3 [3]float64

// Mirrored returns v as it stands on the other side of the car.
func (v Vec3) Mirrored() Vec3 { return Vec3{v[0], 0 - v[1], v[2]} }

// Points are hardpoints by the key that parameters know them by, such as
// "lowerBallJoint" or "rods.2.outer".
type Points map[string]Vec3

// Mirrored returns the points as they stand on the other side of the car.
func (p Points) Mirrored() Points {
	m := make(Points, len(p))
	for key, v := range p {
		m[key] = v.Mirrored()
	}
	return m
}

package solver

import (
	"maps"
	"slices"
)

// SetPoints sets the hardpoints of both sides from those of the left one by their names,
// which are those of [Kind.SidePoints]; mm, in the file's static position. The right side
// is the mirror image. It returns an [*InputError] that names a point that is missing, or
// one that the kind does not have, and then sets nothing.
func (d *Design) SetPoints(left map[string]Vec) error {
	var points [2][]Vec
	for _, h := range d.Kind.SidePoints {
		p, ok := left[h.Name]
		if !ok {
			return &InputError{"suspension.left." + h.Name, "is missing"}
		}
		for _, s := range Sides {
			points[s] = append(points[s], s.Mirrored(p))
		}
	}
	for _, name := range slices.Sorted(maps.Keys(left)) {
		if !slices.ContainsFunc(d.Kind.SidePoints, func(h Hardpoint) bool { return h.Name == name }) {
			return &InputError{"suspension.left." + name, "is not a point of a " + d.Kind.Name + "; leave it out"}
		}
	}
	d.Points[Left], d.Points[Right] = points[Left], points[Right]
	return nil
}

package solver

import "slices"

// Mirrored reports whether the right wheel of the design is to the digit the mirror
// image of the left one, both by themselves: straight ahead, level and changed alike,
// they then do the same. How the gear joins them is not looked at.
func (d *Design) Mirrored() bool {
	if d.Kind.CommonPoints != nil || d.Toe[Left] != d.Toe[Right] || d.Camber[Left] != d.Camber[Right] {
		return false
	}
	image := func(left, right Vec) bool { return left == Right.Mirrored(right) }
	return image(d.StudAxis[Left], d.StudAxis[Right]) && slices.EqualFunc(d.Points[Left], d.Points[Right], image)
}

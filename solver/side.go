package solver

// Side is one side of the car, seen by its driver.
type Side uint8

// The two sides of an axle.
const (
	Left Side = iota
	Right
)

// Sides lists both, left first.
var Sides = [2]Side{Left, Right}

// String returns "left" or "right", the words of the study file.
func (s Side) String() string {
	if s == Right {
		return "right"
	}
	return "left"
}

// Mirrored returns a vector of a left corner as it stands on side s, or one of side s as
// it stands on the left. Every corner is solved as a left one, so points of the right
// side pass through it on their way in and out.
func (s Side) Mirrored(v Vec) Vec {
	if s == Right {
		v.Y = -v.Y
	}
	return v
}

// Selection says which sides a change applies to.
type Selection uint8

// What a parameter key without, or with, a trailing @left or @right selects.
const (
	BothSides Selection = iota
	LeftOnly
	RightOnly
)

// Includes reports whether s is one of the selected sides.
func (c Selection) Includes(s Side) bool {
	return c == BothSides || (c == LeftOnly) == (s == Left)
}

// Overlaps reports whether a side is of both selections.
func (c Selection) Overlaps(o Selection) bool { return c == o || c == BothSides || o == BothSides }

// Without returns the selection less the sides of another; ok is false where none are
// left.
func (c Selection) Without(o Selection) (rest Selection, ok bool) {
	switch {
	case !c.Overlaps(o):
		return c, true
	case c != BothSides || o == BothSides:
		return c, false
	case o == LeftOnly:
		return RightOnly, true
	}
	return LeftOnly, true
}

// Suffix returns "", "@left" or "@right", as a parameter key ends.
func (c Selection) Suffix() string {
	return [...]string{"", "@left", "@right"}[c]
}

package study

// Side names a side of the car, as seen by its driver.
type Side string

// The sides.
const (
	Left  Side = "left"
	Right Side = "right"
)

// sides lists both, left first.
var sides = [2]Side{Left, Right}

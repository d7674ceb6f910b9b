package model

// mapSizes are the sizes that a map may have while the car is being changed.
var mapSizes = [...]int{16, 32, FullMap}

// FullMap is the size of a map that is done.
const FullMap = 64

// liveTime is the longest, in seconds, that a map may take while the car is being
// changed: twelve pictures in a second are seen as one that moves.
const liveTime = 0.08

// MapPace learns how fast maps come. The zero pace begins with the coarsest.
type MapPace struct {
	perCell float64 // seconds; 0 until the first map has come
}

// Took takes in how many seconds a map took. The latest counts as much as all before it:
// a phone slows down and a tab wakes up.
func (p *MapPace) Took(size int, seconds float64) {
	now := seconds / float64(size*size)
	if p.perCell != 0 {
		now = (now + p.perCell) / 2
	}
	p.perCell = now
}

// Live returns the size of a map that keeps up with a hand: the finest that comes within
// [liveTime].
func (p *MapPace) Live() int {
	size := mapSizes[0]
	for _, s := range mapSizes[1:] {
		if p.perCell > 0 && float64(s*s)*p.perCell <= liveTime {
			size = s
		}
	}
	return size
}

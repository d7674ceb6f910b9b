package strictjson

// Limits bound what [Parse] takes in. A zero field sets no limit.
type Limits struct {
	Bytes     int     // Bytes is the longest input.
	Depth     int     // Depth is the deepest nesting of lists and objects.
	Values    int     // Values is the largest count of values of all kinds.
	Magnitude float64 // Magnitude is the largest absolute value of a number.
}

// exceeds reports whether n is over a limit, where 0 means none.
func exceeds(n, limit int) bool { return limit > 0 && n > limit }

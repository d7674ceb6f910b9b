package plot

import (
	"math"
	"regexp"
	"strconv"
	"strings"
)

// rounding is the most by which a coordinate of a path differs from the number it
// stands for: half of 0.01, and a hair for the float64 itself.
const rounding = 0.005 + 1e-9

// failer is what these helpers need of a test: both *testing.T and *rapid.T have it.
type failer interface {
	Helper()
	Fatalf(format string, args ...any)
}

// command is one command of path data with its numbers.
type command struct {
	name    byte
	numbers []float64
}

// end returns the point that the command leads to.
func (c command) end() Point {
	n := len(c.numbers)
	return Point{c.numbers[n-2], c.numbers[n-1]}
}

var (
	commands = regexp.MustCompile(`[MLCAZ][^MLCAZ]*`)
	counts   = map[byte]int{'M': 2, 'L': 2, 'C': 6, 'A': 7, 'Z': 0}
)

// parse reads path data back; anything but the commands that this package writes,
// each with all its numbers, fails the test.
func parse(t failer, p Path) []command {
	t.Helper()
	var list []command
	read := 0
	for _, text := range commands.FindAllString(p.String(), -1) {
		c := command{name: text[0]}
		for _, field := range strings.Fields(text[1:]) {
			v, err := strconv.ParseFloat(field, 64)
			if err != nil {
				t.Fatalf("path %q: %v", p, err)
			}
			c.numbers = append(c.numbers, v)
		}
		if len(c.numbers) != counts[c.name] {
			t.Fatalf("path %q: %q has %d numbers, want %d", p, text, len(c.numbers), counts[c.name])
		}
		read += len(text)
		list = append(list, c)
	}
	if read != len(p) {
		t.Fatalf("path %q: read %d bytes of %d", p, read, len(p))
	}
	if len(list) > 0 && list[0].name != 'M' {
		t.Fatalf("path %q does not begin with M", p)
	}
	return list
}

// corners returns every point of a path, control points included.
func corners(t failer, p Path) []Point {
	t.Helper()
	var points []Point
	for _, c := range parse(t, p) {
		numbers := c.numbers
		if c.name == 'A' {
			numbers = numbers[5:]
		}
		for i := 0; i+1 < len(numbers); i += 2 {
			points = append(points, Point{numbers[i], numbers[i+1]})
		}
	}
	return points
}

// count returns how often a command occurs.
func count(p Path, name byte) int { return strings.Count(p.String(), string(name)) }

// near reports whether got is within tolerance of want; a NaN is not.
func near(got, want, tolerance float64) bool { return math.Abs(got-want) <= tolerance }

// nearPoint reports whether got is within tolerance of want.
func nearPoint(got, want Point, tolerance float64) bool {
	return got.Sub(want).Length() <= tolerance
}

// wantWithin fails the test where the path leaves the rectangle.
func wantWithin(t failer, p Path, r Rect) {
	t.Helper()
	for _, q := range corners(t, p) {
		if !r.Inset(-rounding, -rounding, -rounding, -rounding).Contains(q) {
			t.Fatalf("point %v of %q is outside %v", q, p, r)
		}
	}
}

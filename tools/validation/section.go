package validation

import (
	"fmt"
	"math"
	"strings"
)

// section returns the reference as a section of the page.
func (r *Reference) section(cs []Claim) string {
	var b strings.Builder
	fmt.Fprintf(&b, "\n## %s\n\n%s\n\n| Figure | Unit | Reference | Ours | Difference | Limit |\n| --- | --- | ---: | ---: | ---: | ---: |\n", r.Name, r.Source)
	for _, c := range cs {
		n := c.decimals()
		fmt.Fprintf(&b, "| %s | %s | %.*f | %.*f | %s | %.0e |\n", c.Figure, c.Unit, n, unsigned(c.Want), n, unsigned(round(c.Got, n)), atMost(c.Got-c.Want), c.Limit)
	}
	return b.String()
}

// decimals returns how many places the page gives: one beyond the limit.
func (c *Claim) decimals() int {
	return max(0, int(math.Ceil(-math.Log10(c.Limit)+1e-9)))
}

func round(x float64, decimals int) float64 {
	k := math.Pow(10, float64(decimals))
	return math.Round(x*k) / k
}

// unsigned returns x, and 0 for -0.
func unsigned(x float64) float64 { return x + 0 }

// finest is the least difference that the page tells from none.
const finest = -12

// atMost returns the power of ten that d does not exceed.
func atMost(d float64) string {
	if d = math.Abs(d); d <= math.Pow(10, finest) {
		return fmt.Sprintf("≤ 1e%d", finest)
	}
	return fmt.Sprintf("≤ 1e%d", int(math.Ceil(math.Log10(d))))
}

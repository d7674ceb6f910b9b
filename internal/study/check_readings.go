package study

import (
	"cmp"
	"fmt"
	"math"
	"slices"
)

// checkReadings looks for slips among the readings of each run.
func checkReadings(d *Document) []Finding {
	var found []Finding
	for path, r := range d.Runs() {
		found = append(found, r.checkTravels(path+".values")...)
		found = append(found, r.checkJump(path+".values")...)
	}
	return found
}

// checkTravels looks for one travel read twice in a run.
func (r *Reading) checkTravels(path string) []Finding {
	seen := map[float64]int{}
	var found []Finding
	for i, v := range r.Values {
		if j, ok := seen[v[0]]; ok {
			found = append(found, Finding{
				fmt.Sprintf("%s.%d", path, i), Warning, fmt.Sprintf("travel %g stands in row %d already", v[0], j+1),
				"correct the travel, or give a second run an entry of its own",
			})
		}
		seen[v[0]] = i
	}
	return found
}

// Constants of the search for jumps.
const (
	// fewestForJump is the least readings that a jump is looked for in: with fewer a
	// bend of the curve looks like one.
	fewestForJump = 5
	// jumpFactor is how many times the usual bend of the run, or the repeatability,
	// a reading must lie off the line of its neighbours.
	jumpFactor = 6
	// usualRepeatability stands in for one that is not stated, as a part of the
	// base: 0.1 mm on 300 mm, twice what a careful hand reads (common practice).
	usualRepeatability = 1.0 / 3000
)

// checkJump looks for the one reading of a run that jumps most off the line
// between its neighbours, and for what would put it back.
func (r *Reading) checkJump(path string) []Finding {
	rows := r.sortedRows()
	if len(rows) < fewestForJump {
		return nil
	}
	worst, usual := 0, r.scatter()
	bends := make([]float64, 0, len(rows)-2)
	for i := 1; i < len(rows)-1; i++ {
		bends = append(bends, math.Abs(r.bend(rows, i, r.Values[rows[i]][1])))
		if bends[i-1] > bends[worst] {
			worst = i - 1
		}
	}
	// A slip bends the rows beside it too, so the usual bend is the lower quartile.
	limit := jumpFactor * math.Max(usual, lowerQuartile(bends))
	if !(bends[worst] > limit) {
		return nil
	}
	row := rows[worst+1]
	return []Finding{{
		fmt.Sprintf("%s.%d", path, row), Warning,
		fmt.Sprintf("the reading %g at travel %g jumps off the line of its neighbours", r.Values[row][1], r.Values[row][0]),
		r.explain(rows, worst+1, limit),
	}}
}

// sortedRows lists the rows of a run by travel.
func (r *Reading) sortedRows() []int {
	rows := make([]int, len(r.Values))
	for i := range rows {
		rows[i] = i
	}
	slices.SortStableFunc(rows, func(a, b int) int { return cmp.Compare(r.Values[a][0], r.Values[b][0]) })
	return rows
}

// scatter returns one standard deviation of a reading, stated or usual.
func (r *Reading) scatter() float64 {
	if r.Repeatability > 0 {
		return r.Repeatability
	}
	return r.Base * usualRepeatability
}

// bend returns how far a reading at the i-th travel lies off the straight line
// between its two neighbours.
func (r *Reading) bend(rows []int, i int, reading float64) float64 {
	a, b, v := r.Values[rows[i-1]], r.Values[rows[i+1]], r.Values[rows[i]]
	if a[0] == b[0] {
		return 0
	}
	return reading - a[1] - (b[1]-a[1])*(v[0]-a[0])/(b[0]-a[0])
}

// lowerQuartile returns the value that a quarter of xs does not exceed.
func lowerQuartile(xs []float64) float64 {
	sorted := slices.Sorted(slices.Values(xs))
	return sorted[len(sorted)/4]
}

// slips are what makes a wrong number of a right one, by the factor that mends it.
var slips = []struct {
	factor float64
	words  string
}{
	{-1, "is the sign reversed?"},
	{0.1, "is a digit too many?"},
	{10, "is a decimal point too early?"},
	{1 / 25.4, "was it read in mm?"},
	{25.4, "was it read in inches?"},
}

// explain says which slip would put a reading back on its line.
func (r *Reading) explain(rows []int, i int, limit float64) string {
	for _, s := range slips {
		if mended := r.Values[rows[i]][1] * s.factor; math.Abs(r.bend(rows, i, mended)) <= limit {
			return fmt.Sprintf("%s Then it would be %.4g", s.words, mended)
		}
	}
	return "read it again"
}

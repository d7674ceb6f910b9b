package solver_test

import (
	"fmt"
	"math"
	"testing"

	"toewright/solver"
)

const (
	rillSensitivitySource = "The textbook double wishbone above, each coordinate moved by 0.1 mm either way, static toe re-set by the rod: recomputed. " +
		"Change per mm, y outboard. Sums are for all 24 coordinates moved by 0.5 mm, at random and at worst."
	rillShiftedSource = "The textbook double wishbone above with an invented shift of its tie rod: inner ball (-150, 381.5, -36), outer ball (-137, 690, -89.5) mm; " +
		"toe 0 re-set by the rod. Recomputed."
)

var sensitivityReferences = []reference{
	{"Textbook double wishbone: what each coordinate does", rillSensitivitySource, rillSensitivity},
	{"Textbook double wishbone: tie rod shifted", rillShiftedSource, rillShifted},
}

// rillShares are the changes per mm of the slope, (deg/m)/mm, and of the toe at
// -50 and +50 mm, deg/mm.
var rillShares = []struct {
	key  string
	want [3]float64
}{
	{"upperFrontPivot.x", [3]float64{+0.031239, -0.0029575, +0.0005433}},
	{"upperFrontPivot.y", [3]float64{-0.039144, +0.0059908, -0.0003051}},
	{"upperFrontPivot.z", [3]float64{-0.208564, +0.0197457, -0.0036276}},
	{"upperRearPivot.x", [3]float64{+0.011274, +0.0006026, +0.0014720}},
	{"upperRearPivot.y", [3]float64{-0.014127, -0.0012207, -0.0008264}},
	{"upperRearPivot.z", [3]float64{-0.075272, -0.0040233, -0.0098274}},
	{"upperBallJoint.x", [3]float64{-0.054995, +0.0037660, -0.0020711}},
	{"upperBallJoint.y", [3]float64{+0.055166, -0.0053309, +0.0011340}},
	{"upperBallJoint.z", [3]float64{+0.310073, -0.0187685, +0.0134543}},
	{"lowerFrontPivot.x", [3]float64{-0.015703, +0.0006837, -0.0008786}},
	{"lowerFrontPivot.y", [3]float64{-0.059818, +0.0038401, -0.0018212}},
	{"lowerFrontPivot.z", [3]float64{-0.447536, +0.0194864, -0.0250407}},
	{"lowerRearPivot.x", [3]float64{-0.013687, +0.0009010, -0.0005315}},
	{"lowerRearPivot.y", [3]float64{-0.052140, +0.0050605, -0.0011017}},
	{"lowerRearPivot.z", [3]float64{-0.390087, +0.0256789, -0.0151483}},
	{"lowerBallJoint.x", [3]float64{-0.011327, +0.0023140, +0.0007555}},
	{"lowerBallJoint.y", [3]float64{+0.121343, -0.0108329, +0.0029497}},
	{"lowerBallJoint.z", [3]float64{+0.869689, -0.0489585, +0.0402404}},
	{"tieRodInner.x", [3]float64{-0.000214, +0.0001578, +0.0000989}},
	{"tieRodInner.y", [3]float64{+0.200777, -0.0165322, +0.0051049}},
	{"tieRodInner.z", [3]float64{+1.244763, -0.0683330, +0.0591310}},
	{"tieRodOuter.x", [3]float64{+0.054921, -0.0055817, +0.0006733}},
	{"tieRodOuter.y", [3]float64{-0.212475, +0.0190911, -0.0051370}},
	{"tieRodOuter.z", [3]float64{-1.303067, +0.0751700, -0.0591825}},
}

// shareNames are the three figures, their units and the limits that the digits
// printed allow.
var shareNames = [3]struct {
	name, unit string
	limit      float64
}{{"slope", "(deg/m)/mm", 1e-6}, {"toe at -50", "deg/mm", 1e-7}, {"toe at +50", "deg/mm", 1e-7}}

func rillSensitivity(t *testing.T) []claim {
	var cs []claim
	var squares, sums [3]float64
	heights := 0.0
	for _, row := range rillShares {
		got := rillShare(t, row.key)
		for k, n := range shareNames {
			cs = append(cs, claim{row.key + ", " + n.name, n.unit, row.want[k], got[k], n.limit})
			squares[k] += got[k] * got[k]
			sums[k] += math.Abs(got[k])
		}
		if row.key[len(row.key)-1] == 'z' {
			heights += got[0]
		}
	}
	rss, worst := [3]float64{1.074768, 0.062122, 0.049604}, [3]float64{2.898701, 0.182514, 0.125528}
	for k, n := range shareNames {
		unit := n.unit[:len(n.unit)-len("/mm")]
		cs = append(cs,
			claim{"all by 0.5 mm at random, " + n.name, unit, rss[k], 0.5 * math.Sqrt(squares[k]), 1e-6},
			claim{"all by 0.5 mm at worst, " + n.name, unit, worst[k], 0.5 * sums[k], 2e-6})
	}
	return append(cs, claim{"all joints raised alike, slope", "(deg/m)/mm", 0, heights, 1e-6})
}

// rillShare returns the changes per mm of the textbook car's slope and toes by a
// coordinate, by central differences.
func rillShare(t *testing.T, key string) [3]float64 {
	const h = 0.1
	up, down := rillFigures(t, map[string]float64{key: h}), rillFigures(t, map[string]float64{key: -h})
	for k := range up {
		up[k] = (up[k] - down[k]) / (2 * h)
	}
	return up
}

func rillFigures(t *testing.T, changes map[string]float64) [3]float64 {
	x := assembled(t, rillDesign(t), changes)
	ps := swept(t, x, solver.SweepInput{Travels: []float64{-50, 0, 50}, Instant: true})[solver.Left].Positions
	return [3]float64{degPerMetre(ps[1].Instant.ToeRate), ps[0].Toe.Degrees(), ps[2].Toe.Degrees()}
}

func rillShifted(t *testing.T) []claim {
	x := assembled(t, rillDesign(t), map[string]float64{"tieRodInner.y": 1.5, "tieRodInner.z": 2, "tieRodOuter.z": -1.5})
	in := solver.SweepInput{Instant: true}
	in.Travels, _ = solver.Grid(60, 60, 10)
	ps := swept(t, x, in)[solver.Left].Positions
	var cs []claim
	for i, want := range []float64{
		-0.536847493, -0.428510710, -0.329754517, -0.238783539, -0.154199525, -0.074898554, 0,
		+0.071203921, +0.139284850, +0.204705526, +0.267840380, +0.328991383, +0.388400416,
	} {
		cs = append(cs, claim{fmt.Sprintf("toe at %+g mm", ps[i].Travel), "deg", want, ps[i].Toe.Degrees(), textbookAngle})
	}
	return append(cs, claim{"toe slope at 0", "deg/m", 7.294565997, degPerMetre(ps[6].Instant.ToeRate), textbookAngle})
}

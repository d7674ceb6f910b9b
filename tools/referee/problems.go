package referee

import (
	"fmt"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"toewright/internal/study"
	"toewright/optimize"
	"toewright/solver"
)

// Problem is one search that ours and the referee's methods all solve.
type Problem struct {
	Name   string
	Search *optimize.ToeSearch
}

// ranges are the parameters that problems free, in the order in which they join,
// and how far each may go either way, mm.
var ranges = []struct {
	key  string
	half float64
}{
	{"tieRodOuterHeight", 25},
	{"tieRodInnerHeight", 15},
	{"steeringArmLength", 12},
	{"tieRodInnerLateral", 20},
	{"steeringArmOffset", 10},
	{"lowerBallJointHeight", 12},
	{"upperBallJointHeight", 12},
}

// limitRoom is how far a limited length may go from the base car's, mm: little
// enough to hold back most searches.
const limitRoom = 4

// Problems returns searches on the studies of a folder: of each three of unlike
// numbers of variables, from 1 to 7, least squares and worst position, every third
// with limits on the tie rod's and the arm's length.
func Problems(dir string) ([]Problem, error) {
	files, err := filepath.Glob(filepath.Join(dir, "*.json"))
	if err != nil {
		return nil, err
	}
	slices.Sort(files)
	var out []Problem
	for i, file := range files {
		for k, n := range [3]int{1 + i%3, 3 + i%2, 5 + i%3} {
			p, err := newProblem(file, n, optimize.Measure((i+k)%2), (i+k)%3 == 0)
			if err != nil {
				return nil, fmt.Errorf("%s: %w", file, err)
			}
			out = append(out, *p)
		}
	}
	return out, nil
}

func newProblem(file string, variables int, m optimize.Measure, limited bool) (*Problem, error) {
	data, err := os.ReadFile(file)
	if err != nil {
		return nil, err
	}
	doc, err := study.Decode(data)
	if err != nil {
		return nil, err
	}
	design, err := doc.Design()
	if err != nil {
		return nil, err
	}
	s := &optimize.ToeSearch{Measure: m, Judge: solver.LeftOnly}
	if s.Base, err = solver.NewAssembler(design); err != nil {
		return nil, err
	}
	w := doc.Window()
	mm := doc.Units.Millimetres
	if s.Travels, err = solver.Grid(mm(w.Bump), mm(w.Droop), mm(w.Step)); err != nil {
		return nil, err
	}
	for _, r := range ranges {
		p, sides, err := solver.FindParameter(design, r.key)
		if err == nil && len(s.Free) < variables {
			s.Free = append(s.Free, optimize.Free{Parameter: p, Sides: sides, Min: -r.half, Max: r.half})
		}
	}
	name := fmt.Sprintf("%s, %d variables, %s", strings.TrimSuffix(filepath.Base(file), ".json"), len(s.Free), m)
	if limited {
		name += ", limits"
		if s.Limits, err = lengthLimits(s.Base); err != nil {
			return nil, err
		}
	}
	return &Problem{name, s}, nil
}

// lengthLimits keep the tie rod and the arm near the base car's lengths.
func lengthLimits(base *solver.Assembler) ([]optimize.Limit, error) {
	car, err := base.Assemble(nil, solver.HoldAll)
	if err != nil {
		return nil, err
	}
	about := func(name string, of func(*solver.Axle) float64) optimize.Limit {
		was := of(car)
		return optimize.Limit{
			Name: name, Scale: 1, Min: was - limitRoom, Max: was + limitRoom/2,
			Of: func(x *solver.Axle, _ *solver.Workspace) float64 { return of(x) },
		}
	}
	list := []optimize.Limit{
		about("tie rod length", func(x *solver.Axle) float64 { return x.TieRodLength(solver.Left) }),
		about("steering arm length", func(x *solver.Axle) float64 { return x.SteeringArm(solver.Left) }),
	}
	return slices.DeleteFunc(list, func(l optimize.Limit) bool { return math.IsNaN(l.Min) }), nil
}

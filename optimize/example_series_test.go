package optimize_test

import (
	"context"
	"fmt"

	"toewright/optimize"
	"toewright/solver"
)

// judgedCoupe returns the coupe and what its left wheel is judged by: 50 mm of bump and
// droop.
func judgedCoupe() (optimize.Judge, error) {
	d, err := coupe()
	if err != nil {
		return optimize.Judge{}, err
	}
	base, err := solver.NewAssembler(d)
	if err != nil {
		return optimize.Judge{}, err
	}
	travels, err := solver.Grid(50, 50, 10)
	return optimize.Judge{Base: base, Hold: solver.HoldAll, Travels: travels, Sides: solver.LeftOnly}, err
}

// How many cars of a series keep their toe change within 0.15 deg, where the heights of
// the tie rod's balls are within 1 and 2 mm of the drawing, and which height matters more?
func ExampleSeries() {
	judge, err := judgedCoupe()
	if err != nil {
		fmt.Println(err)
		return
	}
	design := judge.Base.Design()
	lower, err := solver.NewChange(design, "tieRodOuterHeight", -11.6)
	if err != nil {
		fmt.Println(err)
		return
	}
	series := &optimize.Series{Judge: judge, Changes: []solver.Change{lower}, Limit: solver.Deg(0.15), Measure: optimize.Peak, Seed: 1}
	for i, key := range []string{"tieRodOuter.z", "tieRodInner.z"} {
		p, sides, err := solver.FindParameter(design, key)
		if err != nil {
			fmt.Println(err)
			return
		}
		series.Tolerances = append(series.Tolerances, optimize.Tolerance{
			Parameter: p, Sides: sides, Distribution: optimize.Distribution{Shape: optimize.Uniform, Spread: []float64{1, 2}[i]},
		})
	}
	spread, err := series.Propagate()
	if err != nil {
		fmt.Println(err)
		return
	}
	made, err := series.Count(context.Background(), spread, optimize.Span{End: 2000}, optimize.Parallel{})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, k := range spread.Ranking() {
		fmt.Printf("%s: %.0f %% of the variance\n", series.Tolerances[k].Key(), 100*spread.Shares[k])
	}
	share, _, _ := made.Yield()
	fmt.Printf("%.0f %% of %d cars pass\n", 100*share, made.Cars)
	// Output:
	// tieRodInner.z: 79 % of the variance
	// tieRodOuter.z: 21 % of the variance
	// 81 % of 2000 cars pass
}

// Which of two spacers and two arms give the least toe change, and which combinations are
// worth their price?
func ExampleShelf() {
	judge, err := judgedCoupe()
	if err != nil {
		fmt.Println(err)
		return
	}
	part := func(name string, price float64, key string, value float64) optimize.Part {
		c, err := solver.NewChange(judge.Base.Design(), key, value)
		if err != nil {
			fmt.Println(err)
		}
		return optimize.Part{Name: name, Price: price, Changes: []solver.Change{c}}
	}
	shelf := &optimize.Shelf{Judge: judge, Measure: optimize.Peak, Most: 1, Slots: []optimize.Slot{
		{Name: "spacer", Parts: []optimize.Part{part("8 mm", 5, "tieRodOuterHeight", -8), part("12 mm", 6, "tieRodOuterHeight", -12)}},
		{Name: "arm", Parts: []optimize.Part{part("short", 90, "steeringArmLength", -10), part("long", 95, "steeringArmLength", 10)}},
	}}
	n, err := shelf.Combinations()
	if err != nil {
		fmt.Println(err)
		return
	}
	choices, err := shelf.Try(context.Background(), optimize.Span{End: n}, optimize.Parallel{})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, c := range choices.Front {
		fmt.Printf("%.0f:", c.Price)
		for slot, k := range shelf.Parts(c.Number) {
			if k >= 0 {
				fmt.Printf(" %s %s,", shelf.Slots[slot].Name, shelf.Slots[slot].Parts[k].Name)
			}
		}
		fmt.Printf(" peak %.3f deg\n", c.Figures.Peak.Degrees())
	}
	// Output:
	// 0: peak 0.893 deg
	// 5: spacer 8 mm, peak 0.306 deg
	// 6: spacer 12 mm, peak 0.038 deg
}

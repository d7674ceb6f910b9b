package optimize_test

import (
	"context"
	"fmt"
	"log"

	"toewright/optimize"
	"toewright/solver"
)

// measuredCar is an invented double wishbone with a rack behind the axle, as it
// was taped on the shop floor.
func measuredCar() *solver.Assembler {
	kind, err := solver.KindByName("double-wishbone")
	if err != nil {
		log.Fatal(err)
	}
	d := &solver.Design{Kind: kind, Gear: solver.Gear{Kind: solver.Rack, Axis: solver.Vec{Y: 1}}, TyreRadius: 305}
	for _, p := range []solver.Vec{
		{X: 140, Y: 380, Z: 210}, {X: -160, Y: 380, Z: 205}, {X: 5, Y: 700, Z: 190}, // lower arm
		{X: 100, Y: 430, Z: 470}, {X: -120, Y: 430, Z: 455}, {X: -15, Y: 670, Z: 450}, // upper arm
		{X: -120, Y: 680, Z: 230}, {X: -110, Y: 350, Z: 240}, // tie rod, outer and inner
		{X: 0, Y: 760, Z: 305}, // wheel centre
	} {
		d.Points[solver.Left] = append(d.Points[solver.Left], p)
		p.Y = -p.Y
		d.Points[solver.Right] = append(d.Points[solver.Right], p)
	}
	base, err := solver.NewAssembler(d)
	if err != nil {
		log.Fatal(err)
	}
	return base
}

// Two runs of a gauge, without spacers and with four of 1.5 mm below the steering
// arm, say which height of the ball is best, how sure that is, and what to do.
func ExampleFitCar() {
	base := measuredCar()
	height, _, err := solver.FindParameter(base.Design(), "tieRodOuterHeight")
	if err != nil {
		log.Fatal(err)
	}
	spacers := []solver.Change{{Parameter: height, Value: -6}}
	fit, err := optimize.FitCar(context.Background(), &optimize.GaugeFit{
		Base: base,
		Sets: []optimize.ReadingSet{
			{Side: solver.Left, Gauge: optimize.Indicators, Base: 300, Repeatability: 0.05, Readings: []optimize.Reading{
				{-50, 10.81}, {-30, 7.84}, {-10, 5.36}, {10, 3.26}, {30, 1.59}, {50, 0.51},
			}},
			{Side: solver.Left, Gauge: optimize.Indicators, Base: 300, Repeatability: 0.05, Changes: spacers, Readings: []optimize.Reading{
				{-50, 8.56}, {-30, 6.37}, {-10, 4.83}, {10, 3.62}, {30, 2.96}, {50, 2.48},
			}},
		},
	})
	if err != nil {
		log.Fatal(err)
	}
	fmt.Printf("chi-square %.1f of %d, %d outliers\n", fit.ChiSquare, fit.Freedom, len(fit.Outliers))
	advice, err := fit.Advise(&optimize.AdviceRequest{
		Parameter: height, Step: 1.5, Min: -30, Max: 30,
		Window: optimize.Judge{Travels: []float64{-50, -25, 0, 25, 50}},
	})
	if err != nil {
		log.Fatal(err)
	}
	a := advice[0]
	fmt.Printf("%s: best %.1f mm (%.1f to %.1f): %.0f spacers more\n", a.Sides[0], a.Best, a.Low, a.High, (a.Fitted-a.Value)/1.5)
	fmt.Printf("screw the tie rod out by %.2f mm\n", a.Tie)
	// Output:
	// chi-square 12.7 of 10, 0 outliers
	// left: best -14.5 mm (-14.8 to -14.1): 6 spacers more
	// screw the tie rod out by 0.47 mm
}

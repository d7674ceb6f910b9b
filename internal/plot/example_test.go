package plot_test

import (
	"fmt"
	"math"

	"toewright/internal/plot"
)

// A toe curve beside its wheel: travel upward, toe sideways.
func ExampleFrame_AppendMonotone() {
	toe := []float64{-0.2, 0, 0.1}
	travel := []float64{-50, 0, 50}
	frame := plot.NewFrame(plot.Box(0, 0, 120, 200), plot.Domain{Low: -0.3, High: 0.3}, plot.Domain{Low: -50, High: 50})
	fmt.Println(frame.AppendMonotone(nil, plot.Vertical, toe, travel))
	// Output: M20 200C35 166.67 50 133.33 60 100C70 66.67 75 33.33 80 0
}

func ExampleFractionTicks() {
	for _, tick := range plot.FractionTicks(nil, plot.Domain{Low: -0.125, High: 0.125}, 5) {
		fmt.Print(tick.Label, "  ")
	}
	// Output: −1/8  −1/16  0  1/16  1/8
}

// The drop of a ball as the forge shop reads it, with the line at x = -40.
func ExampleDimension_Vertical() {
	var d plot.Dimension
	d.Vertical(plot.Point{X: 0, Y: 0}, plot.Point{X: 20, Y: 100}, -40, plot.TextWidth("50.0", 10), 10)
	fmt.Println(d.Lines)
	fmt.Println(d.Text.At, d.Text.Align, d.Text.Turn)
	// Output:
	// M-2.5 0L-43.5 0M17.5 100L-43.5 100M-40 0L-40 100
	// {-42.5 50} middle -90
}

// What to draw of a projected wheel: its outline from behind, leaning by camber.
func ExampleProjection_AppendTyre() {
	view := plot.Projection{View: plot.Behind, Scale: 0.5}
	wheel := plot.Wheel{Axis: plot.Vec{Y: math.Cos(0.02), Z: math.Sin(0.02)}, Radius: 300, Width: 200}
	fmt.Println(view.AppendTyre(nil, wheel))
	// Output: M-52.99 148.97A0 150 -178.85 0 1 -46.99 -150.97L52.99 -148.97A0 150 -178.85 0 1 46.99 150.97Z
}

package ui

import (
	"fmt"
	"slices"
	"strconv"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"toewright/app/model"
	"toewright/internal/number"
	"toewright/solver"
)

// target states the curve that is wanted.
func (f *find) target() app.UI {
	kind := model.KindOfTarget(f.search())
	return app.Section().Class("block").Body(
		app.H2().Body(explain("Target", aboutTarget)),
		choices("target", "Toe change wanted", strconv.Itoa(int(kind)), []choice{
			{"0", "flat"}, {"1", "a slope"}, {"2", "by points"}, {"3", "as another car"},
		}, f.setTarget),
		app.If(kind == model.SlopeTarget, func() app.UI { return f.slope() }),
		app.If(kind == model.PointsTarget, func() app.UI { return f.points() }),
		app.If(kind == model.CarTarget, func() app.UI { return f.targetCar() }),
		f.pencil(),
	)
}

// pencil lets the user draw the target on the chart.
func (f *find) pencil() app.UI {
	drawing := f.Bench.Desk.View.Drawing
	text := "Draw it on the chart"
	if drawing {
		text = "Done drawing"
	}
	return app.Button().Type("button").ID("draw").Text(text).Aria("pressed", drawing).OnClick(func(ctx app.Context, _ app.Event) {
		f.Bench.Desk.View.Drawing = !f.Bench.Desk.View.Drawing
		f.Bench.Changed(ctx)
	})
}

func (f *find) setTarget(ctx app.Context, value string) {
	kind, _ := strconv.Atoi(value) // the values are our own
	f.Bench.edit(ctx, func() error { return f.Bench.session().SetTarget(model.TargetKind(kind)) })
}

// targetCar is the choice of the car whose curve is wanted.
func (f *find) targetCar() app.UI {
	car := strconv.Itoa(f.Bench.session().TargetCar())
	list := yardstickChoices(f.Bench.cars())
	if car == "-1" {
		list = append([]choice{{car, "a car that is gone: choose another"}}, list...)
	}
	return menu("target-car", "The curve of", car, list, func(ctx app.Context, value string) {
		if i, err := strconv.Atoi(value); err == nil && i >= 0 {
			f.Bench.edit(ctx, func() error { return f.Bench.session().SetTargetCar(i) })
		}
	})
}

// slope is the field of a target that is a slope.
func (f *find) slope() app.UI {
	d := f.Bench.document()
	return &field{
		ID: "slope", Label: "Toe change, toe-in in bump positive", Unit: "deg/" + string(d.Units),
		Value: strconv.FormatFloat(model.Slope(f.search()), 'g', 4, 64),
		Set: func(ctx app.Context, text string) error {
			x, err := number.ParseDegrees(text)
			if err != nil {
				return err
			}
			return f.Bench.edit(ctx, func() error { return f.Bench.session().SetSlope(x) })
		},
	}
}

// points are the fields of a target that is given by points.
func (f *find) points() app.UI {
	points := f.search().Target
	return app.Div().Class("points").Body(
		app.Range(points).Slice(func(i int) app.UI { return f.point(points, i) }),
		button("Add a point", func(ctx app.Context, _ app.Event) { f.addPoint(ctx) }, len(points)),
	)
}

func (f *find) point(points [][2]float64, i int) app.UI {
	n, d := f.Bench.numbers(), f.Bench.document()
	p := points[i]
	return app.Div().Class("row").Body(
		&field{
			ID: fmt.Sprintf("target-travel-%d", i), Label: "at", Unit: n.LengthUnit(), Value: n.LengthNumber(d.Units.Millimetres(p[0])),
			Set: f.pointSetter(i, func(p *[2]float64, text string) error {
				mm, err := n.ParseLength(text)
				p[0] = d.Units.FromMillimetres(mm)
				return err
			}),
		},
		&field{
			ID: fmt.Sprintf("target-toe-%d", i), Label: "toe change", Unit: n.ToeUnit(), Value: n.ToeNumber(solver.Deg(p[1])),
			Set: f.pointSetter(i, func(p *[2]float64, text string) error {
				deg, err := n.ParseToe(text)
				p[1] = deg
				return err
			}),
		},
		button("Remove", func(ctx app.Context, _ app.Event) {
			f.setPoints(ctx, slices.Delete(slices.Clone(f.search().Target), i, i+1))
		}, i, len(points)).Aria("label", fmt.Sprintf("Remove point %d", i+1)),
	)
}

// pointSetter returns what sets a part of point i from a text.
func (f *find) pointSetter(i int, put func(*[2]float64, string) error) func(app.Context, string) error {
	return func(ctx app.Context, text string) error {
		points := slices.Clone(f.search().Target)
		if i >= len(points) {
			return nil
		}
		if err := put(&points[i], text); err != nil {
			return err
		}
		return f.setPoints(ctx, points)
	}
}

// addPoint adds a point a step beyond the last.
func (f *find) addPoint(ctx app.Context) {
	points, w := slices.Clone(f.search().Target), f.Bench.document().SearchWindow()
	p := [2]float64{}
	if len(points) > 0 {
		p = points[len(points)-1]
		p[0] += w.Step
	}
	f.setPoints(ctx, append(points, p))
}

func (f *find) setPoints(ctx app.Context, points [][2]float64) error {
	return f.Bench.edit(ctx, func() error { return f.Bench.session().SetTargetPoints(points, "") })
}

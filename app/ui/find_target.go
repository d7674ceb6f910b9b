package ui

import (
	"errors"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"toewright/app/model"
	"toewright/internal/number"
	"toewright/internal/study"
	"toewright/solver"
)

// target states the curve that is wanted, over which window, and what is made small.
func (q *question) target() app.UI {
	kind := model.KindOfTarget(q.search())
	return app.Div().Body(
		app.Div().Class("row").Body(q.preset(), q.band()),
		q.source(),
		choices("target", "Toe change wanted", strconv.Itoa(int(kind)), []choice{
			{"0", "flat"}, {"1", "a slope"}, {"2", "by points"}, {"3", "as another car"},
		}, q.setTarget),
		app.Div().Class("row").Body(
			only(kind == model.SlopeTarget, func() app.UI { return q.slope() }),
			only(kind == model.CarTarget, func() app.UI { return q.targetCar() }),
			q.pencil(),
		),
		only(kind == model.PointsTarget, func() app.UI { return q.points() }),
		q.Bench.findWindow(),
		q.aim(),
		q.most(),
	)
}

// preset is the list of curves that are usually wanted.
func (q *question) preset() app.UI {
	list, now := []choice{{"", "your own"}}, ""
	for i := range model.Presets {
		list = append(list, choice{model.Presets[i].Key, model.Presets[i].Label})
	}
	if p := q.presetNow(); p != nil {
		now = p.Key
	}
	return menu("preset", "Usual targets", now, list, func(ctx app.Context, key string) {
		for i := range model.Presets {
			if p := &model.Presets[i]; p.Key == key {
				q.Bench.edit(ctx, func() error { return q.Bench.session().SetPreset(p) })
			}
		}
	})
}

func (q *question) presetNow() *model.Preset { return model.PresetOf(q.Bench.document(), q.search()) }

// source says where a usual target is taken from.
func (q *question) source() app.UI {
	p := q.presetNow()
	return only(p != nil, func() app.UI { return app.P().Class("note").Text(p.Source) })
}

// errBand is what a band that is none is refused with.
var errBand = errors.New("a band is more than 0; leave it empty for none")

// band is the field of how far off the target is good enough.
func (q *question) band() app.UI {
	n, value := q.Bench.numbers(), ""
	if b := q.search().Band; b > 0 {
		value = n.ToeNumber(solver.Deg(b))
	}
	return &field{
		ID: "band", Label: "Good within, either way", Unit: n.ToeUnit(), Value: value,
		Set: func(ctx app.Context, text string) error {
			deg := 0.0
			if strings.TrimSpace(text) != "" {
				var err error
				if deg, err = n.ParseToe(text); err != nil {
					return err
				}
				if !(deg > 0) {
					return errBand
				}
			}
			return q.Bench.change(ctx, func() error { return q.Bench.session().SetBand(deg) })
		},
	}
}

// pencil lets the user draw the target on the chart.
func (q *question) pencil() app.UI {
	drawing := q.Bench.Desk.View.Drawing
	text := "Draw it on the chart"
	if drawing {
		text = "Done drawing"
	}
	return app.Button().Type("button").ID("draw").Text(text).Aria("pressed", drawing).OnClick(func(ctx app.Context, _ app.Event) {
		q.Bench.Desk.View.Drawing = !q.Bench.Desk.View.Drawing
		q.Bench.Changed(ctx)
	})
}

func (q *question) setTarget(ctx app.Context, value string) {
	kind, _ := strconv.Atoi(value) // the values are our own
	q.Bench.edit(ctx, func() error { return q.Bench.session().SetTarget(model.TargetKind(kind)) })
}

// targetCar is the choice of the car whose curve is wanted.
func (q *question) targetCar() app.UI {
	car := strconv.Itoa(q.Bench.session().TargetCar())
	list := yardstickChoices(q.Bench.cars())
	if car == "-1" {
		list = append([]choice{{car, "a car that is gone: choose another"}}, list...)
	}
	return menu("target-car", "The curve of", car, list, func(ctx app.Context, value string) {
		if i, err := strconv.Atoi(value); err == nil && i >= 0 {
			q.Bench.edit(ctx, func() error { return q.Bench.session().SetTargetCar(i) })
		}
	})
}

// slope is the field of a target that is a slope.
func (q *question) slope() app.UI {
	n, perUnit := q.Bench.numbers(), q.Bench.document().Units.Millimetres(1)
	return &field{
		ID: "slope", Label: "Toe-in in bump positive", Unit: n.SlopeUnit(), Value: n.Slope(model.Slope(q.search()) / perUnit),
		Set: func(ctx app.Context, text string) error {
			x, ok := number.ParsePlain(text)
			if !ok {
				return errSlope
			}
			return q.Bench.change(ctx, func() error { return q.Bench.session().SetSlope(n.SlopeRead(x) * perUnit) })
		},
	}
}

// errSlope is what a slope that is no number is refused with.
var errSlope = errors.New("a slope is a number, such as -0.002")

// points are the fields of a target that is given by points.
func (q *question) points() app.UI {
	points := q.search().Target
	return app.Div().Class("points").Body(
		many(app.Range(points).Slice(func(i int) app.UI { return q.point(points, i) })),
		button("Add a point", func(ctx app.Context, _ app.Event) { q.addPoint(ctx) }, len(points)),
	)
}

func (q *question) point(points [][2]float64, i int) app.UI {
	n, d := q.Bench.numbers(), q.Bench.document()
	p := points[i]
	return app.Div().Class("row").Body(
		&field{
			ID: fmt.Sprintf("target-travel-%d", i), Label: "at", Unit: n.LengthUnit(), Value: n.LengthNumber(d.Units.Millimetres(p[0])),
			Set: q.pointSetter(i, func(p *[2]float64, text string) error {
				mm, err := n.ParseLength(text)
				p[0] = d.Units.FromMillimetres(mm)
				return err
			}),
		},
		&field{
			ID: fmt.Sprintf("target-toe-%d", i), Label: "toe change", Unit: n.ToeUnit(), Value: n.ToeNumber(solver.Deg(p[1])),
			Set: q.pointSetter(i, func(p *[2]float64, text string) error {
				deg, err := n.ParseToe(text)
				p[1] = deg
				return err
			}),
		},
		button("Remove", func(ctx app.Context, _ app.Event) {
			q.Bench.tell(ctx, q.setPoints(ctx, slices.Delete(slices.Clone(q.search().Target), i, i+1)))
		}, i, len(points)).Aria("label", fmt.Sprintf("Remove point %d", i+1)),
	)
}

// pointSetter returns what sets a part of point i from a text.
func (q *question) pointSetter(i int, put func(*[2]float64, string) error) func(app.Context, string) error {
	return func(ctx app.Context, text string) error {
		points := slices.Clone(q.search().Target)
		if i >= len(points) {
			return nil
		}
		if err := put(&points[i], text); err != nil {
			return err
		}
		return q.setPoints(ctx, points)
	}
}

// addPoint adds a point a step beyond the last.
func (q *question) addPoint(ctx app.Context) {
	points, w := slices.Clone(q.search().Target), q.Bench.document().SearchWindow()
	p := [2]float64{}
	if len(points) > 0 {
		p = points[len(points)-1]
		p[0] += w.Step
	}
	q.Bench.tell(ctx, q.setPoints(ctx, append(points, p)))
}

func (q *question) setPoints(ctx app.Context, points [][2]float64) error {
	return q.Bench.change(ctx, func() error { return q.Bench.session().SetTargetPoints(points, "") })
}

// aim says which figure is made small.
func (q *question) aim() app.UI {
	value := q.search().Minimise
	if value == "" {
		value = "rms"
	}
	return choices("minimise", "Minimise", value, []choice{{"rms", "RMS, the whole curve"}, {"peak", "peak, the worst travel"}},
		func(ctx app.Context, value string) {
			q.Bench.edit(ctx, func() error {
				return q.Bench.session().EditSearch("what is minimised", "", func(s *study.Search) { s.Minimise = value })
			})
		})
}

// most asks whether most of the cars made are to be served rather than the one
// drawn; only a study with tolerances can.
func (q *question) most() app.UI {
	if len(q.Bench.document().Tolerances) == 0 {
		return nothing()
	}
	const share = 95
	value := "drawn"
	if q.search().Percentile != 0 {
		value = "most"
	}
	return choices("serve", "Serve", value, []choice{{"drawn", "the car as drawn"}, {"most", "95 % of the cars made within the tolerances"}},
		func(ctx app.Context, value string) {
			q.Bench.edit(ctx, func() error {
				return q.Bench.session().EditSearch("which cars are served", "", func(s *study.Search) {
					s.Percentile = map[string]float64{"most": share}[value]
				})
			})
		})
}

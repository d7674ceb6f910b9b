package ui

import (
	"cmp"
	"errors"
	"fmt"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"toewright/app/model"
	"toewright/internal/study"
)

// gauge says with what a run was read.
type gauge struct {
	app.Compo
	Bench bench
	Run   model.Run
}

const (
	aboutBase          = "The distance between the two indicators, the length of the plate, or the diameter at which a tape was held: the length over which toe is read."
	aboutRepeatability = "By how much two readings of the same thing differ, as one standard deviation. Read one travel five times and see."
)

// errPositive is what a length that must not be 0 is refused with.
var errPositive = errors.New("must be more than 0")

// Render shows the gauge, closed unless it is touched.
func (g *gauge) Render() app.UI {
	set := &g.Bench.document().Readings[g.Run.First()]
	n, mm := g.Bench.numbers(), g.Bench.document().Units.Millimetres
	return app.Details().Class("gauge").Body(
		app.Summary().Text("Gauge: "+cmp.Or(set.Gauge, "indicators")+" over "+n.Travel(mm(set.Base))),
		menu("gauge", "Kind", cmp.Or(set.Gauge, "indicators"), []choice{
			{"indicators", "two indicators on the ground"}, {"plate", "plate on the hub"}, {"dial", "one dial on a swinging stand"}, {"tape", "tape at the tyre"},
		}, func(ctx app.Context, v string) { g.set(ctx, func(s *study.Reading) { s.Gauge = v }) }),
		app.Div().Class("row").Body(
			g.length("base", "Base", set.Base, func(s *study.Reading, x float64) { s.Base = x }),
			g.length("repeatability", "Repeatability", set.Repeatability, func(s *study.Reading, x float64) { s.Repeatability = x }),
		),
		app.P().Class("note").Body(explain("Base", aboutBase), app.Text(" and "), explain("repeatability", aboutRepeatability)),
		menu("travel-as", "Travel was read at", cmp.Or(set.TravelAs, "wheel-centre"), []choice{
			{"wheel-centre", "the wheel centre or hub"}, {"contact", "the tyre's contact"}, {"block", "the height of blocks under the body"}, {"damper", "the length of the damper"}, {"lower-ball-joint", "the lower ball joint"},
		}, func(ctx app.Context, v string) { g.set(ctx, func(s *study.Reading) { s.TravelAs = v }) }),
		menu("direction", "The run went", set.Direction, []choice{{"", "either way"}, {"bump", "into bump"}, {"droop", "into droop"}},
			func(ctx app.Context, v string) { g.set(ctx, func(s *study.Reading) { s.Direction = v }) }),
		menu("purpose", "It is", cmp.Or(set.Purpose, "fit"), []choice{{"fit", "to fit the car"}, {"verify", "to verify, after fitting"}},
			func(ctx app.Context, v string) { g.set(ctx, func(s *study.Reading) { s.Purpose = v }) }),
	)
}

func (g *gauge) length(id, label string, value float64, put func(*study.Reading, float64)) app.UI {
	n, d := g.Bench.numbers(), g.Bench.document()
	return &field{
		ID: "gauge-" + id, Label: label, Tag: model.SourceTag(d, fmt.Sprintf("readings.%d.%s", g.Run.First(), id)), Unit: n.LengthUnit(), Value: n.LengthNumber(d.Units.Millimetres(value)),
		Set: func(ctx app.Context, text string) error {
			mm, err := n.ParseLength(text)
			if err != nil {
				return err
			}
			if !(mm > 0) {
				return errPositive
			}
			return g.set(ctx, func(s *study.Reading) { put(s, d.Units.FromMillimetres(mm)) })
		},
	}
}

func (g *gauge) set(ctx app.Context, change func(*study.Reading)) error {
	return g.Bench.edit(ctx, func() error { return g.Bench.session().SetRun(g.Run, "gauge", change) })
}

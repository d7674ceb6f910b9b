package ui

import (
	"cmp"
	"errors"
	"fmt"
	"strconv"
	"strings"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"toewright/app/model"
	"toewright/internal/number"
	"toewright/internal/study"
	"toewright/solver"
)

// gauge says with what, and how, a run was read.
type gauge struct {
	app.Compo
	Bench   bench
	Run     model.Run
	Fine    bool // readings are typed in the marks of a dial
	SetFine func(bool)
}

const (
	aboutBase          = "The distance between the two indicators, the length of the plate, or the diameter at which a tape was held: the length over which toe is read."
	aboutRepeatability = "By how much two readings of the same thing differ, as one standard deviation. Read one travel five times and see."
	aboutGain          = "What the gauge may gain steadily with travel, as one standard deviation, length of reading by length of travel: two dials set unlike in height on a wheel whose camber changes. 0 is a gauge known not to."
	aboutZero          = "The reading that stands for no toe, where it is known. Empty, it is found by the fit."
)

// errPositive is what a length that must not be 0 is refused with.
var errPositive = errors.New("must be more than 0")

// Render shows the gauge by its base, and the rest when it is touched.
func (g *gauge) Render() app.UI {
	set := &g.Bench.document().Readings[g.Run.First()]
	n, mm := g.Bench.numbers(), g.Bench.document().Units.Millimetres
	return app.Details().Class("gauge").ID("gauge-box").Body(
		app.Summary().Text("Gauge: "+cmp.Or(set.Gauge, "indicators")+" over "+n.Travel(mm(set.Base))),
		menu("gauge", "Kind", cmp.Or(set.Gauge, "indicators"), []choice{
			{"indicators", "two indicators on the ground"}, {"plate", "plate on the hub"}, {"dial", "one dial on a swinging stand"}, {"tape", "tape at the tyre"},
		}, g.choose(func(s *study.Reading, v string) { s.Gauge = v })),
		app.Div().Class("numbers").Body(
			g.length("base", "Base", set.Base, func(s *study.Reading, x float64) { s.Base = x }),
			g.length("repeatability", "Repeatability", set.Repeatability, func(s *study.Reading, x float64) { s.Repeatability = x }),
			g.gain(set),
			g.zero(solver.Left), g.zero(solver.Right),
		),
		app.P().Class("note").Body(explain("Base", aboutBase), app.Text(", "), explain("repeatability", aboutRepeatability), app.Text(", "),
			explain("gain with travel", aboutGain), app.Text(" and "), explain("zero", aboutZero)),
		menu("fine", "Readings are typed in", strconv.FormatBool(g.Fine), []choice{{"false", n.LengthUnit()}, {"true", model.FineName(n.Units) + ", the marks of a dial"}},
			func(_ app.Context, v string) { g.SetFine(v == "true") }),
		menu("turned", "The gauge stood", strconv.FormatBool(set.Turned), []choice{{"false", "as always"}, {"true", "turned round, front to rear"}},
			g.choose(func(s *study.Reading, v string) { s.Turned = v == "true" })),
		menu("travel-as", "Travel was read at", cmp.Or(set.TravelAs, "wheel-centre"), []choice{
			{"wheel-centre", "the wheel centre or hub"}, {"contact", "the tyre's contact"}, {"block", "the height of blocks under the body"}, {"damper", "the length of the damper"}, {"lower-ball-joint", "the lower ball joint"},
		}, g.choose(func(s *study.Reading, v string) { s.TravelAs = v })),
		menu("direction", "The run went", set.Direction, []choice{{"", "either way"}, {"bump", "into bump"}, {"droop", "into droop"}},
			g.choose(func(s *study.Reading, v string) { s.Direction = v })),
		menu("purpose", "It is", cmp.Or(set.Purpose, "fit"), []choice{{"fit", "to fit the car"}, {"verify", "to verify, after fitting"}},
			g.choose(func(s *study.Reading, v string) { s.Purpose = v })),
		g.parts(set),
		&field{ID: "run-note", Label: "Note: tyre pressure, ride height, steering lock, what else", Wide: true, Value: set.Note, Set: func(ctx app.Context, text string) error {
			return g.set(ctx, func(s *study.Reading) { s.Note = strings.TrimSpace(text) })
		}},
	)
}

// parts takes the parts of a car over for the run.
func (g *gauge) parts(set *study.Reading) app.UI {
	list := append([]choice{{"", "as the stack says"}}, yardstickChoices(g.Bench.cars())...)
	now := ""
	for _, c := range list {
		if c.Text == set.Note {
			now = c.Value
		}
	}
	return menu("run-parts", "Parts on the car", now, list, func(ctx app.Context, v string) {
		i, err := strconv.Atoi(v)
		if err != nil {
			return
		}
		g.Bench.edit(ctx, func() error { return g.Bench.session().SetParts(g.Run, g.Bench.cars().At(i)) })
	})
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

// gain is what the gauge may gain with travel; empty is the usual.
func (g *gauge) gain(set *study.Reading) app.UI {
	text := ""
	if set.SlopeSD != nil {
		text = number.Trimmed(*set.SlopeSD, 6)
	}
	return &field{ID: "gauge-gain", Label: "Gain with travel, usually " + number.Trimmed(study.UsualSlopeSD, 6), Value: text, Set: func(ctx app.Context, text string) error {
		if strings.TrimSpace(text) == "" {
			return g.set(ctx, func(s *study.Reading) { s.SlopeSD = nil })
		}
		x, ok := number.ParsePlain(text)
		if !ok || x < 0 {
			return fmt.Errorf("%q is no gain; type one like 0.0015, or 0 for a gauge known to have none", number.Clip(text))
		}
		return g.set(ctx, func(s *study.Reading) { s.SlopeSD = &x })
	}}
}

// zero is the reading of a side at no toe; empty where it is not known.
func (g *gauge) zero(side solver.Side) app.UI {
	i := g.Run.Sets[side]
	if i < 0 {
		return nothing()
	}
	n, d, text := g.Bench.numbers(), g.Bench.document(), ""
	if zero := d.Readings[i].Zero; zero != nil {
		text = n.LengthNumber(d.Units.Millimetres(*zero))
	}
	return &field{ID: "gauge-zero-" + side.String(), Label: "Zero, " + side.String(), Unit: n.LengthUnit(), Value: text, Set: func(ctx app.Context, text string) error {
		return g.Bench.change(ctx, func() error { return g.Bench.session().SetZero(i, text) })
	}}
}

func (g *gauge) set(ctx app.Context, change func(*study.Reading)) error {
	return g.Bench.change(ctx, func() error { return g.Bench.session().SetRun(g.Run, "gauge", change) })
}

// choose returns what a menu of the gauge does with the value that is chosen.
func (g *gauge) choose(change func(*study.Reading, string)) func(app.Context, string) {
	return func(ctx app.Context, value string) {
		g.Bench.tell(ctx, g.set(ctx, func(s *study.Reading) { change(s, value) }))
	}
}

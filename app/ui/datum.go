package ui

import (
	"strings"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"toewright/internal/study"
)

// datum moves all points from the user's own origin to that of the axes.
type datum struct {
	app.Compo
	Bench bench

	by    study.Vec3
	typed [3]string
}

// Render shows where the user's origin lies.
func (m *datum) Render() app.UI {
	n := m.Bench.numbers()
	return app.Details().Class("block").Body(
		app.Summary().Text("Measured from another datum"),
		app.P().Class("note").Text("Say where your own zero lies in the axes above: a mark on the frame 420 mm above the ground is z 420. All points are moved by that much."),
		app.Div().Class("coordinates").Body(app.Range([3]struct{}{}).Slice(func(i int) app.UI {
			return &field{ID: "datum-" + string("xyz"[i]), Label: string("xyz"[i]), Unit: n.LengthUnit(), Value: m.typed[i], Set: func(_ app.Context, text string) error {
				if strings.TrimSpace(text) == "" {
					m.by[i], m.typed[i] = 0, ""
					return nil
				}
				mm, err := n.ParseLength(text)
				if err == nil {
					m.by[i], m.typed[i] = m.Bench.document().Units.FromMillimetres(mm), n.LengthNumber(mm)
				}
				return err
			}}
		})),
		button("Move all points", func(ctx app.Context, _ app.Event) {
			m.Bench.undoable(ctx, "All points are moved.", func() error { return m.Bench.session().Shift(m.by) })
			m.by, m.typed = study.Vec3{}, [3]string{}
		}).ID("move-points").Disabled(m.by == study.Vec3{}),
	)
}

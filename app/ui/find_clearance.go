package ui

import (
	"errors"
	"fmt"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"toewright/internal/study"
)

// clearance shows of what part a clearance is, and from what.
func (l *limits) clearance(i int, k *study.Limit) app.UI {
	var parts []choice
	for _, p := range study.ClearParts {
		if !p.SolidAxle || l.Bench.document().HasDragLink() {
			parts = append(parts, choice{string(p.Key), p.Label})
		}
	}
	return app.Div().Class("clearance").Body(
		app.Div().Class("row").Body(
			menu(fmt.Sprintf("limit-%d-of", i), "of the", string(k.Of), parts, func(ctx app.Context, value string) {
				l.Bench.tell(ctx, l.set(ctx, i, "part of a clearance", func(k *study.Limit) { k.Of = study.ClearKey(value) }))
			}),
			l.length(i, "radius", "its radius", k.Radius, func(k *study.Limit) *float64 { return &k.Radius }, positive),
		),
		only(k.Rim != nil, func() app.UI { return l.rim(i, k.Rim) }),
		only(k.Plane != nil, func() app.UI { return l.plane(i, k.Plane) }),
		only(k.Link != nil, func() app.UI { return l.link(i, k.Link) }),
	)
}

// rim states the inside of the wheel's rim.
func (l *limits) rim(i int, r *study.Rim) app.UI {
	return app.Div().Class("row").Body(
		l.length(i, "rim", "free radius inside the rim", r.Radius, func(k *study.Limit) *float64 { return &k.Rim.Radius }, positive),
		l.length(i, "offset", "its edge, inboard of the wheel centre", r.Offset, func(k *study.Limit) *float64 { return &k.Rim.Offset }, anyLength),
	)
}

// plane states a plane that stays with the body.
func (l *limits) plane(i int, p *study.Plane) app.UI {
	axes := [3]string{"x", "y", "z"}
	return app.Div().Body(
		app.P().Class("note").Text("A point of the plane on the left side, in the car's axes, and the direction into the free space: 0, 0, 1 is upward. The right side has its mirror image."),
		app.Div().Class("row").Body(app.Range([3]struct{}{}).Slice(func(a int) app.UI {
			return l.length(i, "at-"+axes[a], "point "+axes[a], p.Point[a], func(k *study.Limit) *float64 { return &k.Plane.Point[a] }, anyLength)
		})),
		app.Div().Class("row").Body(app.Range([3]struct{}{}).Slice(func(a int) app.UI { return l.direction(i, axes[a], p.Normal[a], a) })),
	)
}

// direction is the field of a component of the plane's normal.
func (l *limits) direction(i int, axis string, value float64, a int) app.UI {
	return &field{
		ID: fmt.Sprintf("limit-%d-to-%s", i, axis), Label: "free towards " + axis, Value: boundText(&value),
		Set: func(ctx app.Context, text string) error {
			x, err := parseBound(text)
			if err != nil || x == nil {
				return errBound
			}
			return l.set(ctx, i, "direction of a plane", func(k *study.Limit) { k.Plane.Normal[a] = *x })
		},
	}
}

// link states another link of the axle.
func (l *limits) link(i int, k *study.Link) app.UI {
	var points []choice
	for _, h := range l.Bench.cars().Design.Kind.SidePoints {
		points = append(points, choice{h.Name, h.Label})
	}
	end := func(id, label, value string, put func(*study.Link, string)) app.UI {
		return menu(fmt.Sprintf("limit-%d-%s", i, id), label, value, points, func(ctx app.Context, value string) {
			l.Bench.tell(ctx, l.set(ctx, i, "end of a link", func(k *study.Limit) { put(k.Link, value) }))
		})
	}
	return app.Div().Class("row").Body(
		end("from", "link from", k.From, func(k *study.Link, v string) { k.From = v }),
		end("to", "to", k.To, func(k *study.Link, v string) { k.To = v }),
		l.length(i, "bar", "its radius", k.Radius, func(k *study.Limit) *float64 { return &k.Link.Radius }, positive),
	)
}

// errRadius is what a radius below 0 is refused with.
var errRadius = errors.New("a radius is 0 or more")

// positive refuses lengths below 0; anyLength refuses none.
func positive(mm float64) error {
	if !(mm >= 0) {
		return errRadius
	}
	return nil
}

func anyLength(float64) error { return nil }

// length is the field of a length of a limit, to which of leads.
func (l *limits) length(i int, id, label string, value float64, of func(*study.Limit) *float64, check func(float64) error) app.UI {
	n, d := l.Bench.numbers(), l.Bench.document()
	return &field{
		ID: fmt.Sprintf("limit-%d-%s", i, id), Label: label, Unit: n.LengthUnit(), Value: n.LengthNumber(d.Units.Millimetres(value)),
		Set: func(ctx app.Context, text string) error {
			mm, err := n.ParseLength(text)
			if err == nil {
				err = check(mm)
			}
			if err != nil {
				return err
			}
			return l.set(ctx, i, "clearance", func(k *study.Limit) { *of(k) = d.Units.FromMillimetres(mm) })
		},
	}
}

package ui

import (
	"cmp"
	"fmt"
	"slices"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"toewright/app/model"
	"toewright/internal/study"
	"toewright/solver"
)

// asksLock reports whether a limit can be looked at at full lock of a car that steers.
func (l *limits) asksLock(list []study.Limit) bool {
	design := l.Bench.cars().Design
	return design != nil && design.Gear.Kind != solver.NoGear &&
		slices.ContainsFunc(list, func(k study.Limit) bool { return k.Travels() })
}

// lock is the field of the most steering input.
func (l *limits) lock() app.UI {
	gear, moves := &l.Bench.cars().Design.Gear, "rack"
	if gear.Kind == solver.CentreLink {
		moves = "pitman arm"
	}
	v := model.LockOf(l.Bench.document())
	return app.Div().Class("row").Body(&field{
		ID: "full-lock", Label: "full lock, " + moves + " to either side", Unit: v.Unit, Value: v.Text, Tag: model.SourceTag(l.Bench.document(), v.Path),
		Set: func(ctx app.Context, text string) error {
			return l.Bench.change(ctx, func() error { return l.Bench.session().SetLock(text) })
		},
	})
}

// hasPlaces reports whether there is a choice of where a limit is looked at: full lock
// has to be stated first.
func (l *limits) hasPlaces(k *study.Limit) bool {
	g := l.Bench.document().Steering
	return k.At != "" || k.Travels() && g != nil && g.Lock > 0
}

// where is the choice of where along the travel a limit is looked at.
func (l *limits) where(i int, k *study.Limit) app.UI {
	var places []choice
	for _, p := range model.LimitPlaces {
		places = append(places, choice{p.Key, p.Label})
	}
	return menu(fmt.Sprintf("limit-%d-at", i), "over the window", cmp.Or(k.At, study.AtStraight), places, func(ctx app.Context, value string) {
		l.Bench.edit(ctx, func() error { return l.Bench.session().SetLimitAt(i, value) })
	})
}

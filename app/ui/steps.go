package ui

import (
	"github.com/maxence-charriere/go-app/v10/pkg/app"
)

// step is a part of the work, with a panel of its own.
type step struct {
	key, text, icon string
	ways            []way // to its answer; nil where there is but one
}

// way is one of several views of a step.
type way struct{ key, text string }

// steps are the five that the work is done in, in their order. No two keys are alike, of
// steps and ways together.
var steps = []step{
	{"car", "Car", axleIcon, []way{{"points", "As points"}, {"tape", "By tape"}}},
	{"readings", "Readings", dialIcon, nil},
	{"find", "Find", curveIcon, []way{{"search", "Search"}, {"map", "Map"}, {"tradeoff", "Trade-off"}, {"parts", "Parts to buy"}}},
	{"compare", "Compare", tableIcon, nil},
	{"make", "Make", armIcon, []way{{"sheet", "Sheet"}, {"series", "Series"}}},
}

// spot is what is open: a step and, of a step that has several, a way.
type spot struct{ step, way string }

// placeOf returns the place that the key of a step or of a way names; ok is false where
// there is none. A step alone begins with its first way.
func placeOf(key string) (at spot, ok bool) {
	for _, s := range steps {
		if s.key == key && len(s.ways) > 0 {
			return spot{key, s.ways[0].key}, true
		}
		if s.key == key {
			return spot{step: key}, true
		}
		for _, w := range s.ways {
			if w.key == key {
				return spot{s.key, key}, true
			}
		}
	}
	return spot{}, false
}

// key is what names the place: its way or else its step.
func (at spot) key() string {
	if at.way != "" {
		return at.way
	}
	return at.step
}

// index returns the number of the place's step, from 0.
func (at spot) index() int {
	for i := range steps {
		if steps[i].key == at.step {
			return i
		}
	}
	return 0
}

// show opens a step or a way by its key, at the selected card if it has one. A step opens
// at the way that was open there last.
func (p *Panels) show(ctx app.Context, key string) {
	p.open(key)
	ctx.Defer(func(app.Context) {
		toTop(".panel")
		reveal(".card.selected")
	})
}

// open opens a step or a way by its key. What is none stays closed.
func (p *Panels) open(key string) {
	at, ok := placeOf(key)
	if !ok {
		return
	}
	if at.step == key && p.ways[key] != "" {
		at.way = p.ways[key]
	}
	if p.ways == nil {
		p.ways = map[string]string{}
	}
	p.ways[at.step] = at.way
	p.at, p.menu = at, ""
	p.Kept.note(p)
}

// stepList is the row of steps. Arrow keys go along it.
func (p *Panels) stepList() app.UI {
	return app.Div().Class("steps").Role("tablist").Aria("label", "Steps").OnKeyDown(p.along).Body(
		app.Range(steps).Slice(func(i int) app.UI {
			s := steps[i]
			open := s.key == p.at.step
			index := -1
			if open {
				index = 0
			}
			return app.Button().Type("button").ID("step-"+s.key).Class("step").Role("tab").TabIndex(index).
				Aria("selected", open).Aria("controls", "panel").Aria("keyshortcuts", stepKey(i)).
				OnClick(func(ctx app.Context, _ app.Event) { p.show(ctx, s.key) }, app.EventScope(s.key)).
				Body(icon(s.icon), app.Span().Class("step-number").Aria("hidden", true).Text(stepKey(i)), app.Text(s.text))
		}),
	)
}

// stepKey is the key that opens a step, which is its number too.
func stepKey(i int) string { return string(rune('1' + i)) }

// along opens the next or the previous step by an arrow key.
func (p *Panels) along(ctx app.Context, e app.Event) {
	by := map[string]int{"ArrowRight": 1, "ArrowLeft": -1}[e.Get("key").String()]
	if by == 0 {
		ctx.PreventUpdate()
		return
	}
	e.PreventDefault()
	p.open(steps[(p.at.index()+by+len(steps))%len(steps)].key)
	ctx.Defer(func(app.Context) { focus("step-" + p.at.step) })
}

// wayList is the row of the open step's ways; nil where there is but one.
func (p *Panels) wayList() app.UI {
	list := steps[p.at.index()].ways
	if len(list) == 0 {
		return nothing()
	}
	return app.Div().Class("segments").Role("group").Aria("label", "Ways of "+steps[p.at.index()].text).Body(
		app.Range(list).Slice(func(i int) app.UI {
			w := list[i]
			return app.Button().Type("button").ID("way-"+w.key).Aria("pressed", w.key == p.at.way).Text(w.text).
				OnClick(func(ctx app.Context, _ app.Event) { p.show(ctx, w.key) }, app.EventScope(w.key))
		}),
	)
}

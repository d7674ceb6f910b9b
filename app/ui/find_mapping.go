package ui

import (
	"context"
	"errors"
	"time"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"toewright/app/model"
)

// mapping draws one map after the other, each of the desk as it stands when the map
// before has come: coarse ones while a hand is at work, then the full one and the limits.
// It outlives the panel.
type mapping struct {
	x, y    string // parameters; empty for the usual ones
	shown   *model.Terrain
	pace    model.MapPace
	run     *mapRun // nil while nothing is computed
	refused *model.Ground
	fault   string // why there is no map of what was refused

	seen  mapSight
	paint func(ground bool) // shows the map; nil while it is not on the page
}

// mapRun is a map that is being computed.
type mapRun struct {
	ground model.Ground
	size   int // roomOnly asks for the limits
	cancel context.CancelFunc
}

// roomOnly is the size of a run that adds the limits to the map that is shown.
const roomOnly = 0

// mapSight is what a map was last asked of.
type mapSight struct {
	cars *model.Cars
	car  int
	x, y string
}

// follow is called in every frame: it shows the cars where they have gone and sees to
// it that the map becomes that of the desk.
func (m *mapping) follow(b bench) {
	if m.paint != nil && m.shown != nil {
		m.paint(false)
	}
	sight := mapSight{b.cars(), b.Desk.View.Car, m.x, m.y}
	if sight != m.seen {
		m.seen = sight
		m.next(b)
	}
}

// next starts what is still to be computed, unless something is being computed; a run
// that is stale and would take long is cancelled.
func (m *mapping) next(b bench) {
	if b.cars().Err != nil || b.Desk.Selected().Err != nil {
		return
	}
	ground, err := b.Desk.GroundOf(model.MapKeys(b.document(), b.cars().Design, m.x, m.y))
	if err != nil {
		m.fault = plain(err)
		return
	}
	if m.run != nil {
		if !m.run.ground.Same(&ground) && m.run.size != m.pace.Live() {
			m.run.cancel()
		}
		return
	}
	if size, ok := m.want(&ground); ok {
		m.start(b, ground, size)
	}
}

// want returns what is to be computed next of a ground; ok is false where nothing is.
func (m *mapping) want(g *model.Ground) (size int, ok bool) {
	switch {
	case m.refused != nil && m.refused.Same(g):
		return 0, false
	case m.shown == nil || !m.shown.Same(g):
		return m.pace.Live(), true
	case m.shown.Size < model.FullMap:
		return model.FullMap, true
	case m.shown.Room == nil && len(g.Limits()) > 0:
		return roomOnly, true
	}
	return 0, false
}

// start computes a map in the workers.
func (m *mapping) start(b bench, ground model.Ground, size int) {
	ctx, cancel := context.WithCancel(context.Background())
	m.run = &mapRun{ground, size, cancel}
	began := time.Now()
	b.Lasting.Async(func() {
		t, err := mapCalls{b.Caller, ctx}.terrain(ground, size)
		cancel()
		took := time.Since(began)
		b.Lasting.Dispatch(func(ctx app.Context) {
			if m.arrived(b, t, err, took); m.run != nil {
				ctx.PreventUpdate() // the words wait for the map that is done
			}
		})
	})
}

// arrived shows what was computed and goes on.
func (m *mapping) arrived(b bench, t *model.Terrain, err error, took time.Duration) {
	run := m.run
	m.run = nil
	switch {
	case errors.Is(err, context.Canceled):
	case err != nil:
		m.fault, m.refused = plain(err), &run.ground
	default:
		m.fault, m.refused = "", nil
		m.take(run, t, took)
	}
	m.next(b)
}

// take shows a map, or the limits on it.
func (m *mapping) take(run *mapRun, t *model.Terrain, took time.Duration) {
	if run.size != roomOnly {
		m.pace.Took(run.size, took.Seconds())
		if m.shown != nil && m.shown.Same(&run.ground) {
			t.Room, t.RoomSize = m.shown.Room, m.shown.RoomSize
		}
		m.shown = t
	} else if m.shown != nil && m.shown.Same(&run.ground) {
		m.shown.Room, m.shown.RoomSize = t.Room, t.RoomSize
	}
	if m.paint != nil {
		m.paint(true)
	}
}

package ui

import (
	"context"

	"toewright/app/model"
	"toewright/app/worker"
	"toewright/internal/calls"
	"toewright/internal/engine"
)

// mapCalls asks the workers for maps.
type mapCalls struct {
	caller Caller
	ctx    context.Context
}

// roomSize is the number of places along an axis at which limits are looked at: what
// they bound has no creases.
const roomSize = 17

// terrain returns a map of a size or, for roomOnly, one that has nothing but the room
// to the limits.
func (c mapCalls) terrain(g model.Ground, size int) (*model.Terrain, error) {
	t := &model.Terrain{Ground: g, Size: size}
	var err error
	if size == roomOnly {
		t.RoomSize = roomSize
		t.Room, err = c.room(&g)
	} else {
		t.Cells, err = c.cells(&g, size)
	}
	return t, err
}

// cells computes a map in as many bands as there are workers.
func (c mapCalls) cells(g *model.Ground, size int) ([]float64, error) {
	bands := min(max(c.caller.Size(), 1), size)
	parts, errs := make([][]float64, bands), make([]error, bands)
	done := make(chan int, bands)
	doc := g.Study()
	for i := range bands {
		o := calls.Band{MapOptions: g.Options(size), Shard: engine.Shard{Index: i, Of: bands}}
		go func() {
			parts[i], errs[i] = c.numbers(calls.MapBand, worker.Params[calls.Band]{Study: doc, Options: o})
			done <- i
		}()
	}
	var cells []float64
	for range bands {
		<-done
	}
	for i := range bands {
		if errs[i] != nil {
			return nil, errs[i]
		}
		cells = append(cells, parts[i]...)
	}
	return cells, nil
}

// room computes the room to each limit.
func (c mapCalls) room(g *model.Ground) ([][]float64, error) {
	params := worker.Params[engine.MapOptions]{Study: g.Study(), Options: g.Options(roomSize)}
	numbers, err := c.numbers(calls.MapRoom, params)
	if err != nil {
		return nil, err
	}
	var room [][]float64
	for len(numbers) >= roomSize*roomSize {
		room = append(room, numbers[:roomSize*roomSize])
		numbers = numbers[roomSize*roomSize:]
	}
	return room, nil
}

// numbers calls a method that answers with many numbers.
func (c mapCalls) numbers(method string, params any) ([]float64, error) {
	raw, err := c.caller.Call(c.ctx, method, params, nil)
	if err != nil {
		return nil, err
	}
	return worker.Numbers(raw)
}

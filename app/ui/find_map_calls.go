package ui

import (
	"context"

	"toewright/app/model"
	"toewright/app/worker"
	"toewright/internal/calls"
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
		t.Cells, err = c.numbers(calls.MapCells, &g, size)
	}
	return t, err
}

// room computes the room to each limit.
func (c mapCalls) room(g *model.Ground) ([][]float64, error) {
	numbers, err := c.numbers(calls.MapRoom, g, roomSize)
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
func (c mapCalls) numbers(method string, g *model.Ground, size int) ([]float64, error) {
	raw, err := c.caller.Call(c.ctx, method, g.Study(), g.Options(size), nil)
	if err != nil {
		return nil, err
	}
	return worker.Numbers(raw)
}

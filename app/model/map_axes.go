package model

import (
	"math"
	"slices"

	"toewright/internal/study"
	"toewright/solver"
)

// MapAxis is a parameter along an edge of a map, and its values at the ends: in file
// units or degrees.
type MapAxis struct {
	Key       string
	Parameter solver.Parameter
	Sides     solver.Selection
	Low, High float64
}

// At returns the value at place i of n along the axis.
func (a *MapAxis) At(i, n int) float64 { return a.Low + (a.High-a.Low)*float64(i)/float64(n-1) }

// Values returns the values at n places along the axis.
func (a *MapAxis) Values(n int) []float64 {
	list := make([]float64, n)
	for i := range list {
		list[i] = a.At(i, n)
	}
	return list
}

// MapKeys returns the parameters of a map's axes: those asked for, else the heights of
// the two balls of the tie rod, which make up for each other, else what is free in the
// search or of the main parameters.
func MapKeys(d *study.Document, design *solver.Design, x, y string) (string, string) {
	keys := slices.Clone(MainParameters[:2])
	for _, v := range SearchOf(d, design).Variables {
		keys = append(keys, v.Parameter)
	}
	for _, key := range append(keys, MainParameters...) {
		if _, _, err := solver.FindParameter(design, key); err != nil {
			continue
		}
		switch {
		case x == "" && key != y:
			x = key
		case y == "" && key != x:
			y = key
		}
	}
	return x, y
}

// MapAxisOf returns the axis of a parameter: between the bounds that the search has for
// it, else the registry's usual ones, and in any case wide enough to hold the selected
// car.
func (d *Desk) MapAxisOf(key string) (MapAxis, error) {
	doc, cars := d.Session.Document(), d.Session.Cars()
	p, sides, err := solver.FindParameter(cars.Design, key)
	if err != nil {
		return MapAxis{}, err
	}
	a := MapAxis{Key: key, Parameter: p, Sides: sides, Low: doc.FromSolver(p, p.Min), High: doc.FromSolver(p, p.Max)}
	for _, v := range SearchOf(doc, cars.Design).Variables {
		if v.Parameter == key {
			a.Low, a.High = v.Min, v.Max
		}
	}
	value := d.ValueOf(d.View.Car, key)
	a.Low, a.High = math.Min(a.Low, value), math.Max(a.High, value)
	return a, nil
}

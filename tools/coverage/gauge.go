package main

import (
	"math"

	"toewright/optimize"
	"toewright/solver"
)

// The gauge of the experiment: two indicators with ten readings a side.
const (
	gaugeBase     = 300.0 // mm
	gaugeNoise    = 0.05  // mm, one standard deviation
	gaugeDigit    = 0.01  // mm, as read off
	readingsASide = 10
)

// conditions are how readings are taken wrongly.
type conditions struct {
	travelZero float64 // mm by which all travels are read too low
	steerZero  float64 // mm or rad by which the steering stands off
	slope      float64 // what the gauge gains with travel, mm by mm
	scale      float64 // by which all readings are too large, as a share
	// play is what the gauge reads more in bump than in droop where a run goes outward
	// from the static height, mm; a run of one direction has it to one hand.
	play float64
	run  optimize.RunDirection
}

// own returns what the gauge makes of a reading of toe, mm, at a travel.
func (c *conditions) own(v, travel float64) float64 {
	hand := math.Copysign(1, travel)
	switch c.run {
	case optimize.BumpRun:
		hand = 1
	case optimize.DroopRun:
		hand = -1
	}
	return (1+c.scale)*v + c.slope*travel + hand*c.play/2
}

// read returns the readings of the true car with a stack of the given height,
// each with its own noise, the zero anywhere.
func (c *car) read(height float64, off conditions) ([]optimize.ReadingSet, error) {
	travels := c.readTravels()
	var at []float64
	for _, t := range travels {
		at = append(at, t+off.travelZero)
	}
	curves, err := c.sweep(height, at, off.steerZero)
	if err != nil {
		return nil, err
	}
	var sets []optimize.ReadingSet
	for _, s := range c.sides() {
		sets = append(sets, c.setOf(s, height, travels, curves[s].Positions, off))
	}
	return sets, nil
}

// sweep moves the true car with a stack of the given height.
func (c *car) sweep(height float64, travels []float64, steer float64) (*[2]solver.Curve, error) {
	x, err := c.base.Assemble(append(c.stackOf(height), c.off...), solver.HoldAll)
	if err != nil {
		return nil, errUnusable
	}
	in := solver.SweepInput{Travels: travels, Sides: c.judged(), From: solver.Attitude{Steer: steer}}
	var curves [2]solver.Curve
	if err := x.Sweep(solver.NewWorkspace(), &in, &curves); err != nil {
		return nil, errUnusable
	}
	for _, s := range c.sides() {
		if !curves[s].Reach.Whole() {
			return nil, errUnusable
		}
	}
	return &curves, nil
}

// setOf returns the readings of one side.
func (c *car) setOf(s solver.Side, height float64, travels []float64, at []solver.Position, off conditions) optimize.ReadingSet {
	set := optimize.ReadingSet{Side: s, Run: off.run, Base: gaugeBase, Repeatability: repeatability, Changes: c.stackOf(height)}
	zero := c.r.Float64() * 10
	for i, t := range travels {
		v := zero + off.own(set.Gauge.Reading(at[i].Toe, gaugeBase), t) + gaugeNoise*c.r.NormFloat64()
		set.Readings = append(set.Readings, optimize.Reading{Travel: t, Value: math.Round(v/gaugeDigit) * gaugeDigit})
	}
	return set
}

// repeatability is that stated to the fit, mm: the gauge's scatter and that of
// rounding to its last digit (JCGM 100:2008, F.2.2.1; clause number from memory).
var repeatability = math.Hypot(gaugeNoise, gaugeDigit/math.Sqrt(12))

// readTravels returns ten travels spread over the window, static height apart:
// there the gauge is set to zero.
func (k *kindOfCar) readTravels() []float64 {
	var out []float64
	const each = readingsASide / 2
	for i := -each; i <= each; i++ {
		if i != 0 {
			out = append(out, k.window*float64(i)/each)
		}
	}
	return out
}

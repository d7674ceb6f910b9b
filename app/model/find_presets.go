package model

import (
	"math"

	"toewright/internal/study"
	"toewright/solver"
)

// Preset is a curve that is usually wanted, with the band about it and where both are
// taken from.
type Preset struct {
	Key, Label, Source string

	slope float64 // wanted toe change, degrees per mm of travel, toe-in in bump positive
	band  float64 // degrees per mm of the farther end of the window
	fixed float64 // degrees, beside what grows with the window
}

// perPlate turns inches of toe over a 15 in plate for each inch of travel into degrees per
// mm: the way in which the figures of common practice are stated.
func perPlate(inches float64) float64 {
	const plate = 15
	return solver.Angle(inches/plate).Degrees() / study.Inch.Millimetres(1)
}

// A manual's minutes of toe over 60 mm of droop, for the slope and for its band.
const (
	manualMinutes = 7.0 / 60
	manualTravel  = 60.0
)

// Presets are the curves that are usually wanted, the flattest first.
var Presets = []Preset{
	{Key: "track", Label: "Flat, for a track", band: perPlate(0.005),
		Source: "Common practice: within 0.005 in over 15 in for each inch of travel is very good."},
	{Key: "road", Label: "Flat, for the road", band: perPlate(0.030),
		Source: "Common practice: from 0.030 in over 15 in for each inch of travel on it is felt on pavement."},
	{Key: "out", Label: "Toe-out in bump", slope: perPlate(-0.010), band: perPlate(0.005),
		Source: "Common practice: toe-out in bump steers towards understeer in roll; 0.010 in over 15 in for each inch of travel, to one side over the whole of it."},
	{Key: "manual", Label: "As one road car's manual", slope: -manualMinutes / manualTravel, fixed: manualMinutes,
		Source: "A car maker's workshop manual of 1997, of a front-driven saloon: 7 minutes of toe-in over 60 mm of droop, within 7 minutes when checked."},
}

// bandOver returns the band in degrees over a window.
func (p *Preset) bandOver(mm float64) float64 { return p.fixed + p.band*mm }

// windowEnd returns the farther end of the window of the search, in mm.
func windowEnd(d *study.Document) float64 {
	w := d.SearchWindow()
	return d.Units.Millimetres(math.Max(w.Bump, w.Droop))
}

// PresetOf returns the preset that a study's target and band are; nil for none.
func PresetOf(d *study.Document, f *study.Search) *Preset {
	kind := KindOfTarget(f)
	if kind != FlatTarget && kind != SlopeTarget {
		return nil
	}
	slope := Slope(f) / d.Units.Millimetres(1)
	for i := range Presets {
		p := &Presets[i]
		if alike(slope, p.slope) && alike(f.Band, p.bandOver(windowEnd(d))) {
			return p
		}
	}
	return nil
}

// alike reports whether two figures of a target are one, whatever rounding did to them.
func alike(a, b float64) bool {
	const share = 1e-3
	return math.Abs(a-b) <= share*math.Max(math.Abs(a), math.Abs(b))
}

// SetPreset states the target and its band as a preset has them over the study's window.
func (s *Session) SetPreset(p *Preset) error {
	w, end := s.doc.SearchWindow(), windowEnd(s.doc)
	return s.EditSearch("target: "+p.Label, "", func(f *study.Search) {
		f.TargetRight = nil
		if p.slope == 0 {
			setTarget(f, nil)
		} else {
			setTarget(f, slopeTarget(w, p.slope*s.doc.Units.Millimetres(1)))
		}
		f.Band = p.bandOver(end)
	})
}

// GoodWithin returns how far off the target a toe change may be and still be good enough:
// the band about the target or, where none is stated, what a series is judged by.
func (s *Session) GoodWithin() solver.Angle {
	if f := s.doc.Search; f != nil && f.Band > 0 {
		return solver.Deg(f.Band)
	}
	return s.ToeLimit()
}

// SetBand states the band about the target, in degrees either way; 0 for none.
func (s *Session) SetBand(degrees float64) error {
	return s.EditSearch("band about the target", "", func(f *study.Search) { f.Band = degrees })
}

package model

import (
	"toewright/internal/study"
	"toewright/solver"
)

// What a clearance can be from, beside [LimitKinds] in a list to choose a
// limit from.
const (
	FromRim   = "rim"
	FromPlane = "plane"
	FromLink  = "link"
)

// Obstacles are what a part can be kept clear of.
var Obstacles = []struct{ Key, Label string }{
	{FromRim, "Clearance from the wheel's rim"},
	{FromPlane, "Clearance from a plane"},
	{FromLink, "Clearance from another link"},
}

// A clearance to begin with, in mm: a rod end and the air about it, a 14 in wheel's rim,
// the tube of a wishbone. Common practice.
const (
	usualPartRadius = 15.0
	usualGap        = 5.0
	usualRimRadius  = 170.0
	usualRimOffset  = 40.0
	usualBarRadius  = 12.0
)

// NewLimit returns a limit to begin with: on a result, or a clearance from an obstacle.
func NewLimit(d *study.Document, design *solver.Design, key string) study.Limit {
	u := d.Units.FromMillimetres
	zero, gap := 0.0, u(usualGap)
	l := study.Limit{Result: study.Clearance, Of: "outer-ball", Radius: u(usualPartRadius), Min: &gap}
	switch key {
	case FromRim:
		l.Rim = &study.Rim{Radius: u(usualRimRadius), Offset: u(usualRimOffset)}
	case FromPlane:
		l.Plane = &study.Plane{Normal: study.Vec3{0, 0, 1}}
	case FromLink:
		l.Link = &study.Link{From: design.Kind.SidePoints[0].Name, To: farEnd(design.Kind), Radius: u(usualBarRadius)}
	default:
		return study.Limit{Result: study.LimitKey(key), Min: &zero}
	}
	return l
}

// farEnd returns the point at which the usual obstacle ends: the lower ball joint or, of
// an axle without one, the second point.
func farEnd(k *solver.Kind) string {
	for _, h := range k.SidePoints {
		if h.Role == solver.LowerBallRole {
			return h.Name
		}
	}
	return k.SidePoints[1].Name
}

// clearanceLabel names a clearance by what is to be clear of what.
func clearanceLabel(l *study.Limit) string {
	part, from := string(l.Of), ""
	for _, p := range study.ClearParts {
		if p.Key == l.Of {
			part = p.Label
		}
	}
	switch {
	case l.Rim != nil:
		from = " from the rim"
	case l.Plane != nil:
		from = " from a plane"
	case l.Link != nil:
		from = " from a link"
	}
	return "Clearance of the " + part + from
}

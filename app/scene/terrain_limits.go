package scene

import (
	"toewright/app/model"
	"toewright/internal/plot"
)

// hatchStep is the distance of the strokes that fill what a limit forbids, and
// hatchGrain that of the places along a stroke at which it is asked whether it is
// forbidden there; CSS pixels.
const hatchStep, hatchGrain = 8.0, 3.0

// limits draws the edge of what each limit forbids, with its name, and hatches beyond.
// It returns the names.
func (t *Terrain) limits(p *plot.Picture, f plot.Frame) (names []lineLabel) {
	fields := t.Map.RoomFields()
	var c plot.Contours
	for i := range fields {
		g := t.inUnits(fields[i])
		fields[i] = g
		label, _ := model.LimitLabel(t.Desk.Session.Document(), &t.Map.Limits()[i])
		for c.Reset(g, 0); c.Next(); {
			p.Draw("limit", f.AppendContourLine(nil, &c))
			if at, ok := f.ContourLabel(c.Line(), leastLabelled*terrainText); ok {
				p.Write("figure", at, labelText, label)
				names = append(names, lineLabel{at, label})
			}
		}
	}
	p.Draw("forbidden", appendHatching(nil, f, fields))
	return names
}

// appendHatching strokes the frame wherever one of the fields is below zero.
func appendHatching(dst plot.Path, f plot.Frame, fields []plot.Grid) plot.Path {
	if len(fields) == 0 {
		return dst
	}
	area := f.Area
	for from := area.Min.X - area.Height(); from < area.Max.X; from += hatchStep {
		var start, last plot.Point
		down := false
		for k := 0.0; k <= area.Height(); k += hatchGrain {
			at := plot.Point{X: from + k, Y: area.Max.Y - k}
			broken := area.Contains(at) && forbidden(f, fields, at)
			switch {
			case broken && !down:
				start, down = at, true
			case !broken && down:
				dst, down = dst.Polyline(start, last), false
			}
			last = at
		}
		if down {
			dst = dst.Polyline(start, last)
		}
	}
	return dst
}

// forbidden reports whether one of the fields is below zero at a place of the frame.
func forbidden(f plot.Frame, fields []plot.Grid, at plot.Point) bool {
	x, y := f.Invert(at)
	return model.Forbidden(fields, x, y)
}

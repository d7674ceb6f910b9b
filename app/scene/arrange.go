package scene

import (
	"toewright/app/model"
	"toewright/internal/plot"
)

// Size is that of the picture, in CSS pixels.
type Size struct{ Width, Height float64 }

// areas are the places of the sheet's parts; an area without width is not shown.
type areas struct {
	chart [2]plot.Rect // of the curves alone, labels outside
	view  [viewCount]plot.Rect
	fans  bool // charts stand beside their wheels
}

// Widths and heights of the arrangement, in CSS pixels.
const (
	wideFrom  = 560 // from which charts stand beside the car
	tallFrom  = 430 // from which there is room for a second row
	edge      = 12
	labels    = 34 // of travel, outside a chart
	above     = 54 // title and read-out over a chart
	below     = 34 // toe figures under a chart
	fanWidth  = 26
	caption   = 18
	upperPart = 0.6 // of the height for the elevation and the charts
	aloneFrom = 300 // height from which a narrow sheet has room for a view too
)

// arrange lays the parts out in a size.
func arrange(size Size, face model.Face) areas {
	if size.Width < wideFrom {
		return arrangeNarrow(size, face)
	}
	var a areas
	a.fans = true
	width := min(max(size.Width*0.16, 84), 170)
	upper := size.Height
	if size.Height >= tallFrom {
		upper = size.Height * upperPart
	}
	height := upper - edge - above - below
	a.chart[0] = plot.Box(edge+labels, edge+above, width, height)
	a.chart[1] = plot.Box(size.Width-edge-labels-width, edge+above, width, height)
	left, right := a.chart[0].Max.X+fanWidth, a.chart[1].Min.X-fanWidth
	middle := frontView
	if upper == size.Height {
		middle = viewOf[face] // there is no other place for it
	}
	a.view[middle] = plot.Rect{Min: plot.Point{X: left, Y: edge}, Max: plot.Point{X: right, Y: upper - caption}}
	if upper < size.Height {
		a.second(size, upper, left, right, face == model.OrbitFace)
	}
	return a
}

// second lays the lower row out, between the heights of upper and the lower edge.
func (a *areas) second(size Size, upper, left, right float64, orbit bool) {
	row := plot.Rect{Min: plot.Point{X: edge, Y: upper}, Max: plot.Point{X: size.Width - edge, Y: size.Height - edge - caption}}
	a.view[detailView] = plot.Rect{Min: plot.Point{X: right, Y: row.Min.Y}, Max: row.Max}
	if orbit {
		a.view[orbitView] = plot.Rect{Min: row.Min, Max: plot.Point{X: right - edge, Y: row.Max.Y}}
		return
	}
	a.view[sideView] = plot.Rect{Min: row.Min, Max: plot.Point{X: left, Y: row.Max.Y}}
	a.view[planView] = plot.Rect{Min: plot.Point{X: left, Y: row.Min.Y}, Max: plot.Point{X: right, Y: row.Max.Y}}
}

// frontPart is the part of a narrow sheet's height that the elevation takes.
const frontPart = 0.4

// viewOf is the view of each face.
var viewOf = [...]int{
	model.FrontFace: frontView, model.PlanFace: planView, model.SideFace: sideView,
	model.DetailFace: detailView, model.OrbitFace: orbitView,
}

// arrangeNarrow lays one view above the two charts, as on a phone; the charts alone
// where the sheet is low as well.
func arrangeNarrow(size Size, face model.Face) areas {
	var a areas
	front := 0.0
	if size.Height >= aloneFrom {
		front = size.Height * frontPart
		a.view[viewOf[face]] = plot.Box(edge/2, 2, size.Width-edge, front-2)
	}
	width := (size.Width - 2*edge - 2*labels) / 2
	height := size.Height - front - above - below
	a.chart[0] = plot.Box(edge/2+labels, front+above, width, height)
	a.chart[1] = plot.Box(size.Width-edge/2-labels-width, front+above, width, height)
	return a
}

package scene

import (
	"toewright/app/model"
	"toewright/internal/plot"
	"toewright/solver"
)

// Size is that of the picture, in CSS pixels.
type Size struct{ Width, Height float64 }

// areas are the places of the sheet's parts; an area without width is not shown.
type areas struct {
	chart [2]plot.Rect // of the curves alone, labels outside
	view  [viewCount]plot.Rect
	large int // the view beside the chart
}

// form is how the sheet shows the two sides of the car.
type form struct {
	// half draws a car whose sides are alike to its centre line, with one chart for both
	// wheels.
	half bool
	// side is the one whose chart a narrow sheet shows.
	side solver.Side
}

// Widths and heights of the arrangement, in CSS pixels.
const (
	wideFrom  = 560 // from which there is a row of small views
	tallFrom  = 430 // from which there is room for a second row
	edge      = 12
	labels    = 36 // of travel, outside a chart
	above     = 32 // heading and read-out over a chart
	below     = 44 // toe figures, unit and sense under a chart
	fanWidth  = 30 // between a chart and the view beside it
	caption   = 20
	upperPart = 0.7 // of the height for the charts and the large view
	mostChart = 480 // of a chart's height and width
	pairChart = 304 // the most of a chart's width where there are two
	pairLeast = 200 // and the least: on a narrower sheet one chart has both curves
	leastAxle = 200 // of the width between two charts
)

// arrange lays the parts out in a size.
func arrange(size Size, face model.Face, f form) areas {
	a := areas{large: viewOf[face]}
	upper := size.Height
	if size.Width >= wideFrom && size.Height >= tallFrom {
		upper = size.Height * upperPart
		upper = min(upper, above+mostChart+below)
	}
	switch {
	case f.half && size.Width >= wideFrom:
		a.one(size.Width, upper, solver.Left, 0.46)
	case pairWidth(size.Width) >= pairLeast:
		a.pair(size.Width, upper)
	default:
		a.one(size.Width, upper, f.side, 0.5)
	}
	if upper < size.Height {
		a.second(size, upper)
	}
	return a
}

// one lays out a chart, of a part of the width at most, with the large view at its right.
func (a *areas) one(width, upper float64, side solver.Side, part float64) {
	height := upper - above - below
	wide := min(max(height, pairChart), width*part, mostChart)
	a.chart[side] = plot.Box(labels+edge/2, above, wide, height)
	left := a.chart[side].Max.X + fanWidth
	a.view[a.large] = plot.Rect{Min: plot.Point{X: left, Y: above - 8}, Max: plot.Point{X: width - edge/2, Y: upper - caption}}
}

// pairWidth is what a width has for each of two charts.
func pairWidth(width float64) float64 { return (width - 2*(labels+edge+fanWidth) - leastAxle) / 2 }

// pair lays out a chart at either side of the large view.
func (a *areas) pair(width, upper float64) {
	height := upper - above - below
	wide := min(pairWidth(width), pairChart)
	a.chart[solver.Left] = plot.Box(labels+edge/2, above, wide, height)
	a.chart[solver.Right] = plot.Box(width-labels-edge/2-wide, above, wide, height)
	a.view[a.large] = plot.Rect{
		Min: plot.Point{X: a.chart[solver.Left].Max.X + fanWidth, Y: above - 8},
		Max: plot.Point{X: a.chart[solver.Right].Min.X - fanWidth, Y: upper - caption},
	}
}

// second lays the other views out in the lower row, side by side.
func (a *areas) second(size Size, upper float64) {
	var row []int
	for _, v := range smallViews {
		if v != a.large && len(row) < smallCount {
			row = append(row, v)
		}
	}
	width := (size.Width - edge) / float64(len(row))
	for i, v := range row {
		x := edge/2 + float64(i)*width
		a.view[v] = plot.Rect{Min: plot.Point{X: x, Y: upper}, Max: plot.Point{X: x + width - edge, Y: size.Height - caption}}
	}
}

// smallViews are the views of the lower row, of which the first that are not large are
// shown.
var smallViews = []int{planView, sideView, detailView, frontView}

// smallCount is the number of views in the lower row.
const smallCount = 3

// viewOf is the view of each face.
var viewOf = [...]int{
	model.FrontFace: frontView, model.PlanFace: planView, model.SideFace: sideView,
	model.DetailFace: detailView, model.OrbitFace: orbitView,
}

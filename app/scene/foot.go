package scene

import (
	"toewright/app/model"
	"toewright/internal/plot"
)

// Sizes of the foot of a file, in CSS pixels.
const (
	footMargin  = 12
	footText    = 12
	titleHeight = 34 // of the title block's row
	cautionRow  = 18
)

// Foot returns what stands below a drawing of a width in a file: the key of the cars that
// it shows, and the title block with its caution.
func Foot(desk *model.Desk, width float64) plot.Picture {
	p := plot.Picture{Width: width}
	inner := width - 2*footMargin
	bottom := appendKey(&p, shownCars(desk), inner)
	p.TitleBlock(plot.Box(footMargin, bottom+footMargin/2, inner, titleHeight), [][]plot.Field{desk.TitleBlock()}, footText)
	bottom += footMargin/2 + titleHeight + cautionRow
	p.Write("label", plot.Anchor{At: plot.Point{X: footMargin, Y: bottom - 5}}, footText*0.85, desk.Caution())
	p.Height = bottom + footMargin/2
	return p
}

// shownCars lists the cars whose curves are drawn.
func shownCars(desk *model.Desk) []*model.Car {
	s := Stage{desk: desk, cars: desk.Session.Cars(), car: desk.Selected()}
	var list []*model.Car
	for _, car := range desk.Session.Cars().List {
		if car.Err == nil && s.visible(car) {
			list = append(list, car)
		}
	}
	return list
}

// appendKey draws a piece of each car's line with its name, and returns the height used.
func appendKey(p *plot.Picture, cars []*model.Car, width float64) float64 {
	names := make([]string, len(cars))
	for i, car := range cars {
		names[i] = car.Name
	}
	items, height := plot.Legend(plot.Point{X: footMargin}, width, footText, names)
	for i, item := range items {
		style := plot.SeriesStyle(cars[i].Index)
		p.Draw("line "+style.Class, plot.Path{}.Polyline(item.From, item.To))
		p.Draw("mark "+style.Class, plot.Path{}.Marker(style.Marker, item.Key(), markerSize*1.4))
		p.Write("label", item.Text, footText, names[i])
	}
	return height
}

package ui

import (
	"math"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"toewright/app/model"
	"toewright/app/scene"
	"toewright/internal/plot"
)

// drawn is a picture as a file.
type drawn struct {
	name          string // of the file, without its ending
	width, height float64
	svg           []byte
}

// drawingSize is that of the drawing in a file: the whole sheet, whatever the window it
// is saved from.
var drawingSize = scene.Size{Width: 1120, Height: 760}

// drawingFile returns the drawing with the key of its cars and its title block.
func drawingFile(desk *model.Desk) drawn {
	doc := desk.Session.Document()
	d := scene.Document{
		Title: doc.Name, Description: caution, Size: drawingSize,
		Foot: scene.Foot(desk, drawingSize.Width),
	}
	svg := d.Append(nil, scene.NewStage().Draw(desk, drawingSize))
	return drawn{fileName(doc.Name), drawingSize.Width, d.Height(), svg}
}

// The size of a chart of the curves, in pixels.
const curvesWidth, curvesHeight = 300.0, 340.0

// curvesOf returns the curves of cars, both wheels side by side, or one chart where they toe
// alike in all.
func curvesOf(desk *model.Desk, list []*model.Car) plot.Picture {
	n := model.NumbersOf(desk.Session.Document())
	p := plot.Picture{Width: 2 * curvesWidth, Height: curvesHeight}
	sides := model.ShownSides(list)
	width := p.Width / float64(len(sides))
	for _, side := range sides {
		title := side.String() + " wheel"
		if len(sides) == 1 {
			title = "left = right"
		}
		area := plot.Box(float64(side)*width, 0, width, curvesHeight).Inset(0, chartText*1.5, 0, 0)
		p.Write("title", plot.Anchor{At: plot.Point{X: area.Centre().X, Y: chartText * 1.2}, Align: plot.Middle}, chartText*1.1, title)
		p.Chart(model.CurvesChart(n, desk.Session.Cars(), side, list, area, chartText))
	}
	return p
}

// curvesFile returns the curves of all cars that are not hidden.
func curvesFile(desk *model.Desk) drawn {
	var list []*model.Car
	for _, car := range desk.Session.Cars().List {
		if car.Err == nil && (!car.Hidden || car == desk.Selected()) {
			list = append(list, car)
		}
	}
	p := curvesOf(desk, list)
	d := plot.Document{Title: desk.Session.Document().Name, Description: caution, Picture: p, Paper: plot.White}
	return drawn{fileName(desk.Session.Document().Name) + "-curves", p.Width, p.Height, d.Append(nil)}
}

// saveSVG hands the user a picture as lines that any size can be printed from.
func (b bench) saveSVG(ctx app.Context, d drawn) {
	download(d.name+".svg", svgType, d.svg)
	b.Say(ctx, "The picture is on its way to your downloads. "+caution, nil)
}

const svgType = "image/svg+xml"

// fine is how many pixels of a saved image stand for one of the drawing.
const fine = 2

// savePNG hands the user a picture as an image, for what does not show lines.
func (b bench) savePNG(ctx app.Context, d drawn) {
	w := app.Window()
	address := w.Get("URL").Call("createObjectURL", blobOf(svgType, d.svg))
	image := w.Get("Image").New()
	image.Set("src", address)
	await(b.Lasting, image.Call("decode"), func(ctx app.Context, _ app.Value, ok bool) {
		defer w.Get("URL").Call("revokeObjectURL", address)
		if !ok {
			b.Say(ctx, "This browser does not make an image of a drawing: save it as SVG.", nil)
			return
		}
		b.saveImage(image, d)
	})
}

// saveImage paints an image onto a canvas and hands the user what stands there.
func (b bench) saveImage(image app.Value, d drawn) {
	width, height := math.Ceil(d.width*fine), math.Ceil(d.height*fine)
	canvas := app.Window().Get("OffscreenCanvas").New(width, height)
	canvas.Call("getContext", "2d").Call("drawImage", image, 0, 0, width, height)
	await(b.Lasting, canvas.Call("convertToBlob"), func(ctx app.Context, blob app.Value, ok bool) {
		if !ok {
			b.Say(ctx, "This browser does not make an image of a drawing: save it as SVG.", nil)
			return
		}
		downloadBlob(d.name+".png", blob)
		b.Say(ctx, "The image is on its way to your downloads. "+caution, nil)
	})
}

// saveCurves hands the user the curves as a table.
func (b bench) saveCurves(ctx app.Context) {
	download(fileName(b.document().Name)+"-curves.csv", "text/csv", model.CurvesCSV(b.numbers(), b.cars()))
	b.Say(ctx, "The table is on its way to your downloads. "+caution, nil)
}

// exports are the ways in which pictures and curves are taken away.
func (b bench) exports() []command {
	return []command{
		{"Save the drawing (SVG)", "", func(ctx app.Context) { b.saveSVG(ctx, drawingFile(b.Desk)) }},
		{"Save the drawing (PNG)", "", func(ctx app.Context) { b.savePNG(ctx, drawingFile(b.Desk)) }},
		{"Save the curves (SVG)", "", func(ctx app.Context) { b.saveSVG(ctx, curvesFile(b.Desk)) }},
		{"Save the curves (PNG)", "", func(ctx app.Context) { b.savePNG(ctx, curvesFile(b.Desk)) }},
		{"Save the curves (CSV)", "", b.saveCurves},
	}
}

// Command pictures draws the curves of docs/theory.md, as SVG, from the demo car through the
// engine.
//
//	go run ./tools/pictures docs/images
package main

import (
	"context"
	"log"
	"os"
	"path/filepath"

	"toewright/internal/plot"
	"toewright/internal/study"
)

func main() {
	log.SetFlags(0)
	if len(os.Args) != 2 {
		log.Fatal("usage: pictures FOLDER")
	}
	for _, p := range pictures {
		data, err := p.draw(context.Background())
		if err == nil {
			err = os.WriteFile(filepath.Join(os.Args[1], p.name+".svg"), data, 0o666)
		}
		if err != nil {
			log.Fatalf("%s: %v", p.name, err)
		}
	}
}

// template is the study that the pictures show.
const template = "double-wishbone-rack"

// demo returns a study of its own to each picture.
func demo() *study.Document { return study.Template{Key: template}.Document() }

// picture is one file: a chart of curves by travel, which runs upward.
type picture struct {
	name, title string
	across      string // label of what the curves show
	curves      func(context.Context, *study.Document) ([]curve, error)
}

// curve is one of a picture, travels in mm.
type curve struct {
	name            string
	across, travels []float64
}

var pictures = []picture{
	{"theory-lock", "Toe by travel up to the lock at either end", "toe, deg", lock},
	{"theory-rates", "Derivative of toe change by three parameters, by travel", "deg of toe change per mm", rates},
	{"theory-search", "Toe change by travel, of the values found for least rms and for least peak", "toe change, deg", searches},
}

// Size of a picture, its text, and how many markers stand on a curve.
const (
	width, height = 560, 420
	textSize      = 13
	margin        = 8
	markers       = 8
)

// draw returns the file.
func (p *picture) draw(ctx context.Context) ([]byte, error) {
	doc := demo()
	curves, err := p.curves(ctx, doc)
	if err != nil {
		return nil, err
	}
	pic := plot.Picture{Width: width, Height: height}
	pic.Chart(p.chart(curves))
	return plot.Document{Title: p.title, Description: doc.Name + ", left wheel; an invented car.", Picture: pic, Paper: plot.White}.Append(nil), nil
}

// chart returns the chart of some curves.
func (p *picture) chart(curves []curve) plot.Chart {
	c := plot.Chart{Area: plot.Box(0, 0, width, height).Inset(margin, 0, margin, 0), Along: plot.Vertical, Size: textSize}
	var xs, ys [][]float64
	for i, k := range curves {
		xs, ys = append(xs, k.across), append(ys, k.travels)
		c.Series = append(c.Series, plot.ChartSeries{
			Name: k.name, Style: i, Curve: plot.Curve{X: k.across, Y: k.travels},
			Markers: max(len(k.travels)/markers, 1),
		})
	}
	x, _ := plot.DomainOf(xs...)
	y, _ := plot.DomainOf(ys...)
	c.X = plot.ChartAxis{Domain: x, Label: p.across}
	c.Y = plot.ChartAxis{Domain: y, Label: "travel, mm, bump up"}
	return c
}

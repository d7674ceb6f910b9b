package plot

import "strings"

// ChartAxis is one direction of a chart: what it spans and how it is labelled.
type ChartAxis struct {
	Domain
	Label     string // with the unit, "toe, deg"
	Fractions bool   // label ticks by fractions of an inch
	Signed    bool   // label ticks above 0 with a plus
}

// ticks returns at most most ticks.
func (a ChartAxis) ticks(most int) []Tick {
	write := Ticks
	if a.Fractions {
		write = FractionTicks
	}
	list := write(nil, a.Domain, most)
	for i := range list {
		if a.Signed && list[i].Value > 0 {
			list[i].Label = "+" + list[i].Label
		}
	}
	return list
}

// ChartSeries is one curve of a chart. Low and High, where there are any, are the
// edges of its band over the values of the independent variable. Markers is the
// distance, in values, between markers; zero draws none.
type ChartSeries struct {
	Name      string
	Style     int // of [SeriesStyle]
	Curve     Curve
	Low, High []float64
	Markers   int
	Readings  bool   // markers alone, without a line between them
	Class     string // of the line and the markers, besides those of the style
}

// Chart is a chart with axes, curves and legend, as it is exported and printed.
// The independent variable runs along Along; Mirrored has x grow to the left.
type Chart struct {
	Area     Rect // labels and legend included
	X, Y     ChartAxis
	Along    Axis
	Mirrored bool
	Series   []ChartSeries
	Target   Curve
	Size     float64 // of the text
	Bare     bool    // without a legend
}

// Frame returns the frame within the chart's labels and legend.
func (c Chart) Frame() Frame {
	_, legend := c.legend()
	left := c.widest(c.Y, Vertical)
	right := c.widest(c.X, Horizontal)/2 + c.Size/4 // a label stands half beside its tick
	f := NewFrame(c.Area.Inset(left+2*c.Size, c.Size, max(c.Size, right), 3*c.Size+legend), c.X.Domain, c.Y.Domain)
	if c.Mirrored {
		return f.Mirrored()
	}
	return f
}

// widest returns the width of the widest label of a tick, that of one letter at least.
func (c Chart) widest(a ChartAxis, along Axis) float64 {
	width := c.Size
	for _, tick := range a.ticks(c.most(along)) {
		width = max(width, TextWidth(tick.Label, c.Size))
	}
	return width
}

// most returns how many ticks have room along an axis.
func (c Chart) most(a Axis) int {
	if a == Vertical {
		return max(int(c.Area.Height()/(2.5*c.Size)), 3)
	}
	return max(int(c.Area.Width()/(5*c.Size)), 3)
}

// legend returns the legend as if it began at the area's lower left corner.
func (c Chart) legend() ([]LegendItem, float64) {
	if c.Bare {
		return nil, 0
	}
	names := make([]string, len(c.Series))
	for i, s := range c.Series {
		names[i] = s.Name
	}
	return Legend(Point{c.Area.Min.X, c.Area.Max.Y}, c.Area.Width(), c.Size, names)
}

// Chart adds a chart.
func (p *Picture) Chart(c Chart) {
	f := c.Frame()
	p.axes(c, f)
	p.Draw("target", f.AppendLine(nil, c.Target.X, c.Target.Y))
	for _, s := range c.Series {
		p.band(c, f, s)
	}
	for _, s := range c.Series {
		p.series(c, f, s)
	}
	p.chartLegend(c)
}

// axes adds grid, frame, zero lines, tick labels and the labels of both axes.
func (p *Picture) axes(c Chart, f Frame) {
	xs, ys := c.X.ticks(c.most(Horizontal)), c.Y.ticks(c.most(Vertical))
	p.Draw("grid", f.AppendGrid(f.AppendGrid(nil, Horizontal, xs), Vertical, ys))
	p.Draw("zero", f.AppendGrid(f.AppendGrid(nil, Horizontal, []Tick{{}}), Vertical, []Tick{{}}))
	p.Draw("frame", Path{}.Rect(f.Area))
	for _, tick := range xs {
		at := Point{f.X.At(tick.Value), f.Area.Max.Y + 1.1*c.Size}
		p.Write("tick", Anchor{At: at, Align: Middle}, c.Size, tick.Label)
	}
	for _, tick := range ys {
		at := Point{f.Area.Min.X - 0.4*c.Size, f.Y.At(tick.Value) + c.Size*capHeight/2}
		p.Write("tick", Anchor{At: at, Align: End}, c.Size, tick.Label)
	}
	middle := f.Area.Centre()
	p.Write("label", Anchor{At: Point{middle.X, f.Area.Max.Y + 2.5*c.Size}, Align: Middle}, c.Size, c.X.Label)
	p.Write("label", Anchor{At: Point{c.Area.Min.X + c.Size, middle.Y}, Align: Middle, Turn: -90}, c.Size, c.Y.Label)
}

func (p *Picture) band(c Chart, f Frame, s ChartSeries) {
	at := s.Curve.X
	if c.Along == Vertical {
		at = s.Curve.Y
	}
	p.Draw("band "+SeriesStyle(s.Style).Class, f.AppendBand(nil, c.Along, at, s.Low, s.High))
}

func (p *Picture) series(c Chart, f Frame, s ChartSeries) {
	style := SeriesStyle(s.Style)
	style.Class = strings.TrimSpace(style.Class + " " + s.Class)
	if !s.Readings {
		p.Draw("line "+style.Class, f.AppendMonotone(nil, c.Along, s.Curve.X, s.Curve.Y))
	}
	if s.Markers > 0 {
		p.Draw("mark "+style.Class, f.AppendMarkers(nil, style.Marker, c.markerSize(), s.Curve.X, s.Curve.Y, s.Markers))
	}
}

func (c Chart) markerSize() float64 { return c.Size * 0.3 }

func (p *Picture) chartLegend(c Chart) {
	items, height := c.legend()
	up := Point{0, -height}
	for i, item := range items {
		s := c.Series[i]
		style := SeriesStyle(s.Style)
		if !s.Readings {
			p.Draw("line "+style.Class, Path{}.Polyline(item.From.Add(up), item.To.Add(up)))
		}
		if s.Markers > 0 {
			p.Draw("mark "+style.Class, Path{}.Marker(style.Marker, item.Key().Add(up), c.markerSize()))
		}
		item.Text.At = item.Text.At.Add(up)
		p.Write("label", item.Text, c.Size, s.Name)
	}
}

package plot

import (
	"strings"
	"testing"
)

func smallChart() Chart {
	return Chart{
		Area: Box(10, 10, 300, 400), Along: Vertical, Size: 12,
		X:      ChartAxis{Domain: Domain{-1, 1}, Label: "toe, deg"},
		Y:      ChartAxis{Domain: Domain{-2, 2}, Label: "travel, in", Fractions: true},
		Series: []ChartSeries{{Name: "base", Curve: Curve{X: []float64{-1, 0, 1}, Y: []float64{-2, 0, 2}}, Markers: 1}},
	}
}

// classes returns the path data of each class, joined.
func classes(p Picture) map[string]string {
	found := map[string]string{}
	for _, m := range p.Marks {
		found[m.Class] += m.Path.String() + m.Text + "|"
	}
	return found
}

func TestChartStaysInItsArea(t *testing.T) {
	for _, c := range []Chart{smallChart(), {Area: Box(0, 0, 200, 200), Size: 10}} {
		var p Picture
		p.Chart(c)
		for _, m := range p.Marks {
			if m.Text != "" && m.Anchor.Turn == 0 {
				box := m.Anchor.box(m.Text, m.Size)
				wantWithin(t, Path{}.Rect(box), c.Area)
			}
			wantWithin(t, m.Path, c.Area)
		}
	}
}

func TestChartParts(t *testing.T) {
	c := smallChart()
	var p Picture
	p.Chart(c)
	got := classes(p)
	if !strings.Contains(got["tick"], "−1 1/2|") || !strings.Contains(got["tick"], "−0.5|") {
		t.Errorf("ticks %q, want fractions up and decimals across", got["tick"])
	}
	if got["label"] != "toe, deg|travel, in|base|" {
		t.Errorf("labels %q", got["label"])
	}
	for _, class := range []string{"grid", "zero", "frame", "line s0", "mark s0"} {
		if got[class] == "" {
			t.Errorf("no %s", class)
		}
	}
	for _, class := range []string{"target", "band s0"} {
		if got[class] != "" {
			t.Errorf("%s %q was not asked for", class, got[class])
		}
	}
}

func TestChartReadingsHaveNoLine(t *testing.T) {
	c := smallChart()
	c.Series[0].Readings = true
	var p Picture
	p.Chart(c)
	if got := classes(p); got["line s0"] != "" || got["mark s0"] == "" {
		t.Errorf("line %q, markers %q, want markers alone", got["line s0"], got["mark s0"])
	}
}

func TestChartBandAndTarget(t *testing.T) {
	c := smallChart()
	c.Series[0].Low, c.Series[0].High = []float64{-1, -0.5, 0.5}, []float64{-0.5, 0.5, 1}
	c.Target = Curve{X: []float64{0, 0}, Y: []float64{-2, 2}}
	var p Picture
	p.Chart(c)
	got := classes(p)
	if !strings.HasSuffix(got["band s0"], "Z|") || strings.Count(got["target"], "L") != 1 {
		t.Errorf("band %q, target %q", got["band s0"], got["target"])
	}
}

func TestChartMirrored(t *testing.T) {
	c := smallChart()
	right := c.Frame()
	c.Mirrored = true
	left := c.Frame()
	if left.X.At(1) != right.X.At(-1) || left.Y != right.Y {
		t.Errorf("mirrored %v, plain %v", left, right)
	}
}

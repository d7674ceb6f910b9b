package plot

import "testing"

func TestPicture(t *testing.T) {
	var p Picture
	p.Draw("part", nil)
	p.Write("label", Anchor{}, 10, "")
	if len(p.Marks) != 0 {
		t.Errorf("empty marks were kept: %v", p.Marks)
	}
	path := Path{}.Polyline(Point{0, 0}, Point{1, 1})
	p.Draw("part", path)
	path[0] = 'X'
	if got := p.Marks[0].Path.String(); got != "M0 0L1 1" {
		t.Errorf("the picture shares the path's buffer: %q", got)
	}
}

func TestPictureDimensionMayBeDrawnAgain(t *testing.T) {
	var p Picture
	var d Dimension
	d.Horizontal(Point{0, 0}, Point{100, 0}, 30, 20, 10)
	p.Dimension(&d, 10, "100")
	first := p.Marks[0].Path.String()
	d.Horizontal(Point{0, 0}, Point{200, 0}, 40, 20, 10)
	p.Dimension(&d, 10, "200")
	if got := p.Marks[0].Path.String(); got != first || len(p.Marks) != 6 {
		t.Errorf("%d marks, the first became %q, was %q", len(p.Marks), got, first)
	}
}

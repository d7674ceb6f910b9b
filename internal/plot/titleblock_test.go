package plot

import "testing"

func TestTitleBlock(t *testing.T) {
	var p Picture
	area := Box(100, 200, 300, 80)
	long := "a name that is far too long for the narrow field"
	p.TitleBlock(area, [][]Field{
		{{Label: "drawing", Value: "Arm", Part: 2}, {Label: "rev.", Value: long}},
		{{Label: "date"}},
	}, 12)
	last := p.Marks[len(p.Marks)-1]
	want := "M100 200L400 200L400 280L100 280Z" + "M300 200L300 240" + "M100 240L400 240"
	if got := last.Path.String(); got != want {
		t.Errorf("lines = %q, want %q", got, want)
	}
	for _, m := range p.Marks[:len(p.Marks)-1] {
		box := m.Anchor.box(m.Text, m.Size)
		if box.Min.X < area.Min.X || box.Max.X > area.Max.X || box.Max.Y > area.Max.Y {
			t.Errorf("%q covers %v, outside %v", m.Text, box, area)
		}
		if m.Text == long && !(m.Size < 12) {
			t.Errorf("%q was not made smaller", m.Text)
		}
	}
}

func TestTitleBlockOfNothing(t *testing.T) {
	var p Picture
	p.TitleBlock(Box(0, 0, 10, 10), nil, 12)
	if len(p.Marks) != 1 || p.Marks[0].Class != "frame" {
		t.Errorf("marks = %v, want the frame alone", p.Marks)
	}
}

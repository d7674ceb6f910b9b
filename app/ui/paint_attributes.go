package ui

import (
	"strconv"

	"toewright/app/scene"
)

// nodeAttribute is one of an element's; an empty value is none, an empty name is the
// element's text.
type nodeAttribute struct{ name, value string }

// nodeText is a text of the picture.
type nodeText scene.Text

// attributes returns those of a text's element, always the same ones in the same order.
func (t nodeText) attributes() [5]nodeAttribute {
	list := [...]nodeAttribute{{"", t.Content}, {"x", ""}, {"y", ""}, {"text-anchor", ""}, {"transform", ""}}
	if t.Content == "" {
		return list
	}
	x, y := coordinate(t.At.X), coordinate(t.At.Y)
	list[1].value, list[2].value, list[3].value = x, y, t.Align.String()
	if t.Turn != 0 {
		list[4].value = "rotate(" + coordinate(t.Turn) + " " + x + " " + y + ")"
	}
	return list
}

// class returns the classes of a handle's element.
func (g grip) class() string {
	c := "handle"
	if g.Round {
		c += " ball-handle"
	}
	if g.Held {
		c += " held"
	}
	return c
}

// attributes returns those of a handle's element, always the same ones in the same
// order.
func (g grip) attributes() [10]nodeAttribute {
	list := [...]nodeAttribute{
		{"display", "none"}, {"class", g.class()}, {"transform", ""}, {"tabindex", ""}, {"aria-hidden", "true"},
		{"aria-label", g.Label}, {"aria-valuenow", coordinate(g.Value)}, {"aria-valuemin", coordinate(g.Low)},
		{"aria-valuemax", coordinate(g.High)}, {"aria-valuetext", g.Spoken},
	}
	if g.Shown {
		list[0].value = ""
		list[2].value = "translate(" + coordinate(g.X) + " " + coordinate(g.Y) + ")"
	}
	if g.Shown && g.Focus {
		list[3].value, list[4].value = "0", ""
	}
	return list
}

// coordinate writes a number as SVG reads it, to a hundredth of a unit of the paper.
func coordinate(v float64) string { return strconv.FormatFloat(v, 'f', 2, 64) }

package scene

import (
	"strconv"

	"toewright/internal/plot"
	"toewright/solver"
)

// Slot is one node of the picture.
type Slot int

// nodeKind is what a node is in SVG.
type nodeKind uint8

const (
	pathNode nodeKind = iota
	textNode
	clipNode // the path that the rest of its group is cut to
)

// node describes a slot.
type node struct {
	kind  nodeKind
	group string // the group that it stands in
	class string
	align plot.Align
	kept  bool // from frame to frame; see [Output.clear]
}

// The most texts of each sort that are shown at once.
const (
	maxTravelTicks = 13
	maxToeTicks    = 7
	maxFigures     = 4
	maxBands       = 3
	maxSetUps      = 6
)

// chartSlots are the nodes of one wheel's chart.
type chartSlots struct {
	grid, zero, frame, target, readings Slot
	within                              Slot // the tolerance of the target
	other                               Slot // the selected car's curve of the side without a chart
	setUps, binding                     Slot // the selected car as the search's set-ups have it, and that which decides
	setUpNames                          [maxSetUps]Slot
	tried, triedName                    Slot // the best so far of a search that runs
	bands                               [maxBands]Slot
	curves, marks                       [plot.MaxSeries]Slot
	fan, leader, marker                 Slot
	times                               Slot // by how much the bracket of true travel is enlarged
	travelTicks                         [maxTravelTicks]Slot
	toeTicks                            [maxToeTicks]Slot
	title, unit, in, out                Slot
	readout, readingKey                 Slot
}

// viewSlots are the nodes of one view of the car.
type viewSlots struct {
	clip, rim                                           Slot
	ground, tyre, knuckle, part, body, rod, ball, ghost Slot
	axis, instant, pointed                              Slot
	lines, heads, load                                  Slot
	figures                                             [maxFigures]Slot
	caption, name, letter, centre                       Slot
	gap, middle, strokes                                Slot // what is broken out, the centre line of a half view and its sign
	travel, loads                                       [2]Slot
}

// The views of the car.
const (
	frontView = iota
	planView
	sideView
	orbitView
	detailView
	viewCount
)

var viewNames = [viewCount]string{"front", "plan", "side", "orbit", "detail"}

// slots are all nodes of the picture.
type slots struct {
	list   []node
	charts [2]chartSlots
	views  [viewCount]viewSlots
}

// nodes is the one list of nodes; its order is the order in which they are painted.
var nodes = newSlots()

func newSlots() *slots {
	s := &slots{}
	for _, side := range solver.Sides {
		s.addChart(side)
	}
	for v := range viewCount {
		s.addView(v)
	}
	return s
}

// SlotCount is the number of nodes of the picture.
func SlotCount() int { return len(nodes.list) }

// IsText reports whether a slot holds a text rather than a path.
func (s Slot) IsText() bool { return nodes.list[s].kind == textNode }

// ID returns the id of the slot's element.
func (s Slot) ID() string { return "n" + strconv.Itoa(int(s)) }

func (s *slots) path(group, class string) Slot {
	s.list = append(s.list, node{kind: pathNode, group: group, class: class})
	return Slot(len(s.list) - 1)
}

func (s *slots) text(group, class string, a plot.Align) Slot {
	s.list = append(s.list, node{kind: textNode, group: group, class: class, align: a})
	return Slot(len(s.list) - 1)
}

func (s *slots) addChart(side solver.Side) {
	c, g := &s.charts[side], "chart "+side.String()
	c.fan = s.path(g, "fan")
	c.within = s.path(g, "within")
	c.grid, c.zero, c.frame = s.path(g, "grid"), s.path(g, "zero"), s.path(g, "frame")
	for i := range c.bands {
		c.bands[i] = s.path(g, "band "+plot.SeriesStyle(i).Class)
	}
	c.target = s.path(g, "target")
	for i := range c.curves {
		// The base car is painted first, and over it the candidates.
		c.curves[i] = s.path(g, "line "+plot.SeriesStyle(i).Class)
		c.marks[i] = s.path(g, "mark "+plot.SeriesStyle(i).Class)
		s.list[c.curves[i]].kept, s.list[c.marks[i]].kept = true, true
	}
	c.other = s.path(g, "other")
	c.setUps, c.binding = s.path(g, "set-ups"), s.path(g, "set-ups binding")
	c.tried = s.path(g, "tried")
	c.readings = s.path(g, "reading")
	c.leader, c.marker = s.path(g, "leader"), s.path(g, "marker")
	for i := range c.travelTicks {
		c.travelTicks[i] = s.text(g, "tick", plot.End)
	}
	for i := range c.toeTicks {
		c.toeTicks[i] = s.text(g, "tick", plot.Middle)
	}
	for i := range c.setUpNames {
		c.setUpNames[i] = s.text(g, "name", plot.Middle)
	}
	c.triedName = s.text(g, "name", plot.Middle)
	c.times = s.text(g, "tick", plot.Middle)
	c.title, c.unit = s.text(g, "heading", plot.Start), s.text(g, "tick", plot.Middle)
	c.in, c.out = s.text(g, "sense", plot.End), s.text(g, "sense", plot.Start)
	c.readout, c.readingKey = s.text(g, "readout", plot.End), s.text(g, "name", plot.Start)
}

func (s *slots) addView(v int) {
	w, g := &s.views[v], "view "+viewNames[v]
	w.clip = s.path(g, "")
	s.list[w.clip].kind = clipNode
	w.ground, w.instant = s.path(g, "ground"), s.path(g, "instant")
	w.tyre, w.axis = s.path(g, "tyre"), s.path(g, "axis")
	w.body, w.part, w.knuckle = s.path(g, "body"), s.path(g, "solid"), s.path(g, "knuckle")
	w.ghost, w.rod, w.ball = s.path(g, "ghost"), s.path(g, "solid rod"), s.path(g, "ball")
	w.pointed = s.path(g, "pointed")
	g = "labels " + viewNames[v]
	w.rim = s.path(g, "rim")
	w.lines, w.heads = s.path(g, "thin change"), s.path(g, "head change")
	for i := range w.figures {
		w.figures[i] = s.text(g, "figure change", plot.Start)
	}
	w.caption, w.name = s.text(g, "caption", plot.Middle), s.text(g, "name", plot.Middle)
	w.letter, w.centre = s.text(g, "letter", plot.Middle), s.text(g, "name", plot.Start)
	w.gap = s.path(g, "gap")
	w.middle, w.strokes = s.path(g, "axis"), s.path(g, "strokes")
	w.load = s.path(g, "load")
	for i := range w.travel {
		w.travel[i], w.loads[i] = s.text(g, "travel", plot.Middle), s.text(g, "name load", plot.Middle)
	}
}

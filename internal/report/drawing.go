package report

import (
	"math"

	"toewright/internal/engine"
	"toewright/internal/plot"
)

// Sizes of the drawing of an arm: on the paper in CSS pixels, of parts in mm.
const (
	armHeight  = 150.0
	textSize   = 11.0
	viewMargin = 30.0 // about a view, for its dimensions
	captionGap = 16.0 // below a view
	dimOff     = 20.0 // of a dimension line from what it measures
	steelWidth = 20.0
	holeRadius = 8.0
	bossWidth  = 30.0 // square to the stud
	bossHeight = 18.0 // along it
	studReach  = 20.0 // of the stud's centre line from the hole
	axisReach  = 34.0 // of the steering axis from the arm
	rodReach   = 44.0 // of the tie rod that is drawn
	rodWidth   = 12.0
)

// leastDrawn is the least displacement to the side, in mm, that a drawing dimensions;
// the table has all.
const leastDrawn = 0.5

// armView is one of the views of an arm.
type armView struct {
	name  string
	width float64 // on the paper
	plot.View
	plan bool // the stud is seen end on
}

// armViews returns the views of one side's arm. That from above lies as the one from
// outside, whose edge next to the reader is its lower one.
func armViews(side string) [3]armView {
	behind := armView{"from behind", 170, plot.Behind, false}
	if side == "right" {
		above := plot.View{Right: plot.Vec{X: 1}, Up: plot.Vec{Y: 1}, Out: plot.Vec{Z: 1}}
		return [3]armView{
			{"right arm from above, forward right", 265, above, true},
			{"from the right", 265, plot.RightSide, false}, behind,
		}
	}
	above := plot.View{Right: plot.Vec{X: -1}, Up: plot.Vec{Y: -1}, Out: plot.Vec{Z: 1}}
	return [3]armView{
		{"left arm from above, forward left", 265, above, true},
		{"from the left", 265, plot.LeftSide, false}, behind,
	}
}

// arm is a steering arm in vehicle axes, mm.
type arm struct {
	was, now         plot.Vec // hole for the outer ball
	wasFoot, nowFoot plot.Vec // point of the steering axis at the hole's height
	axis, stud       plot.Vec // directions of length 1
	rod              plot.Vec // direction of the tie rod, inward
}

func newArm(n numbers, a *engine.ArmSide) arm {
	p := &a.Place
	outboard := a.Car[1]
	if a.Side == "right" {
		outboard = -outboard
	}
	out := arm{
		was: n.place(p.Hole), wasFoot: n.place(p.Foot), axis: direction(p.Axis), stud: direction(p.Stud),
	}
	out.now = out.was.Add(n.place([3]float64{a.Car[0], outboard, a.Car[2]}))
	rise := out.now.Z - out.was.Z
	out.nowFoot = out.wasFoot.Add(out.axis.Times(rise / out.axis.Z))
	rod := n.place(p.Inner).Sub(out.was)
	out.rod = rod.Times(1 / rod.Length())
	return out
}

// place returns a point of the study in mm.
func (n numbers) place(v [3]float64) plot.Vec { return direction(v).Times(n.file.Millimetres(1)) }

func direction(v [3]float64) plot.Vec { return plot.Vec{X: v[0], Y: v[1], Z: v[2]} }

// armPicture draws an arm in three views of one scale: the new hole and arm in full
// lines, the original dashed.
func armPicture(n numbers, side *engine.ArmSide) plot.Picture {
	d := &armDrawing{n: n, arm: newArm(n, side), side: side}
	views := armViews(side.Side)
	var placed [len(views)]plot.Projection
	scale, x := math.Inf(1), 0.0
	for i, v := range views {
		area := plot.Box(x, 0, v.width, armHeight-captionGap)
		placed[i] = plot.Fit(v.View, area.Inset(viewMargin, viewMargin, viewMargin, viewMargin), d.extent(v.plan)...)
		scale = min(scale, placed[i].Scale)
		at := plot.Point{X: area.Centre().X, Y: armHeight - 4}
		d.picture.Write("label", plot.Anchor{At: at, Align: plot.Middle}, textSize, v.name)
		x += v.width
	}
	d.picture.Width, d.picture.Height = x, armHeight
	for i, v := range views {
		d.Projection, d.plan = placed[i], v.plan
		d.Scale = scale
		d.view()
	}
	return d.picture
}

// armDrawing is the drawing of one arm.
type armDrawing struct {
	plot.Projection
	arm
	n       numbers
	side    *engine.ArmSide
	plan    bool
	picture plot.Picture
	dim     plot.Dimension
}

// extent returns points about all that a view shows.
func (d *armDrawing) extent(plan bool) []plot.Vec {
	reach := plot.Vec{X: bossWidth / 2, Y: bossWidth / 2, Z: studReach}
	list := []plot.Vec{d.was.Add(reach), d.was.Sub(reach), d.now.Add(reach), d.now.Sub(reach)}
	if plan {
		return append(list, d.wasFoot, d.nowFoot)
	}
	return append(list, d.wasFoot.Add(d.axis.Times(axisReach)), d.wasFoot.Sub(d.axis.Times(axisReach)))
}

// view draws the arm by the projection that is set.
func (d *armDrawing) view() {
	d.centreLines()
	d.steel("part ghost", d.wasFoot, d.was)
	d.steel("part", d.nowFoot, d.now)
	d.tieRod()
	d.hole("part ghost", d.was)
	d.hole("solid", d.now)
	if d.plan {
		d.planDimensions()
		return
	}
	d.elevationDimensions()
}

// centreLines draws the steering axis, and the stud through the new hole.
func (d *armDrawing) centreLines() {
	line := plot.Path{}
	if d.plan {
		for _, c := range []plot.Vec{d.nowFoot, d.now} {
			at := d.At(c)
			h, v := plot.Point{X: bossWidth * 0.7 * d.Scale}, plot.Point{Y: bossWidth * 0.7 * d.Scale}
			line = line.Polyline(at.Sub(h), at.Add(h)).Polyline(at.Sub(v), at.Add(v))
		}
	} else {
		line = line.Polyline(d.At(d.wasFoot.Sub(d.axis.Times(axisReach))), d.At(d.wasFoot.Add(d.axis.Times(axisReach))))
		line = line.Polyline(d.At(d.now.Sub(d.stud.Times(studReach))), d.At(d.now.Add(d.stud.Times(studReach))))
	}
	d.picture.Draw("thin centre", line)
}

// steel draws an arm from the steering axis to its hole.
func (d *armDrawing) steel(class string, foot, hole plot.Vec) {
	path := plot.AppendBar(nil, d.At(foot), d.At(hole), steelWidth*d.Scale, holeRadius*1.6*d.Scale)
	if d.plan {
		path = path.Circle(d.At(foot), holeRadius*1.6*d.Scale)
	}
	d.picture.Draw(class, path)
}

// hole draws the boss about a hole: seen along the stud as circles, else as the
// rectangle of its section.
func (d *armDrawing) hole(class string, at plot.Vec) {
	c := d.At(at)
	if d.plan {
		d.picture.Draw(class, plot.Path{}.Circle(c, bossWidth/2*d.Scale))
		d.picture.Draw(class, plot.Path{}.Circle(c, holeRadius*d.Scale))
		return
	}
	up := d.Step(d.stud).Unit()
	half, side := up.Times(bossHeight/2*d.Scale), up.Across().Times(bossWidth/2*d.Scale)
	d.picture.Draw(class, plot.Path{}.Polygon(c.Add(half).Add(side), c.Add(half).Sub(side), c.Sub(half).Sub(side), c.Sub(half).Add(side)))
}

// tieRod draws the beginning of the tie rod at the new hole.
func (d *armDrawing) tieRod() {
	end := d.At(d.now.Add(d.rod.Times(rodReach)))
	d.picture.Draw("thin", plot.AppendBar(nil, d.At(d.now), end, rodWidth*d.Scale, bossWidth/2*d.Scale))
}

// elevationDimensions dimensions, from outside, how far the hole moved up or down
// and, in either view, to the side.
func (d *armDrawing) elevationDimensions() {
	was, now := d.At(d.was), d.At(d.now)
	across := d.side.Car[1]
	if d.View != plot.Behind {
		across = d.side.Car[0]
		d.drop(was, now)
	}
	if d.n.file.Millimetres(math.Abs(across)) < leastDrawn {
		return
	}
	text := d.n.length(math.Abs(across))
	y := min(was.Y, now.Y) - studReach*d.Scale - dimOff/2
	d.dim.Horizontal(was, now, y, plot.TextWidth(text, textSize), textSize)
	d.picture.Dimension(&d.dim, textSize, text)
}

// drop dimensions how far the hole moved up or down, beyond the end of the arm.
func (d *armDrawing) drop(was, now plot.Point) {
	up := d.side.Car[2]
	if d.n.nothing(up) {
		return
	}
	text := d.n.length(math.Abs(up))
	away := math.Copysign(bossWidth/2*d.Scale+dimOff, was.X-d.At(d.wasFoot).X)
	d.dim.Vertical(was, now, now.X+away, plot.TextWidth(text, textSize), textSize)
	d.picture.Dimension(&d.dim, textSize, text)
}

// planDimensions dimensions the length of the arm below it, and above it that of the
// original where it differs.
func (d *armDrawing) planDimensions() {
	l := d.side.Arm
	d.armLength(d.nowFoot, d.now, d.n.length(l.After), dimOff)
	if !d.n.nothing(l.After - l.Before) {
		d.armLength(d.wasFoot, d.was, "("+d.n.length(l.Before)+")", -dimOff)
	}
}

// armLength dimensions an arm off its line, downward for a positive distance.
func (d *armDrawing) armLength(foot, hole plot.Vec, text string, off float64) {
	from, to := d.At(foot), d.At(hole)
	if to.X < from.X {
		from, to = to, from
	}
	off += math.Copysign(bossWidth/2*d.Scale, off)
	d.dim.Straight(from, to, to.Sub(from), off, plot.TextWidth(text, textSize), textSize)
	d.picture.Dimension(&d.dim, textSize, text)
}

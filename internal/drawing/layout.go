package drawing

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"toewright/internal/drawing/dxf"
)

// layout places the views of an arm and draws them. The main view stays where its origin lies
// at that of the paper.
type layout struct {
	*pen
	*part
	at     [3]*sheetView
	lo, hi [3]dxf.Point // corners of each view from its own origin
	side   float64      // 1 where the ball is at the right of the main view, else -1
}

func (p *part) newLayout(scale float64) *layout {
	b := &layout{pen: &pen{}, part: p, side: 1}
	views := p.views(scale)
	for i, v := range views {
		probe := &sheetView{&pen{}, p, v}
		probe.draw()
		b.lo[i], b.hi[i] = probe.extent()
		b.at[i] = &sheetView{b.pen, p, v}
	}
	if r3.Dot(views[endView].out(), views[mainView].right) < 0 {
		b.side = -1
	}
	return b
}

// inThirdAngle draws what is seen from above over the main view, and what is seen from the end
// at that end.
func (b *layout) inThirdAngle(hand string) {
	lo, hi, main, plan, end := &b.lo, &b.hi, b.at[mainView], b.at[planView], b.at[endView]
	plan.at.Y = hi[mainView].Y + headHigh + viewGap - lo[planView].Y
	if b.face == nil {
		plan.at.Y += datumLong
	}
	if room := hi[endView].Y + b.askedHigh(); plan.at.Y+hi[planView].Y+headHigh < room {
		plan.at.Y = room - headHigh - hi[planView].Y
	}
	right := 0.0
	for _, i := range []int{mainView, planView} { // their names may be wider
		right = max(right, hi[i].X, lo[mainView].X+width(small, b.at[i].name)+headWide+3)
	}
	between := b.between()
	right += between
	if b.side > 0 {
		end.at.X = right + viewGap - lo[endView].X
	} else {
		end.at.X = lo[mainView].X - viewGap - hi[endView].X - between
	}
	b.views()
	b.mainSizes(main, lo[mainView], hi[mainView], b.side)
	b.planSizes(plan, lo[planView], hi[planView], b.side)
	b.endSizes(end, lo[endView], hi[endView], b.side)
	x, near := right+viewGap, 0.0
	if b.side < 0 {
		x, near = lo[mainView].X-viewGap-between-askedWide, askedWide+0.5
	}
	y := b.title(x, plan.at.Y+hi[planView].Y+headHigh-letter, hand, false)
	next := b.askedHole(x, y)
	hole := plan.place(b.hole)
	b.leader(x+near, y+boxHigh/2, hole.X+b.side*b.boss()/2*plan.scale, hole.Y)
	end.askedBolts(x, next)
}

// inFirstAngle draws what is seen from above under the main view, and what is seen from the end
// at the other end.
func (b *layout) inFirstAngle(hand string) {
	lo, hi, main, plan, end := &b.lo, &b.hi, b.at[mainView], b.at[planView], b.at[endView]
	away := viewGap + b.between()
	if b.face != nil {
		away += datumLong
	}
	if b.side > 0 {
		end.at.X = lo[mainView].X - away - hi[endView].X
	} else {
		// The names of the other views run to the right of theirs.
		right := max(hi[mainView].X, lo[mainView].X+width(small, main.name)+headWide+3)
		end.at.X = max(right+viewGap, hi[mainView].X+away) - lo[endView].X
	}
	main.draw()
	end.draw()
	b.mainSizes(main, lo[mainView], hi[mainView], b.side)
	b.endSizes(end, lo[endView], hi[endView], -b.side)
	left := end.at.X + lo[endView].X
	if b.side > 0 {
		left = min(left, end.at.X+hi[endView].X-headWide)
	}
	end.askedBolts(left, hi[endView].Y+boxHigh+3)
	b.title(lo[mainView].X, hi[mainView].Y+headHigh+2, hand, true)
	below, _ := b.extent()
	plan.at.Y = below.Y - viewGap - headHigh - hi[planView].Y
	plan.draw()
	b.planSizes(plan, lo[planView], hi[planView], -b.side)
	x, near := left, askedWide+0.5
	if b.side < 0 {
		near = 0
	}
	hole := plan.place(b.hole)
	y := min(below.Y-viewGap-boxHigh, plan.at.Y+lo[planView].Y-boxHigh-1)
	if b.face == nil { // its datum hangs under the ball, and its arm lies askew
		low, _ := b.extent()
		x, y = hole.X-b.side*(datumLong+near)-(1-b.side)/2, low.Y-viewGap
	}
	b.askedHole(x, y)
	b.leader(x+near, y+boxHigh/2, hole.X-b.side*b.boss()/2*plan.scale*sin45, hole.Y-b.boss()/2*plan.scale*sin45)
}

// sin45 places the end of a leader on the lower quarter of a circle.
const sin45 = math.Sqrt2 / 2

// views draws all of them.
func (b *layout) views() {
	for i := range b.at {
		b.at[i].draw()
	}
}

// between is what the angle of the hole's axis needs between the main view and that from the
// end.
func (b *layout) between() float64 {
	if b.angle(b.at[endView].along(b.stud)) == "" {
		return 0
	}
	return 2 * viewGap
}

// title writes whose arm it is on a line, with how it is to the other under it or beside it,
// and returns where a frame may stand under it.
func (b *layout) title(x, y float64, hand string, beside bool) (next float64) {
	text := upper(b.Side + " arm")
	b.text(words, x, y, letter, dxf.Left, text)
	if beside {
		b.text(words, x+width(letter, text)+2, y, small, dxf.Left, hand)
		return y
	}
	y -= small + 1
	b.text(words, x, y, small, dxf.Left, hand)
	return y - boxHigh - 1.5
}

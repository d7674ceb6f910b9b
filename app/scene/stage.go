package scene

import (
	"toewright/app/model"
	"toewright/internal/plot"
	"toewright/solver"
)

// Stage draws frame after frame of one desk, with buffers that it keeps. It belongs
// to one goroutine.
type Stage struct {
	// Holding keeps the scale of toe from shrinking while something is dragged.
	Holding bool

	desk    *model.Desk
	cars    *model.Cars
	car     *model.Car
	numbers model.Numbers
	size    Size

	ws      *solver.Workspace
	rig     *rig
	rigOf   *solver.Design
	placed  solver.Placed // the selected car where the view has it
	ghost   solver.Placed // the reference there
	home    solver.Placed // the base car at ride height, straight ahead
	static  solver.Placed // the selected car with its steering, at ride height
	travel  [2]float64    // of the wheels as drawn, within reach
	moved   [2]solver.Curve
	instant [2]solver.Curve
	forces  [2]solver.Forces // under the load case drawn

	form    form
	areas   areas
	views   [viewCount]linkage
	charts  [2]chart
	marker  [2]plot.Point
	toe     plot.Domain
	toeUnit string
	handles []Handle
	dim     plot.Dimension
	out     *Output
	err     error
}

// NewStage returns a stage with nothing on it.
func NewStage() *Stage {
	s := &Stage{ws: solver.NewWorkspace(), out: NewOutput()}
	for _, side := range solver.Sides {
		s.charts[side] = chart{side: side, slots: &nodes.charts[side]}
	}
	return s
}

// Draw composes the desk on a paper of a size. What it returns holds until the next
// frame.
func (s *Stage) Draw(desk *model.Desk, size Size) *Output {
	s.out.clear()
	s.handles = s.handles[:0]
	s.desk, s.size, s.cars = desk, size, desk.Session.Cars()
	s.numbers = model.NumbersOf(desk.Session.Document())
	if s.err = s.position(); s.car == nil {
		s.emptyCurves()
		return s.out
	}
	s.form = s.formOf()
	s.areas = arrange(size, desk.View.Face, s.form)
	s.out.class = classOf(s.car.Index, s.reference())
	s.layCharts()
	s.arrangeViews()
	s.drawViews()
	s.drawCharts()
	s.findHandles()
	return s.out
}

// reference returns the index of the car that the selected one is held against.
func (s *Stage) reference() int {
	if car := s.cars.At(s.desk.View.Yardstick); car != nil && car.Err == nil {
		return car.Index
	}
	return 0
}

// Err says why the frame does not show what the desk asks for: a car that cannot be
// solved, a position that cannot be reached.
func (s *Stage) Err() error { return s.err }

// shown reports whether a view is on the sheet.
func (s *Stage) shown(view int) bool { return s.areas.view[view].Width() > 0 }

// charted reports whether a side has a chart on the sheet.
func (s *Stage) charted(side solver.Side) bool { return s.areas.chart[side].Width() > 0 }

// lone reports whether the sheet has one chart alone, of which the large view stands at the
// right.
func (s *Stage) lone() bool { return !s.charted(solver.Left) || !s.charted(solver.Right) }

// mirrored reports whether toe-in points to the left on the chart of a side: where both
// charts are on the sheet it points to the middle of the car. A chart that stands alone
// never turns.
func (s *Stage) mirrored(side solver.Side) bool {
	return side == solver.Right && s.charted(solver.Left)
}

// layCharts fills the curves of the charts and sets their frames.
func (s *Stage) layCharts() {
	for i := range s.charts {
		s.fillCurves(&s.charts[i])
	}
	s.frames(&s.areas)
}

// drawCharts draws the charts.
func (s *Stage) drawCharts() {
	for _, side := range solver.Sides {
		c := &s.charts[side]
		if !s.charted(side) {
			for i := range c.curves {
				s.emptyCurve(c, i)
			}
			continue
		}
		s.drawChart(c)
		s.drawFan(c)
	}
}

// fillCurves sets the curves of a chart: those of the cars that are not hidden.
func (s *Stage) fillCurves(c *chart) {
	for i := range c.curves {
		k := &c.curves[i]
		car := s.cars.At(i)
		if car == nil || car.Err != nil || !s.visible(car) {
			s.emptyCurve(c, i)
			continue
		}
		if rate, ok := s.swept(c.side); ok && car == s.car {
			k.take(s.numbers, &s.moved[c.side], rate)
			continue
		}
		k.fill(s.numbers, car, c.side)
	}
}

// emptyCurve takes the curve of car i off a chart.
func (s *Stage) emptyCurve(c *chart, i int) {
	c.curves[i].empty()
	s.out.empty(c.slots.curves[i])
	s.out.empty(c.slots.marks[i])
}

// emptyCurves takes all curves off both charts.
func (s *Stage) emptyCurves() {
	for i := range s.charts {
		for k := range s.charts[i].curves {
			s.emptyCurve(&s.charts[i], k)
		}
	}
}

// visible reports whether the curve of a car is drawn.
func (s *Stage) visible(car *model.Car) bool {
	if car == s.car {
		return true
	}
	return !car.Hidden && (!s.desk.View.Alone || car.Index == s.reference())
}

package scene

import (
	"math"

	"toewright/app/model"
	"toewright/internal/plot"
	"toewright/solver"
)

// Moving is a car seen from behind, straight ahead, that is moved through its travel: a
// picture of its own, each of its paths in memory that is kept.
type Moving struct {
	car      *model.Car
	under    *Moving // whose arms and rods are drawn dashed; nil of none
	ws       *solver.Workspace
	view     linkage
	home, at solver.Placed
	paths    [len(MovingClasses)]plot.Path
}

// MovingClasses are the classes of the picture's paths, in the order in which they are painted.
var MovingClasses = [...]string{"ground", "tyre", "axis", "body", "solid", "knuckle", "ghost", "solid rod", "ball"}

// NewMoving returns a car at ride height on a paper of a size, with the travels, mm, that it
// is to be moved through. Over another car it is drawn to that one's scale.
func NewMoving(car *model.Car, under *Moving, travels []float64, size Size) (*Moving, error) {
	if car.Err != nil {
		return nil, car.Err
	}
	m := &Moving{car: car, under: under, ws: solver.NewWorkspace()}
	m.view = linkage{rig: newRig(car.Axle.Design()), at: &m.at, home: &m.home}
	if err := car.Axle.Place(m.ws, [2]float64{}, 0, &m.home); err != nil {
		return nil, err
	}
	m.view.p = plot.Fit(plot.Behind, inset(plot.Box(0, 0, size.Width, size.Height)), m.view.extent(car.Axle.TyreRadius(), travels)...)
	if under != nil {
		m.view.p = under.view.p
	}
	return m, m.To([2]float64{})
}

// To moves the wheels to travels, mm, each as far as the car reaches, and draws it there. A car
// under it is to be moved before.
func (m *Moving) To(travel [2]float64) error {
	if err := m.car.Axle.Place(m.ws, within(m.car, travel), 0, &m.at); err != nil {
		return err
	}
	l := &m.view
	l.wheels(m.car.Axle.TyreRadius())
	l.draw()
	ground, tyre, axis, ghost := m.paths[0][:0], m.paths[1][:0], m.paths[2][:0], m.paths[6][:0]
	for _, side := range solver.Sides {
		ground = l.appendGround(ground, side)
		tyre = appendWheel(tyre, l.p, l.tyre[side])
		axis = l.appendAxis(axis, side)
	}
	if m.under != nil {
		ghost = l.appendGhost(ghost, &m.under.at)
	}
	m.paths = [...]plot.Path{ground, tyre, axis, l.paths[bodyLayer], l.paths[partLayer], l.paths[knuckleLayer], ghost, l.paths[rodLayer], l.joint}
	return nil
}

// Paths returns the data of the paths. They hold until the car is moved again.
func (m *Moving) Paths() []plot.Path { return m.paths[:] }

// Toe returns the toe of a wheel where it stands, and by how much it has changed from that at
// ride height.
func (m *Moving) Toe(s solver.Side) (toe, change solver.Angle) {
	toe = m.at.Wheel[s].Toe
	return toe, toe - m.home.Wheel[s].Toe
}

// Farthest returns the toe change farthest from 0 of both wheels over the travel that the car
// was swept through.
func (m *Moving) Farthest() (most solver.Angle) {
	for side := range m.car.Curves {
		for i := range m.car.Curves[side].Positions {
			change := m.car.Curves[side].Positions[i].Toe - m.home.Wheel[side].Toe
			if math.Abs(float64(change)) > math.Abs(float64(most)) {
				most = change
			}
		}
	}
	return most
}

package study

import (
	"strings"

	"toewright/internal/strictjson"
	"toewright/solver"
)

// axleForm holds the values of an axle in the order of its shape, while they are
// read or written.
type axleForm struct {
	side        [2][]Vec3 // side are the places of each side's points, left first.
	common      []Vec3
	toe, camber bothSides
	studs       [2]*Vec3
	springs     *axleSprings
}

// axleSprings are the springs of a solid axle.
type axleSprings struct {
	Left  axleSpring `json:"left" rule:"required"`
	Right axleSpring `json:"right" rule:"required"`
}

// axleSpring are the mounts of a spring on the beam and on the body.
type axleSpring struct {
	Axle Vec3 `json:"axle" rule:"required"`
	Body Vec3 `json:"body" rule:"required"`
}

// mounts returns the spring of a side, 0 for left, nil where none is stated.
func (s *axleSprings) mounts(side int) *Damper {
	if s == nil {
		return nil
	}
	one := [2]axleSpring{s.Left, s.Right}[side]
	return &Damper{Body: one.Body, Moving: one.Axle}
}

// newAxleSprings returns the springs of both sides, nil where one has none.
func newAxleSprings(left, right *Damper) *axleSprings {
	if left == nil || right == nil {
		return nil
	}
	return &axleSprings{axleSpring{left.Moving, left.Body}, axleSpring{right.Moving, right.Body}}
}

// shape lists the keys of a suspension whose sides stand inside its points:
// "kingpins.0" of the left side is "kingpins.left.0".
func (f *axleForm) shape(s *Suspension, kind *solver.Kind) shape {
	sh := shape{{"type", &s.Type, required}, {"adjuster", &s.Adjuster, optional}}
	for i, h := range kind.CommonPoints {
		sh = append(sh, leaf{h.Name, &f.common[i], required})
	}
	sh = append(sh, leaf{"dragLink.side", (*sideForm)(&s.DragSide), required})
	for i, h := range kind.SidePoints {
		for j, side := range sides {
			sh = append(sh, leaf{sidedPath(h.Name, side), &f.side[j][i], required})
		}
	}
	return append(sh,
		leaf{"studAxes.left", &f.studs[0], optional},
		leaf{"studAxes.right", &f.studs[1], optional},
		leaf{"springs", &f.springs, optional},
		leaf{"toe", &f.toe, written},
		leaf{"camber", &f.camber, written})
}

// sidedPath puts a side behind the first key of a point's name.
func sidedPath(name string, side Side) string {
	first, rest, _ := strings.Cut(name, ".")
	path := first + "." + string(side)
	if rest != "" {
		path += "." + rest
	}
	return path
}

// newAxleForm returns a form with room for the points of a kind.
func newAxleForm(kind *solver.Kind) *axleForm {
	n := len(kind.SidePoints)
	return &axleForm{side: [2][]Vec3{make([]Vec3, n), make([]Vec3, n)}, common: make([]Vec3, len(kind.CommonPoints))}
}

// bindAxle fills a suspension with points of no side.
func (s *Suspension) bindAxle(kind *solver.Kind, sc strictjson.Scope, n *strictjson.Node) error {
	f := newAxleForm(kind)
	if _, err := f.shape(s, kind).bind(sc, n); err != nil {
		return err
	}
	s.Common = pointsOf(kind.CommonPoints, f.common)
	left, right := f.corner(kind, 0), f.corner(kind, 1)
	s.Left, s.Right = left, &right
	return nil
}

// corner returns a side of the axle, 0 for left.
func (f *axleForm) corner(kind *solver.Kind, i int) Corner {
	return Corner{
		Points: pointsOf(kind.SidePoints, f.side[i]),
		Toe:    f.toe[i], Camber: f.camber[i], StudAxis: f.studs[i], Spring: f.springs.mounts(i),
	}
}

// unbindAxle returns the JSON form of such a suspension.
func (s Suspension) unbindAxle(kind *solver.Kind, path string) (*strictjson.Node, error) {
	f := &axleForm{}
	for i, side := range sides {
		c := s.Corner(side)
		places, err := placesOf(kind.SidePoints, c.Points, path)
		if err != nil {
			return nil, err
		}
		f.side[i], f.toe[i], f.camber[i], f.studs[i] = places, c.Toe, c.Camber, c.StudAxis
	}
	f.springs = newAxleSprings(s.Corner(Left).Spring, s.Corner(Right).Spring)
	common, err := placesOf(kind.CommonPoints, s.Common, path)
	if err != nil {
		return nil, err
	}
	f.common = common
	return f.shape(&s, kind).unbind(path)
}

// bothSides is a value of each side, left first, in the file one number where
// they are equal.
type bothSides [2]float64

// BindNode fills both values from one number or from an object of two.
func (b *bothSides) BindNode(sc strictjson.Scope, n *strictjson.Node) error {
	if n.Kind == strictjson.Number {
		*b = bothSides{n.Number, n.Number}
		return nil
	}
	if n.Kind != strictjson.Object {
		return sc.Want(n, "a number, or an object of left and right")
	}
	var v struct {
		Left  float64 `json:"left" rule:"required"`
		Right float64 `json:"right" rule:"required"`
	}
	err := sc.Bind(n, &v)
	*b = bothSides{v.Left, v.Right}
	return err
}

// UnbindNode returns one number for equal values, else an object.
func (b bothSides) UnbindNode(path string) (*strictjson.Node, error) {
	if b[0] == b[1] {
		return strictjson.Unbind(b[0], path)
	}
	return strictjson.Unbind(map[string]float64{"left": b[0], "right": b[1]}, path)
}

// sideForm is a side that must be one of the two.
type sideForm Side

// BindNode fills the side.
func (s *sideForm) BindNode(sc strictjson.Scope, n *strictjson.Node) error {
	if n.Kind != strictjson.String || n.Text != string(Left) && n.Text != string(Right) {
		return sc.Want(n, `"left" or "right"`)
	}
	*s = sideForm(n.Text)
	return nil
}

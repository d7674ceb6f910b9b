package study

import (
	"toewright/internal/strictjson"
	"toewright/solver"
)

// cornerForm is the JSON form of a corner of a kind of suspension: its points by
// their keys, then the angles and what else a corner has.
type cornerForm struct {
	kind *solver.Kind
	Corner
}

// shape lists the corner's keys; points are read into and written from places.
func (f *cornerForm) shape(places []Vec3) shape {
	var sh shape
	for i, h := range f.kind.SidePoints {
		sh = append(sh, leaf{h.Name, &places[i], required})
	}
	return append(sh,
		leaf{"toe", &f.Toe, written},
		leaf{"camber", &f.Camber, written},
		leaf{"studAxis", &f.StudAxis, optional},
		leaf{"damper", &f.Damper, optional},
		leaf{"spring", &f.Spring, optional},
		leaf{"armFace", &f.ArmFace, optional})
}

// BindNode fills the corner.
func (f *cornerForm) BindNode(sc strictjson.Scope, n *strictjson.Node) error {
	places := make([]Vec3, len(f.kind.SidePoints))
	if _, err := f.shape(places).bind(sc, n); err != nil {
		return err
	}
	f.Points = pointsOf(f.kind.SidePoints, places)
	return nil
}

// UnbindNode returns the corner's JSON form.
func (f cornerForm) UnbindNode(path string) (*strictjson.Node, error) {
	places, err := placesOf(f.kind.SidePoints, f.Points, path)
	if err != nil {
		return nil, err
	}
	return f.shape(places).unbind(path)
}

// pointsOf keys places by the names of hardpoints.
func pointsOf(hardpoints []solver.Hardpoint, places []Vec3) Points {
	points := make(Points, len(places))
	for i, h := range hardpoints {
		points[h.Name] = places[i]
	}
	return points
}

// placesOf lists points in the order of hardpoints, or names one that is missing.
func placesOf(hardpoints []solver.Hardpoint, points Points, path string) ([]Vec3, error) {
	places := make([]Vec3, len(hardpoints))
	for i, h := range hardpoints {
		place, ok := points[h.Name]
		if !ok {
			return nil, &strictjson.Error{Path: under(path, h.Name), Message: "missing"}
		}
		places[i] = place
	}
	return places, nil
}

// bindCorners fills a suspension that has the same points on both sides.
func (s *Suspension) bindCorners(kind *solver.Kind, sc strictjson.Scope, n *strictjson.Node) error {
	left, right := cornerForm{kind: kind}, cornerForm{kind: kind}
	seen, err := s.cornersShape(&left, &right).bind(sc, n)
	if err != nil {
		return err
	}
	s.Left = left.Corner
	if seen["right"] {
		s.Right = &right.Corner
	}
	return nil
}

// unbindCorners returns the JSON form of such a suspension.
func (s Suspension) unbindCorners(kind *solver.Kind, path string) (*strictjson.Node, error) {
	left, right := cornerForm{kind, s.Left}, cornerForm{}
	if s.Right != nil {
		right = cornerForm{kind, *s.Right}
	}
	return s.cornersShape(&left, &right).unbind(path)
}

// cornersShape lists the keys of such a suspension.
func (s *Suspension) cornersShape(left, right *cornerForm) shape {
	return shape{
		{"type", &s.Type, required},
		{"adjuster", &s.Adjuster, optional},
		{"left", left, required},
		{"right", right, optional},
	}
}

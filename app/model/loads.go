package model

import (
	"errors"
	"fmt"
	"maps"
	"slices"
	"strconv"
	"strings"

	"toewright/internal/number"
	"toewright/internal/study"
)

// AddLoad adds a load case to the study, under a name that no other has.
func (s *Session) AddLoad(c study.LoadCase) error {
	c.Name = free(c.Name, func(name string) bool {
		return slices.ContainsFunc(s.doc.Loads, func(l study.LoadCase) bool { return l.Name == name })
	})
	return s.Edit("add a load case", "", func(d *study.Document) { d.Loads = append(d.Loads[:len(d.Loads):len(d.Loads)], c) })
}

// SetLoad changes load case i.
func (s *Session) SetLoad(i int, label string, change func(*study.LoadCase)) error {
	return s.Edit(label, "", func(d *study.Document) { change(&d.Loads[i]) })
}

// SetStiffness states that of what gives under a load, N/mm, or with an empty text that it
// is not known.
func (s *Session) SetStiffness(name, text string) error {
	all := maps.Clone(s.doc.Stiffness)
	if delete(all, name); strings.TrimSpace(text) != "" {
		k, err := ParseNumber(text)
		if err == nil && !(k > 0) {
			err = errors.New("want a stiffness above 0 in N/mm; leave it empty where it is not known")
		}
		if err != nil {
			return err
		}
		if all == nil {
			all = study.Stiffness{}
		}
		all[name] = k
	}
	return s.Edit("a stiffness", "", func(d *study.Document) { d.Stiffness = all })
}

// RemoveLoad takes load case i out.
func (s *Session) RemoveLoad(i int) error {
	return s.Edit("remove a load case", "", func(d *study.Document) { d.Loads = append(d.Loads[:i:i], d.Loads[i+1:]...) })
}

// OwnLoad is a load case of the user's own, which puts nothing on the wheels yet.
func OwnLoad(d *study.Document) study.LoadCase {
	c := study.LoadCase{Name: "Load case", Left: &study.WheelLoad{}}
	if !d.HasDragLink() {
		c.Right = &study.WheelLoad{}
	}
	return c
}

// ThreeText writes three numbers as they stand in a field, and ParseThree reads them: none
// of an empty text.
func ThreeText(v *study.Vec3) string {
	if v == nil {
		return ""
	}
	return fmt.Sprintf("%g  %g  %g", v[0], v[1], v[2])
}

// ParseThree reads three numbers with blanks or commas between, nil of an empty text.
func ParseThree(text string) (*study.Vec3, error) {
	words := strings.FieldsFunc(number.Plain(text), func(r rune) bool { return r == ' ' || r == ',' || r == ';' })
	if len(words) == 0 {
		return nil, nil
	}
	var v study.Vec3
	if len(words) != len(v) {
		return nil, fmt.Errorf("want three numbers, forward, left and up, got %d", len(words))
	}
	for i, w := range words {
		x, err := strconv.ParseFloat(w, 64)
		if err != nil || !(x > -1e7 && x < 1e7) {
			return nil, fmt.Errorf("%.20q is not a number of newtons", w)
		}
		v[i] = x
	}
	return &v, nil
}

// LoadsLack says what the study does not state of its loads, each with what it would give.
func LoadsLack(d *study.Document) (out []string) {
	if d.Vehicle.WheelLoad == 0 {
		out = append(out, "The load on one wheel, by which the usual cases are scaled.")
	}
	if list := d.SpringsLacking(); len(list) > 0 {
		out = append(out, "The spring's two mounts, or the damper's, among the points: without them a loaded wheel has no forces.")
	}
	for _, key := range [...]study.LimitKey{"armTwist", "studBending"} {
		k, _ := study.KindOfLimit(key)
		if what := d.LoadLacks(k); what != "" {
			out = append(out, capital(what)+": it gives "+loadsGiven[key]+".")
		}
	}
	return out
}

// loadsGiven say what comes of the data that a figure needs.
var loadsGiven = map[study.LimitKey]string{
	"armTwist":    "pull, shear, twist and bend at the face, and with its bolts their shares",
	"studBending": "the bending of the stud, by which stacks differ most",
}

// PutThree sets the force, or the moment, on a wheel of a case; no force takes the load off
// the wheel.
func PutThree(c *study.LoadCase, left, moment bool, v *study.Vec3) {
	w := &c.Right
	if left {
		w = &c.Left
	}
	was := study.WheelLoad{}
	if *w != nil {
		was = **w
	}
	switch {
	case moment:
		was.Moment = v
	case v == nil:
		*w = nil
		return
	default:
		was.Force = *v
	}
	*w = &was
}

// ShowLoad draws load case i, counted from 1, with the wheels where the case has them; 0
// draws none.
func (d *Desk) ShowLoad(i int) {
	doc, v := d.Session.Document(), &d.View
	if v.Load = i; i < 1 || i > len(doc.Loads) {
		v.Load = 0
		return
	}
	c := &doc.Loads[i-1]
	t := doc.Units.Millimetres(c.Travel)
	v.Travel = [2]float64{t, t}
	v.Steer = d.Session.Cars().SteerOf(c.Steer)
}

// StudText writes the diameter and the height of the outer ball's stud as they stand in
// one field, "" where the study states none.
func (n Numbers) StudText(d *study.Document) string {
	b := d.OuterBall()
	if b == nil || b.Stud == nil {
		return ""
	}
	at := func(x float64) string { return n.Exact(n.Units.FromMillimetres(d.Units.Millimetres(x)), true) }
	return at(b.Stud.Diameter) + "  " + at(b.Stud.Height)
}

// SetStud states them, or with an empty text that they are not known.
func (s *Session) SetStud(text string) error {
	var stud *study.Stud
	if words := strings.Fields(text); len(words) > 0 {
		if len(words) != 2 {
			return errStud
		}
		var v [2]float64
		for i, w := range words {
			mm, err := NumbersOf(s.doc).ParseLength(w)
			if err != nil || !(mm > 0) {
				return errStud
			}
			v[i] = s.doc.Units.FromMillimetres(mm)
		}
		stud = &study.Stud{Diameter: v[0], Height: v[1]}
	}
	if s.doc.OuterBall() == nil {
		return errNoBall
	}
	return s.Edit("stud of the outer ball", "", func(d *study.Document) {
		rod, ball := *d.TieRod, *d.TieRod.OuterBall
		ball.Stud, rod.OuterBall, d.TieRod = stud, &ball, &rod
	})
}

var (
	errStud   = errors.New("want two lengths above 0, the stud's diameter where it is clamped and the ball's height over that face; leave it empty where they are not known")
	errNoBall = errors.New("state the half angle of the outer ball first, under Tie rod: the stud is its")
)

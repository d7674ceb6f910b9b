package model

import (
	"errors"

	"toewright/internal/number"
	"toewright/internal/study"
)

// ArmValues lists what may be stated of the steering arm as a part: its sizes, and the maker's
// own words.
func ArmValues(d *study.Document) (list []CarValue) {
	n, a := NumbersOf(d), study.Arm{}
	if d.Arm != nil {
		a = *d.Arm
	}
	hole := study.ArmHole{}
	if a.Hole != nil {
		hole = *a.Hole
	}
	size := func(id, key, label string, x float64, at func(*study.Arm) *float64) {
		text := ""
		if x != 0 {
			text = n.LengthNumber(d.Units.Millimetres(x))
		}
		list = append(list, CarValue{ID: "arm-" + id, Path: "arm." + key, Label: label, Unit: n.LengthUnit(), Text: text,
			set: func(d *study.Document, text string) error {
				return setArm(d, func(a *study.Arm) error {
					return setPositive(text, func(text string) (float64, error) {
						mm, err := n.ParseLength(text)
						return d.Units.FromMillimetres(mm), err
					}, at(a))
				})
			}})
	}
	size("thickness", "thickness", "Thickness of the eye", a.Thickness, func(a *study.Arm) *float64 { return &a.Thickness })
	size("hole", "hole.largeDiameter", "Hole, large end, towards the ball", hole.LargeDiameter, func(a *study.Arm) *float64 { return &a.Hole.LargeDiameter })
	list = append(list, CarValue{ID: "arm-taper", Path: "arm.hole.taper", Label: "Taper, diameter by length", Text: positiveText(hole.Taper),
		set: func(d *study.Document, text string) error {
			return setArm(d, func(a *study.Arm) error {
				if x, ok := number.ParsePlain(text); ok && x == 0 {
					text = "" // a plain hole
				}
				return setPositive(text, ParseNumber, &a.Hole.Taper)
			})
		}})
	size("bolt", "boltDiameter", "Bolt holes", a.BoltDiameter, func(a *study.Arm) *float64 { return &a.BoltDiameter })
	for _, t := range study.ArmTexts {
		list = append(list, CarValue{ID: "arm-" + t.Key, Path: "arm." + t.Key, Label: t.Label, Text: *t.At(&a),
			set: func(d *study.Document, text string) error {
				return setArm(d, func(a *study.Arm) error { *t.At(a) = text; return nil })
			}})
	}
	return list
}

// setArm changes a copy of what a document states of its arm, and drops what then states
// nothing. A taper without a diameter is refused.
func setArm(d *study.Document, change func(*study.Arm) error) error {
	a := study.Arm{}
	if d.Arm != nil {
		a = *d.Arm
	}
	hole := study.ArmHole{}
	if a.Hole != nil {
		hole = *a.Hole
	}
	a.Hole = &hole
	if err := change(&a); err != nil {
		return err
	}
	if hole == (study.ArmHole{}) {
		a.Hole = nil
	}
	if a.Hole != nil && hole.LargeDiameter == 0 {
		return errTaperAlone
	}
	if d.Arm = &a; a == (study.Arm{}) {
		d.Arm = nil
	}
	return nil
}

var errTaperAlone = errors.New("the hole needs its large diameter where a taper is stated: state the diameter first, or take the taper out first")

// SetProjection says how the views of the drawing lie.
func (s *Session) SetProjection(key string) error {
	return s.Edit("projection", "", func(d *study.Document) {
		_ = setArm(d, func(a *study.Arm) error { a.Projection = key; return nil }) // nothing in it is refused
	})
}

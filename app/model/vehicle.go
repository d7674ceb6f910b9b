package model

import (
	"errors"
	"strings"

	"toewright/internal/study"
)

// errNotPositive is what a number that must be more than 0 is refused with.
var errNotPositive = errors.New("must be more than 0; leave it empty where it is not known")

// SetVehicle states a length of the vehicle, or with an empty text that it is not known.
// put sets it in file units, 0 for not known.
func (s *Session) SetVehicle(label, text string, put func(*study.Document, float64)) error {
	mm := 0.0
	if err := setPositive(strings.TrimSpace(text), NumbersOf(s.doc).ParseLength, &mm); err != nil {
		return err
	}
	return s.Edit(label, "", func(d *study.Document) { put(d, d.Units.FromMillimetres(mm)) })
}

// UnstatedVehicle says what stands for those lengths of the vehicle that the study does
// not state, "" where it states them.
func UnstatedVehicle(d *study.Document) string {
	var words []string
	if d.Vehicle.Wheelbase == 0 {
		words = append(words, "Without a wheelbase there are no figures of Ackermann and turning circle.")
	}
	if d.Vehicle.TyreRadius == 0 {
		n := NumbersOf(d)
		words = append(words, "Without a tyre radius the height of the wheel centre stands for it, "+n.Travel(d.Units.Millimetres(d.TyreRadius()))+".")
	}
	return strings.Join(words, " ")
}

// KindWords says what kind of car a study is of, which another template alone changes.
func KindWords(d *study.Document) string {
	words := study.Words(d.Suspension.Type)
	if d.Steering != nil && d.Steering.Type != study.NoGear {
		words += ", steered by a " + study.Words(d.Steering.Type)
	}
	return strings.ToUpper(words[:1]) + words[1:] + ". Another kind is a new study from its template."
}

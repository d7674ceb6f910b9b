package model

import (
	"errors"
	"fmt"
	"strconv"
	"strings"

	"toewright/internal/number"
	"toewright/internal/study"
	"toewright/solver"
)

// CarValue is something that a study may state of its car in one field, empty where it
// does not.
type CarValue struct {
	ID    string
	Path  string // Path is that by which its source is known.
	Label string
	About string
	Text  string
	Unit  string
	set   func(d *study.Document, text string) error
}

// What the values are, for readers.
const (
	aboutStiffness = "Sideways force of one tyre by degree of slip, from its maker. The estimates of drag and drift need it and nothing else does."
	aboutWheelLoad = "Static force on the ground under one wheel of this axle. Usual load cases are scaled by it."
	aboutPerTurn   = "How far the rack moves, or the pitman arm turns, by one whole turn of the steering wheel."
	aboutLock      = "How far the rack moves, or the pitman arm turns, from straight ahead to full lock."
	aboutAxis      = "Three numbers x, y, z with spaces between, of which only the direction counts. A rack without one moves straight across the car."
	aboutStudAxis  = "The direction in which spacers move the outer ball: x, y, z, of which only the direction counts. Empty is straight up."
)

// CarValues lists what may be stated of a study's car besides its points, wheel and tie
// rod.
func CarValues(d *study.Document) []CarValue { return append(VehicleValues(d), GearValues(d)...) }

// VehicleValues lists those of the vehicle.
func VehicleValues(d *study.Document) []CarValue {
	plain := func(id, key, label, about, unit string, at func(*study.Document) *float64) CarValue {
		return CarValue{ID: id, Path: "vehicle." + key, Label: label, About: about, Unit: unit, Text: positiveText(*at(d)),
			set: func(d *study.Document, text string) error { return setPositive(text, ParseNumber, at(d)) }}
	}
	return []CarValue{
		plain("wheel-load", "wheelLoad", "Load on one wheel", aboutWheelLoad, "N", func(d *study.Document) *float64 { return &d.Vehicle.WheelLoad }),
		plain("cornering-stiffness", "corneringStiffness", "Cornering stiffness of a tyre", aboutStiffness, "N/deg", func(d *study.Document) *float64 { return &d.Vehicle.CorneringStiffness }),
	}
}

// GearValues lists those of the steering gear and of the studs.
func GearValues(d *study.Document) (list []CarValue) {
	if d.Steering != nil && d.Steering.Type != study.NoGear {
		list = NumbersOf(d).gearValues(d)
	}
	return append(list, studAxes(d)...)
}

// gearValues lists those of the steering gear.
func (n Numbers) gearValues(d *study.Document) []CarValue {
	q, unit := gearQuantity(d.Steering), n.quantityUnit(gearQuantity(d.Steering))
	stated := func(x float64) string {
		if x != 0 && q == solver.LengthQuantity {
			return n.LengthNumber(d.Units.Millimetres(x))
		}
		return positiveText(x)
	}
	parse := func(text string) (float64, error) { return n.parseQuantity(d, q, text) }
	list := []CarValue{
		{ID: "per-turn", Path: "steering.perTurn", Label: "Steering by turn of the wheel", About: aboutPerTurn, Text: stated(d.Steering.PerTurn), Unit: unit,
			set: func(d *study.Document, text string) error { return setPositive(text, parse, &d.Steering.PerTurn) }},
		{ID: "car-lock", Path: "steering.lock", Label: "Full lock, to either side", About: aboutLock, Text: stated(d.Steering.Lock), Unit: unit,
			set: func(d *study.Document, text string) error { return setPositive(text, parse, &d.Steering.Lock) }},
	}
	return append(list, gearAxes(d)...)
}

// gearQuantity returns what the input of a gear measures.
func gearQuantity(g *study.Steering) solver.Quantity {
	if g.Type == study.CentreLink {
		return solver.AngleQuantity
	}
	return solver.LengthQuantity
}

// gearAxes lists the axes that the gear has. That of a rack may be left out.
func gearAxes(d *study.Document) []CarValue {
	axis := func(id, key, label string, at func(*study.Steering) **study.Vec3, optional bool) CarValue {
		return CarValue{ID: id, Path: "steering." + key, Label: label, About: aboutAxis, Text: directionText(*at(d.Steering)),
			set: func(d *study.Document, text string) error { return setDirection(text, at(d.Steering), optional) }}
	}
	if d.Steering.Type == study.Rack {
		return []CarValue{axis("rack-axis", "axis", "Axis of the rack", func(g *study.Steering) **study.Vec3 { return &g.Axis }, true)}
	}
	list := []CarValue{axis("pitman-axis", "pitmanAxis", "Axis of the pitman arm", func(g *study.Steering) **study.Vec3 { return &g.PitmanAxis }, false)}
	if d.Steering.HasIdler() {
		list = append(list, axis("idler-axis", "idlerAxis", "Axis of the idler arm", func(g *study.Steering) **study.Vec3 { return &g.IdlerAxis }, false))
	}
	return list
}

// studAxes lists the stud axes of the sides that the study states.
func studAxes(d *study.Document) []CarValue {
	var list []CarValue
	for _, side := range []study.Side{study.Left, study.Right} {
		if side == study.Right && d.Suspension.Right == nil {
			continue
		}
		at := func(d *study.Document) **study.Vec3 {
			if side == study.Right {
				return &d.Suspension.Right.StudAxis
			}
			return &d.Suspension.Left.StudAxis
		}
		label := "Stud axis of the outer ball"
		if d.Suspension.Right != nil {
			label += ", " + string(side)
		}
		list = append(list, CarValue{ID: "stud-axis-" + string(side), Path: d.StudPath(side), Label: label, About: aboutStudAxis,
			Text: directionText(*at(d)), set: func(d *study.Document, text string) error { return setDirection(text, at(d), true) }})
	}
	return list
}

// SetCarValue states a value as its field has it. An empty text says that it is not known.
func (s *Session) SetCarValue(v *CarValue, text string) error {
	text = strings.TrimSpace(text)
	if err := v.set(s.doc.Clone(), text); err != nil {
		return err
	}
	return s.Edit(v.Label, "", func(d *study.Document) { v.set(d, text) })
}

// SetTravel sets the window of travel that curves are drawn over, in file units.
func (s *Session) SetTravel(w study.Travel) error {
	return s.Edit("travel", "", func(d *study.Document) { d.Travel = &w })
}

// SetAdjuster says which part takes up camber and caster.
func (s *Session) SetAdjuster(key string) error {
	return s.Edit("what takes up camber and caster", "", func(d *study.Document) { d.Suspension.Adjuster = key })
}

// positiveText writes a number that is stated, "" for 0.
func positiveText(x float64) string {
	if x == 0 {
		return ""
	}
	return strconv.FormatFloat(x, 'g', -1, 64)
}

// ParseNumber reads a number without a unit.
func ParseNumber(text string) (float64, error) {
	x, ok := number.ParsePlain(text)
	if !ok {
		return 0, fmt.Errorf("%q is not a number", number.Clip(text))
	}
	return x, nil
}

// setPositive puts what a text says in its place: more than 0, or with "" nothing.
func setPositive(text string, parse func(string) (float64, error), to *float64) error {
	if text == "" {
		*to = 0
		return nil
	}
	x, err := parse(text)
	switch {
	case err != nil:
		return err
	case !(x > 0):
		return errNotPositive
	}
	*to = x
	return nil
}

// directionText writes a direction, "" for none.
func directionText(v *study.Vec3) string {
	if v == nil {
		return ""
	}
	return fmt.Sprintf("%g %g %g", v[0], v[1], v[2])
}

// errDirection is what three numbers are asked with.
var errDirection = errors.New("type three numbers x, y and z with spaces between, like 0 1 0, not all of them 0")

// setDirection puts the direction that a text says in its place.
func setDirection(text string, to **study.Vec3, optional bool) error {
	if text == "" && optional {
		*to = nil
		return nil
	}
	var v study.Vec3
	words := strings.FieldsFunc(text, func(r rune) bool { return r == ' ' || r == ';' || r == '\t' })
	if len(words) != len(v) {
		return errDirection
	}
	for i, word := range words {
		x, ok := number.ParsePlain(strings.TrimSuffix(word, ","))
		if !ok {
			return errDirection
		}
		v[i] = x
	}
	if v == (study.Vec3{}) {
		return errDirection
	}
	*to = &v
	return nil
}

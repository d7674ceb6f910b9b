package model

import (
	"errors"
	"maps"
	"slices"
	"strconv"
	"strings"

	"toewright/internal/number"
	"toewright/internal/study"
	"toewright/solver"
)

// SetUpColumn is a setting in which the set-ups of a search differ: a parameter of the car,
// the position of its body and wheels, or how much a set-up counts.
type SetUpColumn struct {
	Key, Label string

	quantity solver.Quantity
	position func(*study.Attitude) *float64 // nil where it is none of the position
	counts   bool
}

// countsKey is the key of the column of how much a set-up counts.
const countsKey = "weight"

// besideParameters are the columns that are no parameters of a car.
var besideParameters = []SetUpColumn{
	{Key: "heave", Label: "both wheels up", position: func(a *study.Attitude) *float64 { return &a.Heave }},
	{Key: "roll", Label: "body roll, right side down", quantity: solver.AngleQuantity, position: func(a *study.Attitude) *float64 { return &a.Roll }},
	{Key: "steer", Label: "steered", position: func(a *study.Attitude) *float64 { return &a.Steer }},
	{Key: countsKey, Label: "counts, 1 as usual", counts: true},
}

// SetUpPositions returns the columns that a car has beside its parameters.
func SetUpPositions(design *solver.Design) (list []SetUpColumn) {
	for _, c := range besideParameters {
		if c.Key == "steer" {
			if design.Gear.Kind == solver.NoGear {
				continue
			}
			c.quantity = design.Gear.Quantity()
		}
		list = append(list, c)
	}
	return list
}

// SetUpColumnOf returns the column of a key; false where the car has no such setting.
func SetUpColumnOf(design *solver.Design, key string) (SetUpColumn, bool) {
	for _, c := range SetUpPositions(design) {
		if c.Key == key {
			return c, true
		}
	}
	p, sides, err := solver.FindParameter(design, key)
	label := p.Label
	if suffix := sides.Suffix(); suffix != "" {
		label += ", " + suffix[1:]
	}
	return SetUpColumn{Key: key, Label: label, quantity: p.Quantity}, err == nil
}

// SetUpKeys returns the keys of the settings in which set-ups differ, those of the car
// first.
func SetUpKeys(list []study.Scenario) (keys []string) {
	for i := range list {
		for _, key := range slices.Sorted(maps.Keys(list[i].Changes)) {
			if !slices.Contains(keys, key) {
				keys = append(keys, key)
			}
		}
	}
	for _, c := range besideParameters {
		if slices.ContainsFunc(list, func(k study.Scenario) bool { return c.of(&k) != nil }) {
			keys = append(keys, c.Key)
		}
	}
	return keys
}

// of returns a set-up's number in the column, nil where it has none.
func (c *SetUpColumn) of(k *study.Scenario) *float64 {
	switch {
	case c.counts:
		return k.Weight
	case c.position == nil:
		if v, ok := k.Changes[c.Key]; ok {
			return &v
		}
	case k.Attitude != nil && *c.position(k.Attitude) != 0:
		return c.position(k.Attitude)
	}
	return nil
}

// Unit returns the unit that the column's numbers are shown in.
func (c *SetUpColumn) Unit(n Numbers) string {
	if c.counts {
		return ""
	}
	return n.quantityUnit(c.quantity)
}

// Number writes a set-up's number in the column, "" where it has none.
func (c *SetUpColumn) Number(d *study.Document, k *study.Scenario) string {
	v := c.of(k)
	switch {
	case v == nil:
		return ""
	case c.counts:
		return strconv.FormatFloat(*v, 'g', -1, 64)
	}
	return NumbersOf(d).Amount(*v, fileUnit(d, c.quantity), d.Units)
}

// errCounts is what a weight that is none is refused with.
var errCounts = errors.New("how much a set-up counts is a number like 2, 0 or more")

// parse reads a number of the column.
func (c *SetUpColumn) parse(d *study.Document, text string) (float64, error) {
	if !c.counts {
		return NumbersOf(d).parseQuantity(d, c.quantity, text)
	}
	x, ok := number.ParsePlain(text)
	if !ok || x < 0 {
		return 0, errCounts
	}
	return x, nil
}

// SetInSetUp sets a set-up's number in a column by a text; an empty one takes it out.
func (s *Session) SetInSetUp(i int, c *SetUpColumn, text string) error {
	if strings.TrimSpace(text) == "" {
		return s.SetScenario(i, "change a set-up", func(k *study.Scenario) { c.put(k, nil) })
	}
	x, err := c.parse(s.doc, text)
	if err != nil {
		return err
	}
	return s.SetScenario(i, "change a set-up", func(k *study.Scenario) { c.put(k, &x) })
}

// put puts a number into a set-up, or takes it out where x is nil.
func (c *SetUpColumn) put(k *study.Scenario, x *float64) {
	switch {
	case c.counts:
		k.Weight = x
	case c.position != nil:
		c.putPosition(k, x)
	case x == nil:
		delete(k.Changes, c.Key)
	default:
		if k.Changes == nil {
			k.Changes = study.Changes{}
		}
		k.Changes[c.Key] = *x
	}
}

// putPosition sets a number of a set-up's position. One that is 0 throughout is none.
func (c *SetUpColumn) putPosition(k *study.Scenario, x *float64) {
	if k.Attitude == nil {
		k.Attitude = &study.Attitude{}
	}
	*c.position(k.Attitude) = 0
	if x != nil {
		*c.position(k.Attitude) = *x
	}
	if *k.Attitude == (study.Attitude{}) {
		k.Attitude = nil
	}
}

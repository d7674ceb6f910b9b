package engine

import (
	"fmt"
	"maps"
	"strconv"
	"strings"

	"toewright/internal/study"
)

// ApplyFit returns a copy of a study whose hardpoints, static toe and camber are
// those that a fit found: what a search starts from to serve the real car. What
// the readings said stays in the study. Unknowns that are no coordinates of a
// point are an error: they cannot be written into the car.
func ApplyFit(d *study.Document, f *FitResult) (*study.Document, error) {
	out := d.Clone()
	// What is taped of a car of one side is of both.
	alike := out.Suspension.Right == nil && d.Priors == nil && len(d.Measures()) > 0
	if solid := out.Suspension.Common != nil; out.Suspension.Right == nil && !solid && !alike {
		right := out.Suspension.Left.Mirrored()
		out.Suspension.Right = &right
	}
	for key, v := range f.Fitted {
		name, side, sided := strings.Cut(key, "@")
		if study.IsNuisance(name) {
			continue
		}
		if !sided && !alike {
			side = f.onlySide()
		}
		if err := move(out, name, study.Side(side), v.Value); err != nil {
			return nil, err
		}
	}
	out.Notes = strings.TrimSpace(out.Notes + "\nHardpoints are those that a fit of the readings found.")
	out.Priors = nil
	out.Attribute(d, fitSource(d))
	return out, nil
}

// fitSource returns where the numbers of a fit come from: what was fitted to readings that
// are a template's is a template's as well.
func fitSource(d *study.Document) study.Source {
	for i, r := range d.Readings {
		if r.Purpose != "verify" && d.IsBorrowed(fmt.Sprintf("readings.%d.values", i)) {
			return study.FromTemplate
		}
	}
	return study.FromFit
}

// onlySide returns the side that was read, "" where both were.
func (f *FitResult) onlySide() string {
	for _, s := range f.Sets {
		if s.Side != f.Sets[0].Side {
			return ""
		}
	}
	return f.Sets[0].Side
}

// move adds value to a coordinate such as "lowerBallJoint.z" of the points of a
// side, outboard for y; of both sides, or of neither, where side is empty.
func move(d *study.Document, coordinate string, side study.Side, value float64) error {
	name, axis, ok := splitCoordinate(coordinate)
	if !ok {
		return wrongf(coordinate, "was fitted, but is not a coordinate of a hardpoint: it cannot be written into the car")
	}
	found := false
	for _, p := range d.Points() {
		if p.Name != name || side != "" && p.Side != "" && p.Side != side {
			continue
		}
		change := value
		if axis == 1 && p.Side == study.Right {
			change = -value
		}
		p.Place[axis] += change
		if err := d.SetPoint(p); err != nil {
			return explain(err, "")
		}
		found = true
	}
	if !found {
		return wrongf(coordinate, "was fitted, but the study has no such point")
	}
	return nil
}

// splitCoordinate returns the point and the place of the axis that a key such as
// "rods.2.outer.y" names.
func splitCoordinate(key string) (name string, axis int, ok bool) {
	dot := strings.LastIndexByte(key, '.')
	if dot < 0 || dot != len(key)-2 {
		return "", 0, false
	}
	axis = strings.IndexByte("xyz", key[dot+1])
	return key[:dot], axis, axis >= 0
}

// Taken returns the values that whoever takes the answer of a search is to have: those on
// the steps and sizes that the study states, where it states any, else the best.
func (r *SearchResult) Taken() study.Changes {
	if r.Rounded != nil {
		return r.Rounded.Values
	}
	return r.Best.Values
}

// foundName is what a car is called that a search found.
const foundName = "found"

// ApplySearch returns a copy of a study with what a search found as one more candidate,
// called "found", or with a number behind that where the name is taken.
func ApplySearch(d *study.Document, r *SearchResult) *study.Document {
	out := d.Clone()
	name := foundName
	for n := 2; out.Candidate(name) != nil; n++ {
		name = foundName + " " + strconv.Itoa(n)
	}
	out.Candidates = append(out.Candidates, study.Candidate{Name: name, Changes: maps.Clone(r.Taken())})
	return out
}

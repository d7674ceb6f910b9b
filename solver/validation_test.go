package solver_test

import (
	"testing"

	"toewright/tools/validation"
)

// A reference is a set of figures from outside the project.
type reference struct {
	name   string
	source string // who says so, and how the figures were come by
	claims func(t *testing.T) []claim
}

// A claim is one figure of a reference and what the solver says of it.
type claim struct {
	figure    string
	unit      string
	want, got float64
	limit     float64 // largest difference allowed
}

// TestValidation holds the solver's part of docs/validation.md.
func TestValidation(t *testing.T) {
	var all []validation.Reference
	for _, rs := range [][]reference{textbookReferences, handbookReferences, exactReferences, steeringReferences, casterReferences, sensitivityReferences} {
		for _, r := range rs {
			all = append(all, r.shown())
		}
	}
	validation.Hold(t, validation.Page, "linkage", all)
}

// shown returns the reference as the page has it.
func (r *reference) shown() validation.Reference {
	return validation.Reference{Name: r.name, Source: r.source, Claims: func(t *testing.T) []validation.Claim {
		var cs []validation.Claim
		for _, c := range r.claims(t) {
			cs = append(cs, validation.Claim{Figure: c.figure, Unit: c.unit, Want: c.want, Got: c.got, Limit: c.limit})
		}
		return cs
	}}
}

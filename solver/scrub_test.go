package solver_test

import (
	"testing"

	"toewright/solver"
)

// TestScrub compares with sideways slip per distance rolled, sin(toe): m per km,
// ft per mile.
func TestScrub(t *testing.T) {
	near(t, "m/km", solver.Scrub(solver.Deg(0.1), 1000), 1.745328, 1e-6)
	near(t, "m/km", solver.Scrub(solver.Deg(1), 1000), 17.452406, 1e-6)
	near(t, "ft/mile", solver.Scrub(solver.Deg(0.1), 5280), 9.2153, 5e-5)
}

package solver_test

import (
	"strings"
	"testing"

	"toewright/solver"
)

func TestKindByName(t *testing.T) {
	for _, k := range solver.Kinds() {
		if got, err := solver.KindByName(k.Name); got != k || err != nil {
			t.Errorf("KindByName(%q) = %v, %v, want that kind", k.Name, got, err)
		}
	}
	for name, want := range map[string]string{
		"leaf-spring": "state the axle as a solid-axle",
		"wishbone":    "use one of double-wishbone, strut, multi-link, swing-arm, solid-axle",
	} {
		if k, err := solver.KindByName(name); k != nil || err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("KindByName(%q) = %v, %v, want an error with %q", name, k, err, want)
		}
	}
}

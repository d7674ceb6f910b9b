package nlp

import (
	"strings"
	"testing"
)

func TestStatus(t *testing.T) {
	for s := NotRun; s <= RankDeficient; s++ {
		if s.String() == "" || s.String() == "unknown status" {
			t.Errorf("Status(%d).String() = %q, want a name", s, s)
		}
		if early := s != Converged; s.Early() != early || (s.Err() != nil) != early {
			t.Errorf("%v: Early, Err = %t, %v, want %t and an error only if early", s, s.Early(), s.Err(), early)
		}
		if err := s.Err(); err != nil && !strings.HasPrefix(err.Error(), "optimize: ") {
			t.Errorf("%v.Err() = %q, want the package as prefix", s, err)
		}
	}
	if s := RankDeficient + 1; s.String() != "unknown status" || s.Err() == nil || !s.Early() {
		t.Errorf("Status(%d) = %v, %v, want unknown, early and an error", uint8(s), s, s.Err())
	}
}

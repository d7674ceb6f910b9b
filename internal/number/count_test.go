package number

import "testing"

func TestCount(t *testing.T) {
	for n, want := range map[int]string{0: "0 designs", 1: "1 design", 2: "2 designs", 21: "21 designs"} {
		if got := Count(n, "design"); got != want {
			t.Errorf("%d: %q, want %q", n, got, want)
		}
	}
}

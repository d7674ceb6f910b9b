//go:build unix

package main

import (
	"slices"
	"testing"
)

// mutantsOf returns the mutants of a function with a body and results, as kind: new code.
func mutantsOf(t *testing.T, results, body string) []string {
	t.Helper()
	source := "package p\n\nfunc f() " + results + " {\n" + body + "\n}\n"
	found, err := find("p.go", []byte(source))
	if err != nil {
		t.Fatal(err)
	}
	var all []string
	for _, s := range found {
		for _, m := range s.mutants {
			if got := string(m.apply([]byte(source))); got == source {
				t.Errorf("%s changes nothing", m.id())
			}
			all = append(all, m.kind+": "+oneLine(m.new))
		}
	}
	return all
}

func TestFind(t *testing.T) {
	tests := []struct {
		name, results, body string
		want                []string
	}{
		{"sum", "", "x = a + b", []string{"drop: ", "arithmetic: a - b"}},
		{"product within", "", "x := a*b - c", []string{"arithmetic: a*b + c", "arithmetic: (a / b)", "sign: -(a*b)"}},
		{"to itself", "", "x := 1; x *= y", []string{"constant: 2", "arithmetic: x /= y", "drop: "}},
		{"count", "", "n++", []string{"arithmetic: n--", "drop: "}},
		{"negative", "", "x := -y", []string{"sign: y"}},
		{"bounds", "", "x := a < b && c >= d", []string{"comparison: a < b || c >= d", "comparison: (a <= b)", "comparison: (c > d)"}},
		{"if", "", "if ok { f() }", []string{"condition: !(ok)", "drop: {}", "drop: "}},
		{"loop", "", "for a != b { f() }", []string{"condition: !(a != b)", "return: return ; for a != b", "comparison: a == b", "drop: "}},
		{"loop in a loop", "", "for { for range c {} }", []string{"return: return ; for", "return: continue; for range c"}},
		{"numbers", "", "x := 2 + 0.0 + 0.25", []string{
			"arithmetic: 2 + 0.0 - 0.25", "arithmetic: (2 - 0.0)", "constant: 3", "constant: 1e-3", "constant: (0.25 * (1 + 1e-3))",
		}},
		{"elements", "", "x := a[0] + b[2] + c[i]", []string{
			"arithmetic: a[0] + b[2] - c[i]", "arithmetic: (a[0] - b[2])", "index: 1", "index: 2 - 1",
		}},
		{"coordinate", "", "p.Z = 1", []string{"drop: ", "index: X", "constant: 2"}},
		{"order", "", "x := f(a, b)", []string{"arguments: b, a"}},
		{"order that does not matter", "", "x := math.Max(a, b)", nil},
		{"results", "(float64, error)", "return x, nil", []string{"return: return *new(float64), *new(error)"}},
		{"results with names", "(a, b int)", "return x, y", []string{"return: return *new(int), *new(int)"}},
		{"zeros", "(int, error)", "return 0, nil", []string{"constant: 1"}},
		{"a struct of zeros", "(vec, bool)", "return vec{}, false", nil},
		{"a struct that is pointed at", "*vec", "return &vec{}", []string{"return: return *new(*vec)"}},
		{"no results", "", "return", nil},
		{"inner function", "", "x := func() int { return a }", []string{"return: return *new(int)"}},
		{"beside an error", "(int, error)", "return 1, err", []string{"return: return *new(int), *new(error)"}},
		{"words", "error", "return fmt.Errorf(\"%d\", a+1)", []string{"return: return *new(error)"}},
		{"words of our own", "", "x := problemErrorf(\"%g\", a*2)", nil},
		{"words of a fault", "*fault", "return wrongf(key, \"%d\", a+1)", []string{"return: return *new(*fault)"}},
		{"memory", "", "x := make([]int, n-1, 5)", []string{"arguments: n-1, []int", "arithmetic: n + 1", "constant: 2"}},
		{"no more than a sign", "", "x := math.Inf(1)", nil},
		{"the other sign", "", "x := math.Inf(-1)", []string{"sign: 1"}},
		{"type", "", "var x [3]int", nil},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			if got := mutantsOf(t, tt.results, tt.body); !slices.Equal(got, tt.want) {
				t.Errorf("mutants of %s = %q, want %q", tt.body, got, tt.want)
			}
		})
	}
}

func TestFindLeavesOut(t *testing.T) {
	const source = `package p

const a = 1 + 2

type t int

func (t) String() string { return a + b }

func (t) Error() string { return a + b }

func outside() int
`
	found, err := find("p.go", []byte(source))
	if err != nil || len(found) != 0 {
		t.Errorf("find = %v, %v, want nothing", found, err)
	}
}

func TestFindNames(t *testing.T) {
	const source = `package p

func (b *box[T]) open() {
	b.n++
	b.n++
}
`
	found, err := find("box.go", []byte(source))
	if err != nil || len(found) != 2 {
		t.Fatalf("find = %v, %v, want two statements", found, err)
	}
	if first, second := found[0].key, found[1].key; first == second {
		t.Errorf("two statements have the key %q", first)
	}
	m := found[0].mutants[0]
	if got, want := m.id(), "box.go box.open: b.n++ -> b.n--"; got != want || m.line != 4 {
		t.Errorf("mutant %q in line %d, want %q in 4", got, m.line, want)
	}
}

func TestFindRefusesWhatIsNoGo(t *testing.T) {
	if _, err := find("p.go", []byte("func {")); err == nil {
		t.Error("find of what is no Go: no error")
	}
}

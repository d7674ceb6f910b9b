package jsonplan_test

import (
	"encoding/json"
	"math"
	"math/rand/v2"
	"testing"
	"time"

	"toewright/internal/engine"
	"toewright/internal/web/jsonplan"
)

type inner struct {
	A float64 `json:"a"`
	B string  `json:"b,omitempty"`
}

type Shared struct {
	S []inner           `json:"s"`
	M map[string]inner  `json:"m,omitzero"`
	P *float64          `json:"p"`
	T time.Time         `json:"t"`
	Z time.Time         `json:"z,omitzero"`
	Q map[string]string `json:"q,omitempty"`
}

type tree struct {
	Name string  `json:"name"`
	Of   []*tree `json:"of,omitempty"`
}

type shadowed struct {
	inner
	A int `json:"a"`
}

// byPointer writes itself where it can be addressed.
type byPointer struct{ X float64 }

func (*byPointer) MarshalJSON() ([]byte, error) { return []byte(`"by pointer"`), nil }

type odd struct {
	Shared
	N     engine.Number      `json:"n"`
	NP    *engine.Number     `json:"np"`
	NZ    engine.Number      `json:"nz,omitzero"`
	NA    [3]engine.Number   `json:"na"`
	F     [][2]float64       `json:"f"`
	I     int                `json:"i"`
	I8    int8               `json:"i8,string"`
	U     bool               `json:"u,omitzero"`
	E     any                `json:"e"`
	Bytes []byte             `json:"bytes"`
	Sub   *tree              `json:"sub,omitzero"`
	Hid   int                `json:"-"`
	own   int                //nolint:unused // left out
	Plain string             // no tag
	By    byPointer          `json:"by"`
	List  []byPointer        `json:"list"`
	Twice shadowed           `json:"twice"`
	Funny inner              `json:"a<b"`
	Raw   json.RawMessage    `json:"raw"`
	ByKey map[string]float64 `json:"byKey"`
}

// floats are those whose writing differs between forms.
var floats = []float64{0, math.Copysign(0, -1), 1, -1, 0.1, 1e-6, 9.999999e-7, -1e-7, 1e-10, 1.5e-300, 5e-324,
	1e20, 1e21, -1.25e21, 1e22, 1e100, math.MaxFloat64, 123456789, 1e6, 1234567.5, math.Pi, 1.0 / 3, 100, 4503599627370497.5}

func check(t *testing.T, v any) {
	t.Helper()
	want, wantErr := json.Marshal(v)
	got, err := jsonplan.Append(nil, v)
	if (err == nil) != (wantErr == nil) || err == nil && string(got) != string(want) {
		t.Errorf("%T:\n%s (%v), want\n%s (%v)", v, got, err, want, wantErr)
	}
}

// TestAppendsWhatJSONWrites: to the byte, all that a type may hold.
func TestAppendsWhatJSONWrites(t *testing.T) {
	check(t, nil)
	check(t, (*odd)(nil))
	check(t, odd{})
	check(t, &odd{})
	for _, x := range floats {
		n := engine.Number(x)
		o := odd{N: n, NP: &n, NZ: n, NA: [3]engine.Number{n, engine.Number(math.NaN()), engine.Number(math.Inf(-1))},
			F: [][2]float64{{x, -x}}, own: 1, I: -7, I8: 3, U: true, E: []any{x, nil, "x", inner{A: x}, map[string]any{"b": 1, "a": x}},
			Bytes: []byte("bytes"), Sub: &tree{"root", []*tree{{Name: "leaf"}, nil}}, List: []byPointer{{1}},
			Twice: shadowed{inner{A: 1}, 2}, Raw: json.RawMessage(`{"a" : 1}`), ByKey: map[string]float64{"z": x, "a": 1}}
		o.Shared = Shared{S: []inner{{x, ""}, {x, "b"}}, M: map[string]inner{"k": {}}, P: &x, Q: map[string]string{}}
		check(t, o)
		check(t, &o)
		check(t, x)
	}
	for _, s := range []string{"", "plain", `"quoted" \ back`, "<b>&amp;", "naïve ° µ", "line\nfeed\t\x00\x7f", "\u2028\u2029", "bad \xff utf", "😀"} {
		check(t, inner{B: s})
		check(t, tree{Name: s})
	}
	for _, x := range []float64{math.NaN(), math.Inf(1)} {
		check(t, inner{A: x})
		check(t, []any{x})
	}
	check(t, make(chan int))
	check(t, struct{ C chan int }{})
}

// TestAppendsNumbersOfAllSizes: of every exponent.
func TestAppendsNumbersOfAllSizes(t *testing.T) {
	random := rand.New(rand.NewPCG(1, 2))
	for range 100_000 {
		x := math.Float64frombits(random.Uint64())
		if math.IsNaN(x) || math.IsInf(x, 0) {
			continue
		}
		check(t, x)
		check(t, engine.Number(x))
		check(t, x/math.Pow(2, float64(random.IntN(900))))
	}
}

// TestAppendsNumbersAgain: a number that stands in a text already, in the same form and in
// the other, among more than are remembered.
func TestAppendsNumbersAgain(t *testing.T) {
	type both struct {
		F []float64       `json:"f"`
		N []engine.Number `json:"n"`
	}
	var v both
	random := rand.New(rand.NewPCG(3, 4))
	for range 20_000 {
		x := floats[random.IntN(len(floats))]
		if random.IntN(2) == 0 {
			x = float64(random.IntN(3000)) / 7
		}
		v.F, v.N = append(v.F, x, -x), append(v.N, engine.Number(-x), engine.Number(x))
	}
	check(t, v)
	check(t, both{F: v.F[:9], N: v.N[:9]}) // by memory that remembers another text
	got, err := jsonplan.Append([]byte("behind "), []float64{0.1, 0.1})
	if err != nil || string(got) != "behind [0.1,0.1]" {
		t.Errorf("got %s, %v", got, err)
	}
}

package strictjson

import (
	"bytes"
	"math"
	"math/rand/v2"
	"strconv"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

func TestFormatBound(t *testing.T) {
	n, err := Unbind(fullCar, "")
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(fullText, string(Format(n))); diff != "" {
		t.Errorf("Format(Unbind(fullCar)) (-want +got):\n%s", diff)
	}
}

func TestFormatLayout(t *testing.T) {
	long := strings.Repeat("9", 15)
	tests := []struct{ name, text, want string }{
		{"scalar", `true`, "true\n"},
		{"empty list and object", `[[], {}]`, "[[], {}]\n"},
		{"point", `{"a":[1,2,3]}`, "{\"a\": [1, 2, 3]}\n"},
		{"too deep for a line", `{"a":[[1]]}`, "{\n  \"a\": [[1]]\n}\n"},
		{
			"too long for a line", "[" + strings.Repeat(long+",", 6) + "1]",
			"[\n" + strings.Repeat("  "+long+",\n", 6) + "  1\n]\n",
		},
		{"text as it stands", `"<ü \"\u0007\">"`, "\"<ü \\\"\\u0007\\\">\"\n"},
		{"null", `[null]`, "[null]\n"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			tree, err := Parse([]byte(tt.text), Limits{})
			if err != nil {
				t.Fatal(err)
			}
			got := Format(tree.Root)
			if string(got) != tt.want {
				t.Errorf("Format =\n%swant\n%s", got, tt.want)
			}
			again, err := Parse(got, Limits{})
			if err != nil {
				t.Fatal(err)
			}
			if twice := Format(again.Root); !bytes.Equal(got, twice) {
				t.Errorf("a second round gives\n%swant\n%s", twice, got)
			}
		})
	}
}

func TestFormatNumber(t *testing.T) {
	tests := []struct {
		x    float64
		want string
	}{
		{0, "0"},
		{-12.7, "-12.7"},
		{1e-6, "0.000001"},
		{1e-7, "1e-07"},
		{999999999999999, "999999999999999"},
		{1e15, "1e+15"},
		{math.SmallestNonzeroFloat64, "5e-324"},
	}
	for _, tt := range tests {
		if got := formatNumber(tt.x); got != tt.want {
			t.Errorf("formatNumber(%g) = %s, want %s", tt.x, got, tt.want)
		}
	}
}

// TestFormatNumberReadsBack checks that no bit of a number is lost on paper.
func TestFormatNumberReadsBack(t *testing.T) {
	random := rand.New(rand.NewPCG(1, 2))
	for range 10_000 {
		x := math.Float64frombits(random.Uint64())
		if math.IsNaN(x) || math.IsInf(x, 0) {
			continue
		}
		back, err := strconv.ParseFloat(formatNumber(x), 64)
		if err != nil || math.Float64bits(back) != math.Float64bits(x) {
			t.Fatalf("formatNumber(%x) reads back as %x, %v", x, back, err)
		}
	}
}

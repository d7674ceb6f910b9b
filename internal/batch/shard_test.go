package batch

import (
	"strings"
	"testing"

	"toewright/internal/engine"
)

func TestParseShard(t *testing.T) {
	for _, tt := range []struct {
		text string
		want engine.Shard
		part string // of the error
	}{
		{text: "0/1", want: engine.Whole},
		{text: "1/1", want: engine.Whole},
		{text: "0/8", want: engine.Shard{Index: 0, Of: 8}},
		{text: "7/8", want: engine.Shard{Index: 7, Of: 8}},
		{text: "8/8", want: engine.Shard{Index: 0, Of: 8}},
		{text: "9/8", part: "no shard 9 of 8"},
		{text: "-1/8", part: "no shard -1 of 8"},
		{text: "0/0", part: "no shard 0 of 0"},
		{text: "0/1000001", part: "at most 1000000"},
		{text: "3", part: "i/n"},
		{text: "", part: "i/n"},
		{text: "/8", part: "i/n"},
		{text: "1/8/2", part: "i/n"},
		{text: "1e3/2000", part: "i/n"},
	} {
		got, err := ParseShard(tt.text)
		if tt.part != "" {
			if err == nil || !strings.Contains(err.Error(), tt.part) {
				t.Errorf("ParseShard(%q): error %v, want one with %q", tt.text, err, tt.part)
			}
			continue
		}
		if err != nil || got != tt.want {
			t.Errorf("ParseShard(%q) = %+v, %v, want %+v", tt.text, got, err, tt.want)
		}
	}
}

// TestShardsFromEitherBase: counted from 0 or from 1, n shards are the same n.
func TestShardsFromEitherBase(t *testing.T) {
	seen := map[engine.Shard]int{}
	for _, text := range strings.Fields("0/3 1/3 2/3 1/3 2/3 3/3") {
		s, err := ParseShard(text)
		if err != nil {
			t.Fatal(err)
		}
		seen[s]++
	}
	for i := range 3 {
		if n := seen[engine.Shard{Index: i, Of: 3}]; n != 2 {
			t.Errorf("shard %d of 3 came %d times in two runs", i, n)
		}
	}
}

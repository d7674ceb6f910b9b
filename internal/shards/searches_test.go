package shards

import (
	"encoding/json"
	"strings"
	"testing"

	"toewright/internal/engine"
	"toewright/internal/study"
)

// TestSearchesRefused: what is no shard's of the call is refused, and says where.
func TestSearchesRefused(t *testing.T) {
	d := study.Template{Key: "double-wishbone-rack"}.Document()
	d.Search = &study.Search{Variables: []study.Variable{{Parameter: "tieRodOuterHeight", Min: -20, Max: 20}}}
	for _, tt := range []struct {
		start      Start
		name, text string
		part       string // of the error
	}{
		{Search, "a search of another shard", `{"polished": [{"start": 2, "u": [0.5]}]}`, "result.polished.0"},
		{Search, "a search over more", `{"polished": [{"start": 1, "u": [0.5, 0.5]}]}`, "result.polished.0"},
		{Search, "points of another shard", `{"polished": [], "tried": [{"stage": 0, "part": 0, "of": 3, "points": []}]}`, "result.tried.0"},
		{Search, "a point of another shard", `{"polished": [], "tried": [{"stage": 0, "part": 1, "of": 3, "points": [{"number": 3, "value": 1}]}]}`, "point 3"},
		{Search, "a point before the first", `{"polished": [], "tried": [{"stage": 0, "part": 1, "of": 3, "points": [{"number": -2, "value": 1}]}]}`, "point -2"},
		{TradeOff, "an end of another shard", `{"toe": [{"start": 0, "u": [0.5]}]}`, "result.ends.0"},
		{TradeOff, "an end over more", `{"aim": [{"start": 1, "u": [0.5, 1]}]}`, "result.ends.0"},
		{TradeOff, "a level of another shard", `{"levels": [{"start": 4, "x": [1]}, {"start": 5, "x": [1]}]}`, "result.levels.1"},
		{TradeOff, "a level before the first", `{"levels": [{"start": -1, "x": [1]}]}`, "result.levels.0"},
	} {
		job, err := tt.start(Run{Study: d, Options: json.RawMessage("{}")})
		if err != nil {
			t.Fatal(err)
		}
		if err := job.Add(engine.Shard{Index: 1, Of: 3}, json.RawMessage(tt.text)); err == nil || !strings.Contains(err.Error(), tt.part) {
			t.Errorf("%s: error %v, want %q", tt.name, err, tt.part)
		}
	}
}

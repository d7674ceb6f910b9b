package batch

import (
	"context"
	"encoding/json"
	"fmt"
	"testing"

	"toewright/internal/engine"
)

// answer returns what a command answers by itself.
func answer(t *testing.T, command string) any {
	t.Helper()
	ctx, d := context.Background(), document(t)
	var out any
	var err error
	switch o := small[command].(type) {
	case engine.ToleranceOptions:
		out, err = engine.Tolerance(ctx, d, o)
	case engine.ChooseOptions:
		out, err = engine.Choose(ctx, d, o)
	case engine.MapOptions:
		out, err = engine.Map(ctx, d, o)
	}
	if err != nil {
		t.Fatal(err)
	}
	return out
}

// asJSON returns the bytes that the command prints of an answer.
func asJSON(t *testing.T, answer any) string {
	t.Helper()
	text, err := json.Marshal(answer)
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}

// TestMergeIsTheWhole: parts of any number of shards, given in any order, come to
// the bytes of the command by itself; also where most shards have nothing to do.
func TestMergeIsTheWhole(t *testing.T) {
	for command := range small {
		t.Run(command, func(t *testing.T) {
			want := asJSON(t, answer(t, command))
			for _, n := range []int{1, 2, 3, 7, 100} {
				m := newMerge(t)
				for i := range n {
					shard := fmt.Sprintf("%d/%d", (i+n/2)%n, n)
					data, _ := partOf(t, command, shard)
					if err := m.Add(shard, data); err != nil {
						t.Fatal(err)
					}
				}
				got, err := m.Answer(t.Context())
				if err != nil {
					t.Fatal(err)
				}
				if text := asJSON(t, got); text != want {
					t.Errorf("%d shards: %s\nwant %s", n, text, want)
				}
			}
		})
	}
}

func TestMergeRefusesOthers(t *testing.T) {
	for _, tt := range []struct {
		name  string
		spoil func(*Part)
		part  string // of the error
	}{
		{"another version", func(p *Part) { p.Version = "v9.9" }, "was written by version v9.9, this is unversioned; merge with the version that ran the shards"},
		{"another machine", func(p *Part) { p.Machine = "vax" }, "was written on vax"},
		{"another study", func(p *Part) { p.Study = StudyID{"Coupé", "0123456789"} }, `another study, or of this one before a change ("Coupé", 01234567; this is "Saloon (invented)"`},
		{"no study", func(p *Part) { p.Study = StudyID{} }, "another study"},
		{"another command", func(p *Part) { p.Command = "map" }, "is of map, first.json is of tolerance"},
		{"another series", func(p *Part) { p.Options = json.RawMessage(`{"seed":1}`) }, `has the options {"seed":1}, first.json has {}`},
		{"another division", func(p *Part) { p.Shard.Of = 3 }, "is one of 3 shards, first.json one of 2"},
		{"the same shard", func(p *Part) { p.Shard.Index = 0 }, "is shard 0/2, which first.json was already; give it once"},
	} {
		m := newMerge(t)
		data, _ := partOf(t, "tolerance", "0/2")
		if err := m.Add("first.json", data); err != nil {
			t.Fatal(err)
		}
		_, p := partOf(t, "tolerance", "1/2")
		tt.spoil(p)
		err := m.Add("second.json", sealed(t, p))
		wantError(t, tt.name, err, tt.part)
		wantError(t, tt.name, err, "second.json: ")
	}
}

func TestMergeRefusesToBegin(t *testing.T) {
	for _, tt := range []struct {
		name  string
		spoil func(*Part)
		part  string // of the error
	}{
		{"a command without shards", func(p *Part) { p.Command = "serve" }, `is of the command "serve", which is not run in shards`},
		{"an option that is none", func(p *Part) { p.Options = json.RawMessage(`{"wheels":3}`) }, "wheels"},
		{"options that are none", func(p *Part) { p.Options = json.RawMessage(`3`) }, "cannot be read"},
		{"a series that is none", func(p *Part) { p.Options = json.RawMessage(`{"cars":-1}`) }, "cars: want 1 to"},
	} {
		_, p := partOf(t, "tolerance", "0/2")
		tt.spoil(p)
		wantError(t, tt.name, newMerge(t).Add("part.json", sealed(t, p)), tt.part)
	}
}

func TestMergeWantsAll(t *testing.T) {
	m := newMerge(t)
	_, err := m.Answer(t.Context())
	wantError(t, "none", err, "no parts were given")
	data, _ := partOf(t, "map", "3/20")
	if err := m.Add("part.json", data); err != nil {
		t.Fatal(err)
	}
	_, err = m.Answer(t.Context())
	wantError(t, "most", err, "19 of 20 shards are missing: 0/20, 1/20, 2/20, 4/20, 5/20, 6/20, 7/20, 8/20, ...; run them")
}

// TestMergeRefusesResults: a checksum that holds does not make a result true.
func TestMergeRefusesResults(t *testing.T) {
	for _, tt := range []struct {
		command, name, with string
		part                string // of the error
	}{
		{"tolerance", "a key too many", `{"more": 1}`, `"more"`},
		{"tolerance", "cars of others", `{"cars": 31}`, "result.cars: 31, want the 30 of its shard"},
		{"tolerance", "fewer than no failures", `{"failed": -1}`, "-1 failed"},
		{"tolerance", "more failures than cars", `{"failed": 31}`, "31 failed"},
		{"tolerance", "more passed than built", `{"passed": 31}`, "31 passed of 30 cars"},
		{"tolerance", "cars not counted", `{"figure": []}`, "result.figure: counts 0 cars, want the 30 built"},
		{"tolerance", "places too few", `{"curve": []}`, "result.curve: 0 places, want 10"},
		{"tolerance", "a place not counted", `{"curve": [[], [], [], [], [], [], [], [], [], []]}`, "result.curve.0: counts 0 cars"},
		{"tolerance", "set-ups lost", `{"inSetUps": []}`, "result.inSetUps: 0 set-ups, want 2"},
		{"tolerance", "a set-up without cars", `{"inSetUps": [null, null]}`, "result.inSetUps.0: cars where none"},
		{"tolerance", "cars of others in a set-up", `{"inSetUps": [{"cars": 9}, {"cars": 30}]}`, "result.inSetUps.0.cars: 9, want the 30"},
		{"choose", "tried of others", `{"tried": 5}`, "result.tried: 5, want the 4 of its shard"},
		{"choose", "built without being tried", `{"built": 5}`, "of 5 built, 4 tried"},
		{"choose", "built less than nothing", `{"built": -1, "best": [], "front": []}`, "of -1 built"},
		{"choose", "best lost", `{"best": []}`, "0 best"},
		{"choose", "all undominated, and more", `{"front": [{}, {}, {}, {}, {}]}`, "5 undominated"},
		{"choose", "a number of others", `{"built": 1, "best": [{"number": 4}], "front": []}`, "result.best.0: combination 4, want each of 0 to 3"},
		{"choose", "a number below all", `{"front": [{"number": -1}]}`, "result.front.0: combination -1"},
		{"choose", "a number twice", `{"built": 2, "front": [{"number": 1, "effects": [0]}, {"number": 1}], "best": [{"effects": [0]}, {"number": 1, "effects": [0]}]}`, "result.front.1: combination 1, want each"},
		{"choose", "a negative figure", `{"front": [{"rms": -1}]}`, "rms -1"},
		{"choose", "an effect lost", `{"front": [{}]}`, "and 0 effects, want 0 or more and 1"},
		{"map", "cells lost", `{"cells": []}`, "result.cells: 0 of them, want the 6 of its shard"},
		{"map", "a negative cell", `{"cells": [1, 2, null, -3, 4, 5]}`, "result.cells.3: -3, want 0 or more"},
		{"map", "a cell that is none", `{"cells": [1, "2", 3, 4, 5, 6]}`, "cannot be read"},
	} {
		_, p := partOf(t, tt.command, "0/2")
		p.Result = changed(t, p.Result, tt.with)
		wantError(t, tt.command+", "+tt.name, newMerge(t).Add("part.json", sealed(t, p)), tt.part)
	}
}

// FuzzMerge: a part that says what it likes, with a checksum that holds, is merged
// or refused.
func FuzzMerge(f *testing.F) {
	for command := range small {
		_, p := partOf(f, command, "0/1")
		f.Add(command, string(p.Options), string(p.Result), 0, 1)
		f.Add(command, string(p.Options), string(p.Result), 1, 3)
	}
	d := document(f)
	_, whole := partOf(f, "map", "0/1")
	f.Fuzz(func(t *testing.T, command, options, result string, index, of int) {
		if !json.Valid([]byte(options)) || !json.Valid([]byte(result)) {
			return
		}
		m, err := NewMerge(d)
		if err != nil {
			t.Fatal(err)
		}
		p := *whole
		p.Command, p.Options, p.Result = command, json.RawMessage(options), json.RawMessage(result)
		p.Shard = engine.Shard{Index: index, Of: of}
		if err := m.Add("part.json", sealed(t, &p)); err != nil || of != 1 {
			return
		}
		got, err := m.Answer(t.Context())
		if err != nil {
			t.Fatal(err)
		}
		asJSON(t, got)
	})
}

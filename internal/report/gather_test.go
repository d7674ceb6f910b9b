package report

import (
	"context"
	"errors"
	"strings"
	"testing"

	"toewright/internal/engine"
	"toewright/internal/study"
)

func TestGatherChooses(t *testing.T) {
	hidden := car(t, "double-wishbone-rack")
	hidden.Candidates[0].Hidden = true
	shown := car(t, "double-wishbone-rack")
	shown.Display = &study.Display{Yardstick: "Spacers 12 mm", Units: study.Inch}
	bare := car(t, "double-wishbone-rack")
	bare.Candidates, bare.Yield = nil, nil
	tests := []struct {
		name      string
		study     *study.Document
		options   Options
		candidate string
		yardstick string
		paper     Paper
	}{
		{"the first", car(t, "double-wishbone-rack"), Options{}, "Spacers 6 mm", "base", A4},
		{"the first that is not hidden", hidden, Options{}, "Spacers 12 mm", "base", A4},
		{"as asked", hidden, Options{Candidate: "Spacers 6 mm", Yardstick: "Rack lifted 8 mm", Paper: Letter}, "Spacers 6 mm", "Rack lifted 8 mm", Letter},
		{"as shown", shown, Options{}, "Spacers 6 mm", "Spacers 12 mm", Letter},
		{"no candidates", bare, Options{}, "base", "base", A4},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			s := gathered(t, tt.study, tt.options)
			if s.Candidate != tt.candidate || s.Yardstick != tt.yardstick || s.Paper != tt.paper {
				t.Errorf("%s against %s on %s, want %s against %s on %s", s.Candidate, s.Yardstick, s.Paper, tt.candidate, tt.yardstick, tt.paper)
			}
			if want := s.before() == nil; want != (tt.candidate == tt.yardstick) || s.after().Name != tt.candidate {
				t.Errorf("cars %d, the last %s; alone: %t", len(s.Cars), s.after().Name, want)
			}
			if len(s.Omitted) != 0 {
				t.Errorf("omitted %q, want nothing", s.Omitted)
			}
		})
	}
}

func TestGatherDate(t *testing.T) {
	d := car(t, "double-wishbone-rack")
	d.Date = "May"
	if got := gathered(t, d, Options{}).Date; got != "May" {
		t.Errorf("date %q, want the study's", got)
	}
	if got := gathered(t, d, Options{Date: "June"}).Date; got != "June" {
		t.Errorf("date %q, want that asked for", got)
	}
}

// TestGatherOmits: what is beside the point does not keep the sheet from being made,
// but is named on it.
func TestGatherOmits(t *testing.T) {
	d := car(t, "double-wishbone-rack")
	d.Yield.KeepToe, d.Tolerances[0].Parameter = true, "toe"
	d.Readings = d.Readings[:1]
	d.Readings[0].Purpose = "verify"
	s := gathered(t, d, Options{})
	page := written(t, s)
	for _, part := range []string{"tolerance of toe: the cars' toe is not re-set", "readings: "} {
		if !strings.Contains(strings.Join(s.Omitted, "\n"), part) || !strings.Contains(seen(page), part) {
			t.Errorf("omitted %q, want %q there and on the page", s.Omitted, part)
		}
	}
}

// TestLimitsOnPaperFailOneByOne: a limit that cannot be measured says why in its line,
// below one that can.
func TestLimitsOnPaperFailOneByOne(t *testing.T) {
	d := car(t, "double-wishbone-rack")
	d.TieRod = nil
	d.Search.Limits = append(d.Search.Limits[:1:1], study.Limit{Result: "threadEngagement", Min: new(float64)})
	s := gathered(t, d, Options{})
	page := seen(written(t, s))
	for _, want := range []string{"outer ball angle: ", ": held", "thread engagement: cannot be measured: tie rod, thread engagement: is missing"} {
		if !strings.Contains(page, want) {
			t.Errorf("the page lacks %q", want)
		}
	}
	if len(s.Omitted) != 0 {
		t.Errorf("omitted %q, want nothing", s.Omitted)
	}
}

func TestGatherRefuses(t *testing.T) {
	tests := []struct {
		name    string
		options Options
		key     string
	}{
		{"candidate", Options{Candidate: "none"}, "candidate"},
		{"yardstick", Options{Yardstick: "none"}, "yardstick"},
		{"base of no length", Options{Base: new(float64)}, "base"},
		{"base of a card", Options{Form: CardForm, Base: new(float64)}, "base"},
		{"paper", Options{Paper: "a5"}, "paper"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			_, err := Gather(t.Context(), car(t, "double-wishbone-rack"), tt.options)
			var e *engine.Error
			if !errors.As(err, &e) || e.Key != tt.key {
				t.Errorf("error %v, want one about %s", err, tt.key)
			}
		})
	}
}

func TestGatherIsCancelled(t *testing.T) {
	ctx, cancel := context.WithCancel(t.Context())
	cancel()
	if _, err := Gather(ctx, car(t, "double-wishbone-rack"), Options{}); !errors.Is(err, context.Canceled) {
		t.Errorf("error %v, want that of the context", err)
	}
}

// TestGatherLeavesTheStudyAlone checks that a sheet changes nothing of its study.
func TestGatherLeavesTheStudyAlone(t *testing.T) {
	d := inInches(t)
	before, err := study.Encode(d)
	if err != nil {
		t.Fatal(err)
	}
	gathered(t, d, Options{})
	after, err := study.Encode(d)
	if err != nil || string(after) != string(before) {
		t.Errorf("the study was changed, %v", err)
	}
}

//go:build unix

package main

import (
	"encoding/json"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"strings"

	"toewright/internal/study"
	"toewright/solver"
)

// subject is a linkage on which all tools are measured.
type subject struct {
	name     string // as benchmarks name it
	design   *solver.Design
	base     *solver.Assembler
	travels  []float64
	expected map[float64]float64 // toe in deg by travel in mm, from outside
	file     string              // as the tools read it
}

// The window of the sweeps: 41 positions.
const (
	windowBump = 80.0
	windowStep = 4.0
)

// caseFiles are the linkages of the sweeps.
var caseFiles = []struct{ name, file string }{
	{"double-wishbone", "dw01_saloon_rear_steer.json"},
	{"strut", "st01_hatch_rear_steer.json"},
	{"multi-link", "ml01_front_virtual_axis.json"},
	{"solid-axle", "sa01_cross_steer_right_arm.json"},
}

// caseFile is what is read of a case.
type caseFile struct {
	Study    json.RawMessage `json:"study"`
	Expected []struct {
		Side      string  `json:"side"`
		Motion    string  `json:"motion"`
		Steer     float64 `json:"steer"`
		Positions []struct {
			Travel float64 `json:"travel"`
			Toe    float64 `json:"toe"`
		} `json:"positions"`
	} `json:"expected"`
	Search searchCase `json:"search"`
}

// load reads a case and writes it for the tools into dir, at travels of ±half mm.
func load(dir, name, file string, half, step float64) (*subject, *caseFile, error) {
	data, err := os.ReadFile(filepath.Join("testdata/cases", file))
	if err != nil {
		return nil, nil, err
	}
	c := &caseFile{}
	if err := json.Unmarshal(data, c); err != nil {
		return nil, nil, err
	}
	doc, err := study.Decode(c.Study)
	if err != nil {
		return nil, nil, err
	}
	s := &subject{name: name, expected: c.toes()}
	if s.design, err = doc.Design(); err != nil {
		return nil, nil, err
	}
	if s.base, err = solver.NewAssembler(s.design); err != nil {
		return nil, nil, err
	}
	if s.travels, err = solver.Grid(half, half, step); err != nil {
		return nil, nil, err
	}
	s.file = filepath.Join(dir, fmt.Sprintf("%s-%g.txt", name, half))
	return s, c, os.WriteFile(s.file, []byte(s.text()), 0o644)
}

// toes returns the expected toe of the left wheel, straight ahead, both wheels
// moving.
func (c *caseFile) toes() map[float64]float64 {
	toes := map[float64]float64{}
	for _, e := range c.Expected {
		if e.Side == "left" && e.Motion == "both" && e.Steer == 0 {
			for _, p := range e.Positions {
				toes[p.Travel] = p.Toe
			}
		}
	}
	return toes
}

// text returns the linkage as src/case.h reads it.
func (s *subject) text() string {
	var b strings.Builder
	d := s.design
	fmt.Fprintf(&b, "kind %s\ntoe %.17g\ncamber %.17g\n", d.Kind.Name, d.Toe[solver.Left].Degrees(), d.Camber[solver.Left].Degrees())
	point := func(name string, v solver.Vec) {
		fmt.Fprintf(&b, "point %s %.17g %.17g %.17g\n", name, v.X, v.Y, v.Z)
	}
	for i, h := range d.Kind.SidePoints {
		if len(d.Kind.CommonPoints) == 0 {
			point(h.Name, d.Points[solver.Left][i])
			continue
		}
		for _, side := range solver.Sides {
			point(side.String()+"."+h.Name, d.Points[side][i])
		}
	}
	for i, h := range d.Kind.CommonPoints {
		point(h.Name, d.Common[i])
	}
	if len(d.Kind.CommonPoints) > 0 {
		fmt.Fprintf(&b, "dragSide %s\n", d.DragSide)
	}
	for _, t := range s.travels {
		fmt.Fprintf(&b, "travel %g\n", t)
	}
	return b.String()
}

// toeLimit is by how much a toe may differ from what is expected, deg.
const toeLimit = 1e-6

// check returns an error where toes, at the travels of s, are not those expected.
func (s *subject) check(who string, toes []float64) error {
	if len(toes) != len(s.travels) {
		return fmt.Errorf("%s gave %d toes of %s, want %d", who, len(toes), s.name, len(s.travels))
	}
	checked := 0
	for i, t := range s.travels {
		want, ok := s.expected[t]
		if !ok {
			continue
		}
		checked++
		if !(math.Abs(toes[i]-want) <= toeLimit) {
			return fmt.Errorf("%s: %s at %g mm: toe %.9f deg, want %.9f", who, s.name, t, toes[i], want)
		}
	}
	if checked == 0 {
		return fmt.Errorf("no travel of %s has an expected toe", s.name)
	}
	return nil
}

package main

import (
	"fmt"
	"math"
)

// tapeSlips are what goes wrong in one measure, or between two.
var tapeSlips = []struct {
	name  string
	spoil func(j *tapeJob)
}{
	{"none", func(*tapeJob) {}},
	{"10 mm", func(j *tapeJob) { j.spoil(func(v float64) float64 { return v + 10*j.sign() }) }},
	{"a foot", func(j *tapeJob) { j.spoil(func(v float64) float64 { return v + 12*25.4*j.sign() }) }},
	{"wrong end of a metre rule", func(j *tapeJob) { j.spoil(func(v float64) float64 { return 1000 - v }) }},
	{"two exchanged", (*tapeJob).exchange},
}

func (j *tapeJob) sign() float64 { return math.Copysign(1, j.r.Float64()-0.5) }

// least is the least change, mm, that is called a slip.
const leastSlip = 9.0

// spoil changes one length from a mark by a function of mm that leaves a length.
func (j *tapeJob) spoil(change func(float64) float64) {
	u, lengths := j.truth.Units, j.study.Measured.Lengths
	for {
		i := j.r.IntN(len(lengths))
		was := u.Millimetres(lengths[i].Value)
		if now := change(was); j.fromMark(i) && now > 50 && math.Abs(now-was) >= leastSlip {
			lengths[i].Value = u.FromMillimetres(now)
			j.slipped = append(j.slipped, fmt.Sprintf("lengths.%d", i))
			return
		}
	}
}

func (j *tapeJob) fromMark(i int) bool {
	_, ok := j.marks[j.study.Measured.Lengths[i].From]
	return ok
}

// exchange writes two lengths from one mark each in the place of the other.
func (j *tapeJob) exchange() {
	u, lengths := j.truth.Units, j.study.Measured.Lengths
	for {
		a, b := j.r.IntN(len(lengths)), j.r.IntN(len(lengths))
		if lengths[a].From != lengths[b].From || !j.fromMark(a) || u.Millimetres(math.Abs(lengths[a].Value-lengths[b].Value)) < leastSlip {
			continue
		}
		lengths[a].Value, lengths[b].Value = lengths[b].Value, lengths[a].Value
		j.slipped = append(j.slipped, fmt.Sprintf("lengths.%d", a), fmt.Sprintf("lengths.%d", b))
		return
	}
}

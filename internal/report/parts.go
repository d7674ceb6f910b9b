package report

import (
	"maps"
	"math"
	"slices"

	"toewright/internal/study"
	"toewright/solver"
)

// parts sets the parts of the catalogue whose changes add up to the candidate's: of
// several such sets the cheapest. There are none where the candidate was not chosen
// from the catalogue.
func (g *gatherer) parts() error {
	d, k := g.sheet.Study, g.sheet.record()
	if k == nil || len(k.Changes) == 0 || len(d.Catalogue) == 0 {
		return nil
	}
	design, err := d.Design()
	if err != nil {
		return g.omit("parts", err)
	}
	s := &shopping{want: k.Changes, settings: settings(design, k.Changes), tries: maxTries}
	s.addAll(d.Catalogue)
	s.choose(0, nil)
	for _, p := range s.best {
		g.sheet.Parts = append(g.sheet.Parts, *p)
	}
	return nil
}

// settings returns those of the changes that are the setting itself.
func settings(design *solver.Design, changes study.Changes) map[string]bool {
	list := map[string]bool{}
	for key := range changes {
		if p, _, err := solver.FindParameter(design, key); err == nil && p.Absolute {
			list[key] = true
		}
	}
	return list
}

// maxTries bounds the combinations looked at: parts that change nothing else than
// the candidate are few.
const maxTries = 100_000

// shopping looks for parts that make up changes.
type shopping struct {
	want     study.Changes
	settings map[string]bool // keys of those that replace one another
	slots    [][]*study.Part // only parts that change nothing else
	tries    int             // left

	best  []*study.Part // nil where there is none yet
	price float64
}

// addAll sorts the parts that may be of use by slot.
func (s *shopping) addAll(catalogue []study.Part) {
	at := map[string]int{}
	for i := range catalogue {
		p := &catalogue[i]
		if !s.useful(p) {
			continue
		}
		slot, ok := at[p.Slot]
		if !ok {
			slot = len(s.slots)
			at[p.Slot] = slot
			s.slots = append(s.slots, nil)
		}
		s.slots[slot] = append(s.slots[slot], p)
	}
}

// useful reports whether a part changes something, and nothing that is not wanted.
func (s *shopping) useful(p *study.Part) bool {
	for key := range p.Changes {
		if _, ok := s.want[key]; !ok {
			return false
		}
	}
	return len(p.Changes) > 0
}

// choose tries each part of a slot, and none, with those chosen in the slots before.
func (s *shopping) choose(slot int, chosen []*study.Part) {
	if s.tries--; s.tries < 0 {
		return
	}
	if slot == len(s.slots) {
		s.weigh(chosen)
		return
	}
	s.choose(slot+1, chosen)
	for _, p := range s.slots[slot] {
		if !slices.ContainsFunc(chosen, func(q *study.Part) bool { return excluded(p, q) }) {
			s.choose(slot+1, append(slices.Clone(chosen), p))
		}
	}
}

func excluded(p, q *study.Part) bool {
	return slices.Contains(p.Excludes, q.Name) || slices.Contains(q.Excludes, p.Name)
}

// weigh keeps the parts chosen if they make up the changes for less.
func (s *shopping) weigh(chosen []*study.Part) {
	price := 0.0
	for _, p := range chosen {
		price += p.Price
	}
	if s.best != nil && price >= s.price || !s.makesUp(chosen) {
		return
	}
	s.best, s.price = chosen, price
}

// sameChange is the difference below which two values of a change are one, as parts
// of themselves.
const sameChange = 1e-9

// makesUp reports whether the changes of parts are those wanted: settings replace one
// another, changes add up.
func (s *shopping) makesUp(chosen []*study.Part) bool {
	sum := study.Changes{}
	for _, p := range chosen {
		for key, v := range p.Changes {
			if s.settings[key] {
				sum[key] = 0
			}
			sum[key] += v
		}
	}
	return maps.EqualFunc(sum, s.want, func(a, b float64) bool {
		return math.Abs(a-b) <= sameChange*max(1, math.Abs(b))
	})
}

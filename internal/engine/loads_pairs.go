package engine

// LoadPair is what a case makes of one side of a car, beside what it makes of that side of
// another.
type LoadPair struct {
	Now, Was *Load // Was is nil where there is no other car
}

// Pairs returns the loads of the sides that bear any, beside those of another car under the
// same cases, which may be nil.
func (r *LoadsResult) Pairs(was *LoadsResult) (list []LoadPair) {
	for i := range r.Loads {
		p := LoadPair{Now: &r.Loads[i]}
		if l := p.Now; l.TieRod == 0 && l.Spring == 0 && (l.Compliance == nil || l.Compliance.Toe == nil || *l.Compliance.Toe == 0) {
			continue
		}
		if was != nil {
			p.Was = &was.Loads[i]
		}
		list = append(list, p)
	}
	return list
}

package solver

// Adjuster is a part that takes up a change of camber and caster.
type Adjuster struct {
	Key   string // as the study file names it
	Label string
}

// Adjusters returns the parts that may take up camber and caster in this kind of
// suspension. The first is the default.
func (k *Kind) Adjusters() []Adjuster {
	l, ok := k.layout.(cornerLayout)
	if !ok {
		return []Adjuster{{"upper-links", "lengths of the upper links"}}
	}
	var as []Adjuster
	for _, a := range l.adjusters {
		as = append(as, Adjuster{a.key, a.label})
	}
	return as
}

// adjuster says which two constraints give way for camber and caster, and what
// moves so that they hold again.
type adjuster struct {
	pair   [2]int // rods that give way
	pivots bool   // their body ends move, square to the line between the two; else their lengths change
	mount  bool   // the strut's top mount moves instead
}

package solver

// bounded returns values moved by step, within the usual bounds of the parameters.
func (r *remedySearch) bounded(values, step [2]float64) [2]float64 {
	for k := range r.moves {
		p := &r.moves[k].Parameter
		values[k] = clamp(values[k]+step[k], p.Min, p.Max)
	}
	return values
}

// step returns the step that a linear fit asks for. A parameter at its bound that
// gets better only beyond it, or that the fit would push there, stays where it is
// while the other is fitted alone.
func (r *remedySearch) step(now *moved, values [2]float64) [2]float64 {
	free := [2]bool{true, len(r.moves) == 2}
	r.pin(&free, values, now.downhill())
	r.pin(&free, values, now.fit(free))
	return now.fit(free)
}

// pin takes from the free moves those at a bound that a direction leads out of.
func (r *remedySearch) pin(free *[2]bool, values, direction [2]float64) {
	for k := range r.moves {
		p := &r.moves[k].Parameter
		if v, d := values[k], direction[k]; v == p.Min && d < 0 || v == p.Max && d > 0 {
			free[k] = false
		}
	}
}

// downhill returns minus the gradient of half the squared error.
func (m *moved) downhill() (d [2]float64) {
	for i, row := range m.rates {
		for k := range d {
			d[k] -= row[k] * m.error[i]
		}
	}
	return d
}

// fit returns the changes of the free moves that are best to first order, by least
// squares; zeros where the curve does not settle them.
func (m *moved) fit(free [2]bool) (step [2]float64) {
	normal := matrix{{1}, {0, 1}} // a move that is not free is asked to be 0
	var rhs column
	down := m.downhill()
	for a := range step {
		if !free[a] {
			continue
		}
		normal[a][a], rhs[a] = 0, down[a]
		for _, row := range m.rates {
			for b := range step {
				if free[b] {
					normal[a][b] += row[a] * row[b]
				}
			}
		}
	}
	var lu factors
	if !lu.factor(&normal, len(step)) {
		return step
	}
	lu.solve(&rhs, &rhs)
	return [2]float64{rhs[0], rhs[1]}
}

package optimize

import (
	"math"
	"slices"
	"sort"

	"gonum.org/v1/gonum/floats"

	"toewright/optimize/nlp"
	"toewright/solver"
)

// Common is what cars that were fitted one by one have in common: by how much each
// dimension is off on all of them alike. A car differs from another besides, in every
// dimension by a share of what its prior allows, the same share in all; each has zeros,
// slopes and travel zeros of its own.
type Common struct {
	Deviations []Deviation // the likeliest single one first
	// Scatter is the share of the priors' standard deviations by which cars differ from one
	// another, and Wide by how many times the priors are exceeded by what they have in
	// common, 1 for not: the likeliest of those looked at.
	Scatter, Wide float64
}

// Deviation is what all cars may have in common of one dimension: of both sides alike where
// each side is an unknown of its own.
type Deviation struct {
	Parameter solver.Parameter
	Sides     solver.Selection
	// Value is the deviation, mm or radians, all dimensions being free at once, with its
	// standard deviation; PriorSD is that before any reading.
	Value, SD, PriorSD float64
	// Alone is the deviation were no other dimension off on all cars, and Gain by how much it
	// then lowers the chi-square, its own unlikeliness counted; Share is the part of what all
	// dimensions together gain.
	Alone, Gain, Share float64
}

// Key returns the parameter's key with the side it is restricted to.
func (d *Deviation) Key() string { return d.Parameter.Key + d.Sides.Suffix() }

// The shares and the widths of priors that [FitCommon] weighs against each other. No cars are
// quite alike: were they, what tells the derivatives of one from those of another would be
// taken for something that they have in common. Wider priors must be likelier by
// leastEvidence, as in [GaugeFit.WidenPriors].
var (
	commonScatters = []float64{1.0 / 16, 1.0 / 8, 1.0 / 4, 1.0 / 2, 1}
	commonWidths   = []float64{1, 2, 4}
)

// FitCommon fits cars that share a base and priors all at once, from the fit of each: by the
// linearised model its likelihood is known from its estimate and covariance less the prior
// (the information form of a Gaussian), so that the work grows with the cars alone. How much
// cars differ and how wide the priors are is not known: the answer is the mean over a few of
// either, each weighed by how likely it makes all readings (the evidence, as in
// [GaugeFit.WidenPriors]). Widened are by how many times each car's priors were.
func FitCommon(cars []*FittedCar, widened []float64) *Common {
	c := newPooled(cars, widened)
	best := math.Inf(1)
	var models []*pooledModel
	for _, scatter := range commonScatters {
		sum, ok := c.sum(scatter)
		for _, wide := range commonWidths {
			if !ok {
				continue
			}
			if m := c.model(sum, scatter, wide); m != nil {
				best = min(best, m.surprise)
				models = append(models, m)
			}
		}
	}
	return c.common(models, best)
}

// pooled are the likelihoods of cars by the deviations of the unknowns that any of them has,
// each in units of its prior's standard deviation.
type pooled struct {
	unknowns []Unknown // SD is the prior's before it was widened
	cars     []likelihood
}

// likelihood is that of a car: information·x = moment at its likeliest x.
type likelihood struct{ information, moment []float64 }

func newPooled(cars []*FittedCar, widened []float64) *pooled {
	p := &pooled{}
	places := make([][]int, len(cars))
	for i, f := range cars {
		for k := range f.Unknowns {
			places[i] = append(places[i], p.place(&f.Unknowns[k], widened[i]))
		}
	}
	for i, f := range cars {
		p.cars = append(p.cars, p.likelihood(f, places[i], widened[i]))
	}
	return p
}

// place returns where an unknown of the car stands; -1 for an error of how it was read.
func (p *pooled) place(u *Unknown, widened float64) int {
	if u.Kind != CarUnknown {
		return -1
	}
	at := slices.IndexFunc(p.unknowns, func(v Unknown) bool { return v.Key() == u.Key() })
	if at < 0 {
		at, p.unknowns = len(p.unknowns), append(p.unknowns, *u)
		p.unknowns[at].SD /= widened
	}
	return at
}

// likelihood takes the prior out of a car's estimate; what was free of its readings alone is
// left to take any value.
func (p *pooled) likelihood(f *FittedCar, places []int, widened float64) likelihood {
	var own []int // unknowns of the car
	for k, at := range places {
		if at >= 0 {
			own = append(own, k)
		}
	}
	n, all := len(own), len(p.unknowns)
	sd := func(k int) float64 { return p.unknowns[places[own[k]]].SD }
	u, x := make([]float64, n*n), make([]float64, n)
	for i := range n {
		x[i] = f.Values[own[i]] / sd(i)
		for j := range n {
			u[i*n+j] = f.Covariance.At(own[i], own[j]) / (sd(i) * sd(j))
		}
	}
	l := likelihood{make([]float64, all*all), make([]float64, all)}
	if !nlp.Cholesky(u, n) {
		return l // says nothing
	}
	nlp.CholeskySolve(u, n, x)
	for i := range n {
		column := make([]float64, n)
		column[i] = 1
		nlp.CholeskySolve(u, n, column)
		column[i] -= 1 / (widened * widened)
		l.moment[places[own[i]]] = x[i]
		for j := range n {
			l.information[places[own[j]]*all+places[own[i]]] = column[j]
		}
	}
	return l
}

// pooledSum is what all cars say of what they have in common.
type pooledSum struct {
	likelihood
	surprise float64 // twice the negative logarithm of how likely their differences are
}

// sum adds up the cars, each of which differs from what is common by a scatter; false where
// rounding leaves nothing.
func (p *pooled) sum(scatter float64) (pooledSum, bool) {
	n, t := len(p.unknowns), scatter*scatter
	s := pooledSum{likelihood: likelihood{make([]float64, n*n), make([]float64, n)}}
	for _, l := range p.cars {
		u := make([]float64, n*n) // 1 + t·information
		for i := range n {
			floats.AddScaled(u[i*n:(i+1)*n], t, l.information[i*n:(i+1)*n])
			u[i*n+i]++
		}
		if !nlp.Cholesky(u, n) {
			return s, false
		}
		moment := slices.Clone(l.moment)
		nlp.CholeskySolve(u, n, moment)
		floats.Add(s.moment, moment)
		s.surprise -= t * floats.Dot(l.moment, moment)
		for i := range n {
			s.surprise += 2 * math.Log(u[i*n+i])
			row := slices.Clone(l.information[i*n : (i+1)*n]) // as good as a column
			nlp.CholeskySolve(u, n, row)
			floats.Add(s.information[i*n:(i+1)*n], row)
		}
	}
	return s, true
}

// pooledModel is what is common by one scatter and one width of the priors.
type pooledModel struct {
	pooledSum
	scatter, wide float64
	values        []float64
	covariance    []float64 // row by row
	gain          float64   // of chi-square, by all dimensions together
}

// model returns nil where rounding leaves nothing.
func (p *pooled) model(s pooledSum, scatter, wide float64) *pooledModel {
	n := len(p.unknowns)
	u := slices.Clone(s.information)
	for k := range n {
		u[k*n+k] += 1 / (wide * wide)
	}
	if !nlp.Cholesky(u, n) {
		return nil
	}
	m := &pooledModel{pooledSum: s, scatter: scatter, wide: wide, values: slices.Clone(s.moment), covariance: make([]float64, n*n)}
	nlp.CholeskySolve(u, n, m.values)
	m.gain = floats.Dot(s.moment, m.values)
	m.surprise -= m.gain
	if wide > 1 {
		m.surprise += leastEvidence
	}
	for k := range n {
		m.surprise += 2 * math.Log(u[k*n+k]*wide)
		row := m.covariance[k*n : (k+1)*n]
		row[k] = 1
		nlp.CholeskySolve(u, n, row)
	}
	return m
}

// common averages over models; what single dimensions explain is that of the likeliest.
func (p *pooled) common(models []*pooledModel, best float64) *Common {
	n, total := len(p.unknowns), 0.0
	mean, spread := make([]float64, n), make([]float64, n*n)
	var likeliest *pooledModel
	for _, m := range models {
		if m.surprise == best {
			likeliest = m
		}
		w := math.Exp((best - m.surprise) / 2)
		total += w
		floats.AddScaled(mean, w, m.values)
		floats.AddScaled(spread, w, m.covariance)
		for i, x := range m.values {
			floats.AddScaled(spread[i*n:(i+1)*n], w*x, m.values)
		}
	}
	if likeliest == nil {
		return &Common{}
	}
	floats.Scale(1/total, mean)
	floats.Scale(1/total, spread)
	for i, x := range mean {
		floats.AddScaled(spread[i*n:(i+1)*n], -x, mean)
	}
	out := &Common{Scatter: likeliest.scatter, Wide: likeliest.wide}
	for _, along := range p.directions() {
		out.Deviations = append(out.Deviations, p.deviation(along, mean, spread, likeliest))
	}
	sort.SliceStable(out.Deviations, func(i, j int) bool { return out.Deviations[i].Gain > out.Deviations[j].Gain })
	return out
}

// directions returns which unknowns move together: both sides of a dimension, and then each
// by itself.
func (p *pooled) directions() (list [][]int) {
	for i := range p.unknowns {
		u := &p.unknowns[i]
		for j := i + 1; u.Sides != solver.BothSides && j < len(p.unknowns); j++ {
			if p.unknowns[j].Parameter.Key == u.Parameter.Key {
				list = append(list, []int{i, j})
			}
		}
	}
	for i := range p.unknowns {
		list = append(list, []int{i})
	}
	return list
}

// deviation returns what is common along unknowns that are off alike.
func (p *pooled) deviation(along []int, mean, spread []float64, m *pooledModel) Deviation {
	first, n := &p.unknowns[along[0]], len(p.unknowns)
	d := Deviation{Parameter: first.Parameter, Sides: first.Sides, PriorSD: first.SD * m.wide / math.Sqrt(float64(len(along)))}
	if len(along) > 1 {
		d.Sides = solver.BothSides
	}
	moment, stiff, variance := 0.0, 1/(m.wide*m.wide), 0.0
	for _, i := range along {
		d.Value += mean[i] * first.SD / float64(len(along))
		moment += m.moment[i]
		for _, j := range along {
			stiff += m.information[i*n+j]
			variance += spread[i*n+j]
		}
	}
	d.SD = math.Sqrt(max(variance, 0)) * first.SD / float64(len(along))
	d.Alone, d.Gain = moment/stiff*first.SD, moment*moment/stiff
	d.Share = d.Gain / m.gain
	return d
}

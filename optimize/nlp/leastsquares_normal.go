package nlp

import (
	"math"

	"gonum.org/v1/gonum/floats"
	"gonum.org/v1/gonum/mat"
)

// normal is the weighted linear problem of a fit at one point: the rows of the
// readings, scaled by the root of their weights, then one row for each prior.
type normal struct {
	readings *Readings
	loss     Loss
	priors   []int // variables that have one

	x       []float64
	values  Values
	weights []float64
	cost    float64

	rows *mat.Dense // Jacobian of all rows
	rhs  []float64  // residuals of all rows
}

func newNormal(r *Readings) *normal {
	size := r.Model.Size()
	n := &normal{
		readings: r, loss: r.Loss, values: NewValues(size),
		x: make([]float64, size.Variables), weights: make([]float64, size.Residuals),
	}
	if n.loss == nil {
		n.loss = Squares{}
	}
	for j, p := range r.Priors {
		if p.SD > 0 {
			n.priors = append(n.priors, j)
		}
	}
	total := size.Residuals + len(n.priors)
	n.rows = mat.NewDense(total, size.Variables, nil)
	n.rhs = make([]float64, total)
	return n
}

// evaluate sets up the problem at x. It returns false where the model cannot be
// evaluated.
func (n *normal) evaluate() bool {
	if !n.readings.Model.Evaluate(n.x, &n.values) || !n.values.finite() {
		return false
	}
	n.cost = 0
	for i, r := range n.values.R {
		rho, weight := n.loss.Rho(r * r)
		n.cost += rho
		n.weights[i] = weight
		root := math.Sqrt(weight)
		n.rhs[i] = root * r
		for j, d := range n.values.JR.RawRowView(i) {
			n.rows.Set(i, j, root*d)
		}
	}
	n.addPriors()
	return true
}

// addPriors sets the rows of the priors.
func (n *normal) addPriors() {
	for k, j := range n.priors {
		p, row := n.readings.Priors[j], len(n.values.R)+k
		n.rhs[row] = (n.x[j] - p.Mean) / p.SD
		n.rows.Set(row, j, 1/p.SD)
		n.cost += n.rhs[row] * n.rhs[row]
	}
}

// columnNorm returns the norm of one column of the rows.
func (n *normal) columnNorm(j int) float64 { return floats.Norm(Column(n.rows, j), 2) }

// solve returns the damped step: the d that minimises |rows·d + rhs|² +
// damping·Σ(normsⱼ dⱼ)². The damping keeps the scaled columns independent.
func (n *normal) solve(damping float64, norms []float64) []float64 {
	m, cols := n.rows.Dims()
	columns, b := make([][]float64, cols), make([]float64, m+cols)
	floats.ScaleTo(b[:m], -1, n.rhs)
	for j := range columns {
		columns[j] = make([]float64, m+cols)
		floats.ScaleTo(columns[j][:m], 1/rise(norms[j]), Column(n.rows, j))
		columns[j][m+j] = math.Sqrt(damping)
	}
	d := linearLeastSquares(columns, b)
	for j := range d {
		d[j] /= rise(norms[j])
	}
	return d
}

// predictedReduction returns the reduction of cost that the linear problem gives for d.
func (n *normal) predictedReduction(d []float64) float64 {
	moved := MulVec(make([]float64, len(n.rhs)), n.rows, d)
	sum := 0.0
	for i, r := range n.rhs {
		change := moved[i]
		sum -= change * (2*r + change)
	}
	return sum
}

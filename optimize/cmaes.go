package optimize

import (
	"math"
	"math/rand/v2"
)

// cmaes is the covariance matrix adaptation of an evolution strategy (Hansen, The
// CMA Evolution Strategy: A Tutorial, 2016; from memory), with the constants given
// there. Samples are drawn by the Cholesky factor of the covariance in place of its
// root: the two differ by a turn of the samples, which has no preferred direction.
type cmaes struct {
	n, population int
	weights       []float64 // of the samples that are kept, best first; they sum to 1

	effective           float64 // number of samples that the weights stand for
	cumulation, memory  float64 // of the covariance's and the size's path
	rankOne, rankMu     float64 // shares of new information in the covariance
	damping, normLength float64

	rng         *rand.Rand
	mean        []float64
	size        float64   // standard deviation of the samples where the covariance is 1
	covariance  []float64 // n×n, row-major; the lower triangle is kept
	factor      []float64 // its Cholesky factor, likewise
	path, climb []float64 // of the covariance and of the size
	generation  int

	draws [][]float64 // of each sample: independent normal numbers
	moves [][]float64 // of each sample: factor times those
	drift []float64   // scratch: weighted mean of the draws
}

// newCMAES returns a strategy whose samples spread by sd about a mean.
func newCMAES(mean []float64, sd float64, rng *rand.Rand) *cmaes {
	n := len(mean)
	c := &cmaes{
		n: n, population: 4 + int(3*math.Log(float64(n))), rng: rng,
		mean: append([]float64(nil), mean...), size: sd,
		covariance: unitMatrix(n), factor: unitMatrix(n),
		path: make([]float64, n), climb: make([]float64, n), drift: make([]float64, n),
	}
	for range c.population {
		c.draws = append(c.draws, make([]float64, n))
		c.moves = append(c.moves, make([]float64, n))
	}
	c.setWeights()
	c.setRates()
	return c
}

func unitMatrix(n int) []float64 {
	m := make([]float64, n*n)
	for i := range n {
		m[i*n+i] = 1
	}
	return m
}

// setWeights sets the weights of the better half of the samples.
func (c *cmaes) setWeights() {
	kept := c.population / 2
	sum, squares := 0.0, 0.0
	for i := range kept {
		w := math.Log(float64(c.population+1)/2) - math.Log(float64(i+1))
		c.weights = append(c.weights, w)
		sum += w
	}
	for i := range c.weights {
		c.weights[i] /= sum
		squares += c.weights[i] * c.weights[i]
	}
	c.effective = 1 / squares
}

// setRates sets the constants of adaptation.
func (c *cmaes) setRates() {
	n, e := float64(c.n), c.effective
	c.memory = (e + 2) / (n + e + 5)
	c.damping = 1 + 2*math.Max(0, math.Sqrt((e-1)/(n+1))-1) + c.memory
	c.cumulation = (4 + e/n) / (n + 4 + 2*e/n)
	c.rankOne = 2 / ((n+1.3)*(n+1.3) + e)
	c.rankMu = math.Min(1-c.rankOne, 2*(e-2+1/e)/((n+2)*(n+2)+e))
	c.normLength = math.Sqrt(n) * (1 - 1/(4*n) + 1/(21*n*n))
}

// sample draws sample k of a generation into x.
func (c *cmaes) sample(k int, x []float64) {
	z, y := c.draws[k], c.moves[k]
	for i := range z {
		z[i] = c.rng.NormFloat64()
	}
	for i := range y {
		y[i] = dot(c.factor[i*c.n:i*c.n+i+1], z[:i+1])
		x[i] = c.mean[i] + c.size*y[i]
	}
}

// adapt moves on to the next generation. Order holds the samples of this one, best
// first.
func (c *cmaes) adapt(order []int) {
	c.generation++
	kept := order[:len(c.weights)]
	c.adaptSize(kept)
	c.adaptCovariance(kept)
	c.factorise()
}

// adaptSize moves the mean, and makes steps longer where successive moves add up and
// shorter where they undo one another.
func (c *cmaes) adaptSize(kept []int) {
	clear(c.drift)
	for i, k := range kept {
		axpyTo(c.drift, c.weights[i], c.draws[k])
		axpyTo(c.mean, c.size*c.weights[i], c.moves[k])
	}
	scaleBy(c.climb, 1-c.memory)
	axpyTo(c.climb, math.Sqrt(c.memory*(2-c.memory)*c.effective), c.drift)
	c.size *= math.Exp(c.memory / c.damping * (math.Sqrt(dot(c.climb, c.climb))/c.normLength - 1))
}

// adaptCovariance makes directions likelier in which samples did well, and in which
// the mean moves.
func (c *cmaes) adaptCovariance(kept []int) {
	scaleBy(c.path, 1-c.cumulation)
	still := c.stalled()
	if !still {
		gain := math.Sqrt(c.cumulation * (2 - c.cumulation) * c.effective)
		for i, k := range kept {
			axpyTo(c.path, gain*c.weights[i], c.moves[k])
		}
	}
	old := 1 - c.rankOne - c.rankMu
	if still { // the variance that the path then lacks
		old += c.rankOne * c.cumulation * (2 - c.cumulation)
	}
	scaleBy(c.covariance, old)
	c.addSquare(c.rankOne, c.path)
	for i, k := range kept {
		c.addSquare(c.rankMu*c.weights[i], c.moves[k])
	}
}

// stalled reports whether steps have become so much longer at once that the
// covariance is not to grow with them.
func (c *cmaes) stalled() bool {
	seen := 1 - math.Pow(1-c.memory, float64(2*c.generation))
	return math.Sqrt(dot(c.climb, c.climb)/seen) > (1.4+2/float64(c.n+1))*c.normLength
}

// addSquare adds f·v·vᵀ to the covariance.
func (c *cmaes) addSquare(f float64, v []float64) {
	for i := range v {
		axpyTo(c.covariance[i*c.n:i*c.n+i+1], f*v[i], v[:i+1])
	}
}

// factorise sets the factor to that of the covariance. Where rounding has made that
// indefinite the factor stays as it was.
func (c *cmaes) factorise() {
	n := c.n
	next := make([]float64, n*n)
	for i := range n {
		for j := range i + 1 {
			rest := c.covariance[i*n+j] - dot(next[i*n:i*n+j], next[j*n:j*n+j])
			switch {
			case j < i:
				next[i*n+j] = rest / next[j*n+j]
			case !(rest > 0):
				return
			default:
				next[i*n+i] = math.Sqrt(rest)
			}
		}
	}
	c.factor = next
}

// axpyTo adds f·x to out.
func axpyTo(out []float64, f float64, x []float64) {
	for i, v := range x {
		out[i] += f * v
	}
}

// scaleBy multiplies all of x.
func scaleBy(x []float64, f float64) {
	for i := range x {
		x[i] *= f
	}
}

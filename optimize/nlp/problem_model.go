package nlp

import (
	"math"

	"gonum.org/v1/gonum/floats"
	"gonum.org/v1/gonum/mat"
)

// Model is a vector of residuals, and of limits, as a function of variables.
// It may keep scratch memory: it is never called from two goroutines at once.
type Model interface {
	// Size returns the numbers of variables, residuals and limits. They must
	// not change during a run.
	Size() Size
	// Evaluate writes the values at x into v, and the derivatives where v asks
	// for them. It must not change or keep x. It returns false where x cannot
	// be evaluated, for example because a linkage does not reach; v may then
	// hold anything. A NaN or an infinity in v counts as false.
	Evaluate(x []float64, v *Values) bool
}

// Size holds the dimensions of a [Model].
type Size struct {
	Variables int // at least 1
	Residuals int // at least 1
	Limits    int // may be 0
}

// Values receives what a [Model] computes. Slices and matrices have the sizes
// of [Size] and arrive with whatever the last evaluation left in them.
type Values struct {
	R []float64 // residuals
	G []float64 // limits; at most zero where held

	JR *mat.Dense // ∂R/∂x, one row for each residual; nil where not wanted
	JG *mat.Dense // ∂G/∂x, one row for each limit; nil where not wanted or no limits
}

// NewValues returns values of the given size with both Jacobians.
func NewValues(s Size) Values {
	v := Values{
		R:  make([]float64, s.Residuals),
		G:  make([]float64, s.Limits),
		JR: mat.NewDense(s.Residuals, s.Variables, nil),
	}
	if s.Limits > 0 {
		v.JG = mat.NewDense(s.Limits, s.Variables, nil)
	}
	return v
}

// finite reports whether every number in v is finite.
func (v *Values) finite() bool {
	return AllFinite(v.R) && AllFinite(v.G) && denseFinite(v.JR) && denseFinite(v.JG)
}

// violation returns the largest limit, or 0 where all are held.
func (v *Values) violation() float64 {
	if len(v.G) == 0 {
		return 0
	}
	return math.Max(0, floats.Max(v.G))
}

func denseFinite(m *mat.Dense) bool {
	return m == nil || AllFinite(m.RawMatrix().Data)
}

func AllFinite(s []float64) bool {
	for _, v := range s {
		if math.IsNaN(v - v) { // NaN for NaN and for both infinities
			return false
		}
	}
	return true
}

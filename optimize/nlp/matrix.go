package nlp

import (
	"gonum.org/v1/gonum/floats"
	"gonum.org/v1/gonum/mat"
)

// The products of this file are those of package mat for the two kinds of matrix that
// we have. Mat's know all kinds, and take the code for each into the browser.

// Column returns a copy of one column.
func Column(m *mat.Dense, j int) []float64 {
	rows, _ := m.Dims()
	out := make([]float64, rows)
	for i := range out {
		out[i] = m.At(i, j)
	}
	return out
}

// MulVec sets out to m·x, and returns it.
func MulVec(out []float64, m *mat.Dense, x []float64) []float64 {
	for i := range out {
		out[i] = floats.Dot(m.RawRowView(i), x)
	}
	return out
}

// SymMulVec sets out to s·x, and returns it.
func SymMulVec(out []float64, s *mat.SymDense, x []float64) []float64 {
	raw := s.RawSymmetric()
	clear(out)
	for i := range raw.N {
		row := raw.Data[i*raw.Stride+i : i*raw.Stride+raw.N] // from the diagonal on
		out[i] += floats.Dot(row, x[i:])
		floats.AddScaled(out[i+1:], x[i], row[1:])
	}
	return out
}

// AddOuter adds the symmetric half of the outer product of two vectors, factor·(x·yᵀ + y·xᵀ)/2.
func AddOuter(s *mat.SymDense, factor float64, x, y []float64) {
	raw := s.RawSymmetric()
	for i := range raw.N {
		row := raw.Data[i*raw.Stride+i : i*raw.Stride+raw.N] // from the diagonal on
		floats.AddScaled(row, factor/2*x[i], y[i:])
		floats.AddScaled(row, factor/2*y[i], x[i:])
	}
}

// Inner returns xᵀ·s·x.
func Inner(s *mat.SymDense, x []float64) float64 {
	return floats.Dot(x, SymMulVec(make([]float64, len(x)), s, x))
}

// Congruence returns m·s·mᵀ.
func Congruence(m *mat.Dense, s *mat.SymDense) *mat.SymDense {
	rows, n := m.Dims()
	out, half := mat.NewSymDense(rows, nil), make([]float64, n)
	for i := range rows {
		SymMulVec(half, s, m.RawRowView(i))
		for k := i; k < rows; k++ {
			out.SetSym(i, k, floats.Dot(half, m.RawRowView(k)))
		}
	}
	return out
}

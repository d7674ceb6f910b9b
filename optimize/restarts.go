package optimize

import (
	"math/rand/v2"

	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/stat/distmv"
	"gonum.org/v1/gonum/stat/samplemv"
)

// drawsPerRestart is how many points are drawn for each restart, so that points
// where the model cannot be evaluated may be passed over.
const drawsPerRestart = 8

// The streams of random numbers drawn from one seed.
const (
	haltonStream uint64 = iota + 1
	evolutionStream
)

// spread returns count points spread evenly over the unit box: a Halton
// sequence scrambled by the seed, one point in each row.
func spread(count, variables int, seed uint64) *mat.Dense {
	points := mat.NewDense(count, variables, nil)
	samplemv.Halton{
		Kind: samplemv.Owen,
		Q:    distmv.NewUnitUniform(variables, nil), // asked for quantiles only
		Src:  rand.NewPCG(seed, haltonStream),
	}.Sample(points)
	return points
}

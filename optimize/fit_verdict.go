package optimize

import "gonum.org/v1/gonum/stat/distuv"

// Chance returns the probability with which readings of a car that the model and
// the stated standard deviations describe would fit as badly as these, or worse.
func (f *FittedCar) Chance() float64 {
	return chance(f.ChiSquare, f.Freedom)
}

// chance returns the probability of at least a chi-square by chance; 1 without
// degrees of freedom.
func chance(chiSquare float64, freedom int) float64 {
	if freedom <= 0 {
		return 1
	}
	return distuv.ChiSquared{K: float64(freedom)}.Survival(chiSquare)
}

// Verdict says what the chi-square makes of a fit.
type Verdict uint8

// The verdicts. Readings that fit too well have a smaller scatter than their
// repeatability says, which makes every band too wide.
const (
	Explained Verdict = iota
	NotExplained
	TooGood
)

// verdictLevel is the chance of each wrong verdict on a car that the model and
// the standard deviations describe.
const verdictLevel = 0.01

// Verdict says whether the model explains the readings.
func (f *FittedCar) Verdict() Verdict {
	switch p := f.Chance(); {
	case p < verdictLevel:
		return NotExplained
	case f.Freedom > 0 && p > 1-verdictLevel:
		return TooGood
	}
	return Explained
}

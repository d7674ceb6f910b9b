package engine

import (
	"context"

	"toewright/internal/study"
)

// FitOptions say how a fit is made. The zero value is what the study says.
type FitOptions struct {
	// Measure is the number of further measurements listed; nil is [DefaultMeasured].
	Measure *int `json:"measure,omitzero"`

	// Progress, if not nil, is called often and must return soon.
	Progress func(Progress) `json:"-"`
}

// DefaultMeasured is how many further measurements are listed.
const DefaultMeasured = 5

// FitResult is what [Fit] returns: the car that the study's readings most likely
// came from, what it asks for, and how well all that is known. Lengths are in the
// file's units, angles in degrees.
type FitResult struct {
	Units study.Units `json:"units"`
	// Fitted has the change from the file's geometry of each unknown. Keys carry
	// their side where both sides were read.
	Fitted map[string]FittedValue `json:"fitted"`
	// ChiSquare includes the priors; DegreesOfFreedom are readings less zeros, and the
	// measures of a tape.
	ChiSquare        float64 `json:"chiSquare"`
	DegreesOfFreedom int     `json:"degreesOfFreedom"`
	Chance           float64 `json:"chance"`  // of a fit as bad, or worse, were all as stated
	Verdict          string  `json:"verdict"` // "explained", "not explained" or "too good"

	Nothing  []string        `json:"nothing,omitzero"` // readings that settle nothing, and why
	Outliers []OutlierResult `json:"outliers"`         // readings left out
	// TapeOutliers are measures of the tape left out, where the study has such.
	TapeOutliers []TapeOutlierResult     `json:"tapeOutliers,omitzero"`
	Slips        []SlipResult            `json:"slips"`   // likely mistakes in what was written down
	Play         []PlayResult            `json:"play"`    // bump and droop runs that disagree
	Sets         []ReadingSetResult      `json:"sets"`    // as the study lists them, those to verify left out
	Settled      []SettledResult         `json:"settled"` // combinations that the readings settle
	Advice       map[string]AdviceResult `json:"advice,omitzero"`
	Next         []MeasurementResult     `json:"next"` // what to measure next, the most useful first
	Verify       *VerifyResult           `json:"verify,omitzero"`
	Cars         []PredictedCar          `json:"cars"` // the base car and the candidates, as fitted

	Words []string `json:"words"` // what it comes to, in sentences
	// VerdictWords are the verdict's among them. Remarks are the others but for what is
	// advised, which stands in Advice.
	VerdictWords string   `json:"verdictWords"`
	Remarks      []string `json:"remarks"`
}

// FittedValue is an unknown after the readings, and its standard deviations.
type FittedValue struct {
	Value   float64 `json:"value"`
	SD      float64 `json:"sd"`
	PriorSD float64 `json:"priorSd"`
}

// OutlierResult is a reading that disagrees with all others.
type OutlierResult struct {
	Set     int     `json:"set"`     // place in the study's readings, from 0
	Reading int     `json:"reading"` // place in the set, from 0
	Side    string  `json:"side"`
	Travel  float64 `json:"travel"` // of the wheel
	Value   float64 `json:"value"`
	Off     float64 `json:"off"`   // beyond what the others predict
	Score   float64 `json:"score"` // in standard deviations
}

// SlipResult is a likely mistake in words.
type SlipResult struct {
	Set   int    `json:"set"`
	Words string `json:"words"`
}

// PlayResult is a gap between a bump and a droop run.
type PlayResult struct {
	Sets   [2]int  `json:"sets"`
	Travel float64 `json:"travel"`
	Gap    float64 `json:"gap"`
	Score  float64 `json:"score"`
}

// ReadingSetResult is how a set of readings sits on the fitted car.
type ReadingSetResult struct {
	Set       int       `json:"set"`
	Side      string    `json:"side"`
	Zero      float64   `json:"zero"`      // what the gauge reads at no toe
	Travels   []float64 `json:"travels"`   // of the wheel
	Toe       []Number  `json:"toe"`       // as read, degrees; none where a plate that short reads no such toe
	Residuals []float64 `json:"residuals"` // read less predicted
}

// SettledResult is a sum or difference of two unknowns that is known far better
// than either.
type SettledResult struct {
	First    string  `json:"first"`
	Second   string  `json:"second"`
	Sum      bool    `json:"sum"` // else the first less the second
	SD       float64 `json:"sd"`
	BeforeSD float64 `json:"beforeSd"`
}

// AdviceResult is the value of the advised parameter that makes the fitted car
// best.
type AdviceResult struct {
	Best float64 `json:"best"` // change from the base car
	Low  float64 `json:"low"`  // 90 % band
	High float64 `json:"high"`
	Step int     `json:"step"` // best as a whole number of steps
	SD   Number  `json:"sd"`   // none where the readings do not bound the best value

	Value   float64 `json:"value"`  // what the steps come to
	Fitted  float64 `json:"fitted"` // what stood in the last readings
	AtBound bool    `json:"atBound"`
	// Lean is by how much a gauge that leans could move Best, with 90 % probability.
	Lean float64 `json:"lean"`
	// SettlesLean is what to read where that is more than half a step, in words.
	SettlesLean string `json:"settlesLean,omitzero"`
	Final       bool   `json:"final"` // the band is narrow enough to order the part
	// TieRod is by how much the tie rod gets longer to bring static toe back, and
	// Turns that in turns of the adjuster; none without a thread's pitch.
	TieRod float64 `json:"tieRod"`
	Turns  Number  `json:"turns"`
	// Expect is the toe change then to be expected.
	Expect BandFigures `json:"expect"`
}

// BandFigures are figures of toe change with their 90 % bands.
type BandFigures struct {
	RMS  BandResult `json:"rms"`
	Peak BandResult `json:"peak"`
}

// BandResult is a figure and its 90 % band.
type BandResult struct {
	Value Number `json:"value"`
	Low   Number `json:"low"`
	High  Number `json:"high"`
}

// MeasurementResult is something more to measure, in words, and how well the
// advice would be known after it.
type MeasurementResult struct {
	Words string  `json:"words"`
	SD    float64 `json:"sd"`
}

// VerifyResult says whether readings marked to verify lie where the fitted car
// puts them.
type VerifyResult struct {
	Passed bool          `json:"passed"`
	Chance float64       `json:"chance"`
	Sets   []VerifiedSet `json:"sets"`
	Causes []CauseResult `json:"causes"` // the likeliest first; none where all pass
}

// VerifiedSet is one set of readings after fitting.
type VerifiedSet struct {
	Set       int       `json:"set"`
	Side      string    `json:"side"`
	Passed    bool      `json:"passed"`
	Travels   []float64 `json:"travels"`
	Predicted []float64 `json:"predicted"`
	Off       []float64 `json:"off"` // read less predicted
	SD        []float64 `json:"sd"`
	Worst     int       `json:"worst"` // place of the reading furthest off
}

// CauseResult is a single change that would explain what was read.
type CauseResult struct {
	Parameter string  `json:"parameter"`
	Value     float64 `json:"value"`
	Gain      float64 `json:"gain"` // of chi-square
	Left      float64 `json:"left"` // chance of what then remains
}

// PredictedCar is a car of the study as the fit has it, with its band.
type PredictedCar struct {
	Candidate string              `json:"candidate"`
	Positions []PredictedPosition `json:"positions"`
	BandFigures
}

// PredictedPosition is the toe change less target at a travel.
type PredictedPosition struct {
	Side   string  `json:"side"`
	Travel float64 `json:"travel"`
	Change Number  `json:"change"`
	SD     Number  `json:"sd"`
}

// Fit finds the car that the study's readings most likely came from. A call that is
// cancelled is an error.
func Fit(ctx context.Context, d *study.Document, o FitOptions) (*FitResult, error) {
	if err := d.ReadyToFit(); err != nil {
		return nil, explain(err, "")
	}
	if n := given(o.Measure, DefaultMeasured); n < 0 {
		return nil, wrongf("measure", "%d is not a number of measurements, want 0 or more", n)
	}
	f, err := newFitter(ctx, d)
	if err != nil {
		return nil, err
	}
	f.progress = stages(o.Progress)
	if err := f.fit(ctx); err != nil {
		return nil, ofReadings(err)
	}
	out, err := f.result(ctx, o)
	return out, ofReadings(err)
}

// ofReadings returns why readings could not be fitted, by their key where nothing else is
// named.
func ofReadings(err error) error {
	err = explain(err, "")
	if e, ok := err.(*Error); ok && e.Key == "" && e.Car == "" {
		e.Key = "readings"
	}
	return err
}

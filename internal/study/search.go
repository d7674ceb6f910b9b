package study

// Search asks for the values of some parameters that bring the toe curve nearest
// to a target.
type Search struct {
	Variables []Variable `json:"variables" rule:"required"`
	// Target is the wanted toe change in degrees by travel, linear between its
	// points and constant beyond them; none is flat.
	Target [][2]float64 `json:"target,omitzero"`
	// TargetRight is the right wheel's target where it differs.
	TargetRight [][2]float64 `json:"targetRight,omitzero"`
	// TargetOf names a candidate, or the base car, whose toe change is wanted in
	// place of Target, each side's own.
	TargetOf string `json:"targetOf,omitzero"`
	// TargetSlope is the wanted toe change in degrees by unit of travel, in place
	// of Target.
	TargetSlope float64 `json:"targetSlope,omitzero"`
	// Band is how far, in degrees either way, a toe change may be off the target and still
	// be good enough. It is shown; no search asks for it.
	Band float64 `json:"band,omitzero" rule:"positive"`
	// Weights say by travel how much an error counts, as Target; none is 1 throughout.
	Weights   [][2]float64 `json:"weights,omitzero"`
	Minimise  string       `json:"minimise,omitzero" rule:"oneof=rms|peak"` // Minimise is "rms" where absent.
	Window    *Travel      `json:"window,omitzero"`                         // Window is nil for the study's travel.
	Scenarios []Scenario   `json:"scenarios,omitzero"`
	// Combine says how scenarios count together: by the weighted mean, the
	// default, or by the worst of them.
	Combine string  `json:"combine,omitzero" rule:"oneof=weighted|worst"`
	Limits  []Limit `json:"limits,omitzero"`
	// Percentile, where given, is minimised over the study's tolerances in place
	// of the nominal figure.
	Percentile float64 `json:"percentile,omitzero" rule:"positive"`
	Seed       int     `json:"seed,omitzero"`
}

// Variable is a parameter that a search may change within bounds.
type Variable struct {
	Parameter string  `json:"parameter" rule:"required"`
	Min       float64 `json:"min" rule:"required"`
	Max       float64 `json:"max" rule:"required"`
	Grid      float64 `json:"grid,omitzero" rule:"positive"` // Grid is the step that the shop can hold; 0 is none.
	// Sizes are the only values that the shop has, such as drills or spacers, in
	// place of a grid.
	Sizes []float64 `json:"sizes,omitzero"`
}

// Scenario is a set-up that the answer of a search must serve.
type Scenario struct {
	Name     string    `json:"name,omitzero"`
	Changes  Changes   `json:"changes,omitzero"`
	Hold     []string  `json:"hold,omitzero"`
	Weight   *float64  `json:"weight,omitzero" rule:"notnegative"` // Weight is 1 where absent.
	Attitude *Attitude `json:"attitude,omitzero"`
}

// Counts returns the scenario's weight: 1 where it states none.
func (s *Scenario) Counts() float64 {
	if s.Weight == nil {
		return 1
	}
	return *s.Weight
}

// Attitude is the position of the car about which a curve is taken.
type Attitude struct {
	Heave float64 `json:"heave,omitzero"` // Heave is the travel of both wheels, bump positive.
	Roll  float64 `json:"roll,omitzero"`  // Roll is that of the body in degrees, ISO 8855: positive lowers the right side.
	Steer float64 `json:"steer,omitzero"` // Steer is the steering input: a length for a rack, degrees of the pitman arm else.
}

package study

// Tolerance is how far a parameter of a car that is made may differ from the
// drawing. Just one of PlusMinus and SD is given.
type Tolerance struct {
	Parameter string  `json:"parameter" rule:"required"`
	PlusMinus float64 `json:"plusMinus,omitzero" rule:"positive"`
	SD        float64 `json:"sd,omitzero" rule:"positive"`
	// Distribution is, where absent, "uniform" for a PlusMinus and "normal" for
	// an SD. A normal or triangular PlusMinus is 3 standard deviations or the
	// ends of the triangle.
	Distribution string `json:"distribution,omitzero" rule:"oneof=normal|uniform|triangular"`
	// Varies is "side" (the default) where left and right differ within a car,
	// "car" where both sides of a car are off alike.
	Varies string `json:"varies,omitzero" rule:"oneof=side|car"`
}

// Yield is the limit against which cars with tolerances are counted.
type Yield struct {
	Figure    string  `json:"figure,omitzero" rule:"oneof=peak|rms"` // Figure is "peak" where absent.
	Limit     float64 `json:"limit" rule:"required,notnegative"`     // Limit is the largest toe change, in degrees, that passes.
	Candidate string  `json:"candidate,omitzero"`                    // Candidate names the car; absent is the base car.
	Cars      int     `json:"cars,omitzero" rule:"positive"`
	Seed      int     `json:"seed,omitzero"`
	// KeepToe is true where static toe is not re-set on each car: its rods are as
	// drawn, and toe counts from that of the drawing.
	KeepToe bool `json:"keepToe,omitzero"`
}

package study

// Changes are parameter values by key: changes from the base car, but for toe,
// camber and caster, which are the settings themselves. Lengths are in the file's
// units, angles in degrees. A key may end in @left or @right.
type Changes map[string]float64

// Candidate is a car that differs from the base car.
type Candidate struct {
	Name    string  `json:"name" rule:"required"`
	Changes Changes `json:"changes,omitzero"`
	// Hold lists the setpoints that are re-solved: "toe", "camber", "caster".
	// Nil is all three, an empty list none.
	Hold   []string `json:"hold,omitzero"`
	Note   string   `json:"note,omitzero"`
	Price  float64  `json:"price,omitzero" rule:"notnegative"` // Price of its parts, in the user's currency.
	Hidden bool     `json:"hidden,omitzero"`                   // Hidden candidates are kept but not drawn.
}

// setpoints are what a candidate may hold.
var setpoints = []string{"toe", "camber", "caster"}

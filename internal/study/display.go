package study

// Display is how numbers are shown. It changes no number of the file.
type Display struct {
	Units     Units   `json:"units,omitzero" rule:"oneof=mm|in"`                  // Units of lengths; absent is the file's.
	Fraction  bool    `json:"fraction,omitzero"`                                  // Fraction shows inches to the nearest 1/32.
	Toe       string  `json:"toe,omitzero" rule:"oneof=degrees|indicators|plate"` // Toe in degrees (absent), or as a gauge of the base reads it.
	Base      float64 `json:"base,omitzero" rule:"positive"`                      // Base of the gauge, in the file's units.
	Yardstick string  `json:"yardstick,omitzero"`                                 // Yardstick names the candidate that differences are taken from; absent is the base car.
}

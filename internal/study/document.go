package study

// Format is the version of the study file that this package reads and writes.
const Format = "toewright/1"

// Document is one study: an axle as it was measured, what may be changed about
// it, and what was read from a gauge. Lengths are in Units, angles in degrees,
// unless a field says otherwise.
type Document struct {
	Format   string `json:"format" rule:"required"`
	Name     string `json:"name,omitzero"`
	Notes    string `json:"notes,omitzero"`
	Revision string `json:"revision,omitzero"` // Revision is that of the bench sheet, free text.
	Date     string `json:"date,omitzero"`     // Date is that of the bench sheet, free text.

	Units   Units    `json:"units" rule:"required,oneof=mm|in"`
	Display *Display `json:"display,omitzero"` // Display is how numbers are shown; nil shows what the file says.

	Vehicle    Vehicle    `json:"vehicle,omitzero"`
	Suspension Suspension `json:"suspension" rule:"required"`
	Steering   *Steering  `json:"steering,omitzero"` // Steering is nil where the inner balls are fixed to the body.
	TieRod     *TieRod    `json:"tieRod,omitzero"`
	DragLink   *TieRod    `json:"dragLink,omitzero"` // DragLink is that of a solid axle.
	Travel     *Travel    `json:"travel,omitzero"`   // Travel is nil for [DefaultTravel].

	Candidates []Candidate `json:"candidates,omitzero"`
	Search     *Search     `json:"search,omitzero"`
	Tolerances []Tolerance `json:"tolerances,omitzero"`
	Yield      *Yield      `json:"yield,omitzero"`
	Readings   []Reading   `json:"readings,omitzero"`
	// Series are cars of a series that were measured, each by itself.
	Series    []MeasuredCar `json:"series,omitzero"`
	Priors    []Prior       `json:"priors,omitzero"` // Priors are nil for those of the registry; where given, only these are free.
	Advise    *Advise       `json:"advise,omitzero"`
	Catalogue []Part        `json:"catalogue,omitzero"`
	Loads     []LoadCase    `json:"loads,omitzero"`
	Stiffness Stiffness     `json:"stiffness,omitzero"` // Stiffness is nil where toe under load is not estimated.
	Measured  *Measured     `json:"measured,omitzero"`  // Measured is nil where no tape was used.
	Arm       *Arm          `json:"arm,omitzero"`       // Arm is the steering arm as a part to be made.

	Sources Sources `json:"sources,omitzero"` // Sources say where numbers come from; nil says that all stood in the file.
}

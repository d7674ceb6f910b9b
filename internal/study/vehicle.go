package study

// Vehicle is what a study needs to know of the rest of the car.
type Vehicle struct {
	Wheelbase  float64 `json:"wheelbase,omitzero" rule:"positive"`  // Wheelbase is 0 where not stated: then there are no Ackermann figures.
	TyreRadius float64 `json:"tyreRadius,omitzero" rule:"positive"` // TyreRadius is 0 where not stated: then the wheel centre's height stands for it.
	Axle       string  `json:"axle,omitzero" rule:"oneof=front|rear"`
	// CorneringStiffness is that of one tyre in N per degree, for the estimates
	// of drag and drift; 0 where not stated.
	CorneringStiffness float64 `json:"corneringStiffness,omitzero" rule:"positive"`
	// WheelLoad is the static load of one wheel in N, by which usual load cases are
	// scaled; it is added to none. 0 where not stated.
	WheelLoad float64 `json:"wheelLoad,omitzero" rule:"positive"`
}

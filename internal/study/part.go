package study

// Part is something that can be bought and fitted. Parts of one slot exclude each
// other; a slot may also stay as it is.
type Part struct {
	Slot     string   `json:"slot" rule:"required"`
	Name     string   `json:"name" rule:"required"`
	Price    float64  `json:"price,omitzero" rule:"notnegative"` // Price is in the user's currency.
	Changes  Changes  `json:"changes,omitzero"`
	Excludes []string `json:"excludes,omitzero"` // Excludes names parts of other slots that do not go with this one.
	Note     string   `json:"note,omitzero"`
}

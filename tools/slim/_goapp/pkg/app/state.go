package app

// The types of states, of which the page has none.
type (
	State        struct{}
	Observer     struct{}
	stateManager struct{}
)

package ui

import "toewright/app/store"

// browserStorage returns what the browser keeps for the page.
func browserStorage() store.Storage { return store.Local{} }

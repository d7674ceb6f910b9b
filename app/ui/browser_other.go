//go:build !js

package ui

import "toewright/app/store"

// browserStorage returns a storage that forgets with the program.
func browserStorage() store.Storage { return store.Memory{} }

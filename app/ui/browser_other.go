//go:build !js

package ui

import (
	"crypto/rand"
	"io"

	"toewright/app/store"
)

// browserStorage returns a storage that forgets with the program.
func browserStorage() store.Storage { return store.Memory{} }

// browserTab returns a storage that forgets with the program.
func browserTab() store.Storage { return store.Memory{} }

// browserCopy returns nil: there is no copy of what is forgotten anyway.
func browserCopy() store.Copy { return nil }

// sayStanding tells nobody.
func sayStanding() {}

// afterFrame does something at once: there is no screen.
func afterFrame(do func()) { do() }

// browserRandom returns a source of random bytes.
func browserRandom() io.Reader { return rand.Reader }

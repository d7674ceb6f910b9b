// Package step writes named points, lines and circles as an exchange file of ISO 10303-21
// by the schema of AP214 (automotive design), in mm: a wire frame of which any program for
// solid parts takes over places and axes. It knows nothing of what they belong to.
package step

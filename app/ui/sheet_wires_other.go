//go:build !js

package ui

// wires join the drawing to the page; without a browser there is nothing to join.
type wires struct{}

func (w *wires) join(*drawing) {}

func (w *wires) part(*drawing) {}

// wantsNoMotion reports whether the reader asked the system for less motion.
func wantsNoMotion() bool { return false }

//go:build !js

package ui

// wires join the drawing to the page; without a browser there is nothing to join.
type wires struct{}

func (w *wires) join(*drawing) {}

func (w *wires) part(*drawing) {}

// elements are those of the page that are painted; without a browser there are none.
type elements struct{ changes batch }

func findElements(string) elements { return elements{} }

func (e *elements) done() { e.changes = e.changes[:0] }

// wantsNoMotion reports whether the reader asked the system for less motion.
func wantsNoMotion() bool { return false }

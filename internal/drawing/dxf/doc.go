// Package dxf writes drawings as ASCII files of the drawing exchange format, release 12,
// which every drawing program reads: lines, circles, points, texts and polylines on named
// layers, in mm at 1:1. It knows nothing of what is drawn.
package dxf

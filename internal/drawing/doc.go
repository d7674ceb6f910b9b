// Package drawing makes files of a candidate's steering arm for the shop that makes it: a
// drawing in three views (DXF, SVG) and named places and axes in the car (STEP). Every
// number is of package engine, in mm here; the arm stands in the study's vehicle axes with
// the part on and the setpoints not turned in, so that its face and bolts stand where the
// file states them.
package drawing

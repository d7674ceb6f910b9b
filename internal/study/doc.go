// Package study reads, checks and writes the study file: the JSON document
// "toewright/1" that the commands, the HTTP calls and the browser share.
//
// A [Document] is in the file's own units and in degrees, axes and signs as ISO
// 8855: x forward, y left, z up, origin on the ground at the axle's centreline.
// [Decode] refuses what it does not understand, by name and place; what it takes
// in is kept whole, so that decoding what [Encode] wrote gives the same document.
// [Check] looks for slips of the tape and the keyboard that are no errors: its
// findings stand beside the field and never block. [Document.Design] and
// [Document.Changes] turn a document into what the solver takes, in millimetres
// and radians.
//
// Points and readings also come and go as CSV, see [ParsePoints],
// [ParseReadings] and [ParseCatalogue].
package study

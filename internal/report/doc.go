// Package report makes the bench sheet of a candidate: one self-contained HTML page
// for the shop that makes the part, to be read on a screen and printed on one or two
// pages of A4 or Letter in black and white.
//
// [Gather] asks the engine for all that stands on the sheet, [Write] writes it and
// asks nothing; [HTML] does both. Neither reads a clock: the date is the study's, or
// given. The page holds no script and asks for nothing from elsewhere; [Policy] is the
// content policy under which it still looks as it should.
//
// The page is written by a small escaping writer of our own rather than by
// html/template: this package is meant for the browser's program as well, where that
// costs half a megabyte of Brotli out of a budget of two. Its calls of methods by name
// keep the linker from dropping any.
package report

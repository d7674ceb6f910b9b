// Package engine makes the calls that every door makes: a study and options in, a
// result out that is written as JSON just as it is. The commands, the HTTP calls
// and the browser's worker all go through here, so that one file gives one answer
// whichever way it is asked.
//
// Options and results are in the file's units and in degrees, axes and signs as in
// package study. A call that is cancelled stops soon. Errors other than those of a
// context are of type [*Error].
package engine

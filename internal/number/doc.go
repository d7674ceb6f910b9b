// Package number is the one way in which a length, an angle and a toe are written for
// people and read from them, whichever door they come by: the page, the command, the
// printed sheet and the sentences of the calls.
//
// Within, lengths are millimetres and angles degrees, as files and results have them.
// What is written is exact or says how far it is from what it stands for: inches are
// decimals with the fraction of a workshop rule beside them.
package number

// Package demo holds the study that the page shows at its first start, as Go rather than
// as the text of its template: reading that takes a browser a fifth of the time from the
// program's start to its first picture, as it compiles each function that it meets.
package demo

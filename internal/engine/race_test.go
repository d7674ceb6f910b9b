//go:build race

package engine

// raced says that the tests run under the race detector, where a [sync.Pool] loses some of
// what it is given, so that what is borrowed from one is allocated now and then.
const raced = true

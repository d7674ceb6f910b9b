//go:build !race

package engine

// raced says that the tests run under the race detector.
const raced = false

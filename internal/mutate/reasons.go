//go:build unix

package main

// reasons say of mutants that live why no test can kill them, by their id.
var reasons = map[string]string{}

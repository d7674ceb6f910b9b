// Package version says which version of Toewright a program is.
package version

// name is set by the linker; see the Makefile.
var name = "unversioned"

// Name returns the version as git describes it, such as "v1.2.0" or
// "v1.2.0-3-g0a1b2c3", or "unversioned" where the Makefile did not build the program.
func Name() string { return name }

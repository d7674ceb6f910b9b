// Package archtest holds the rules of which package may import which, as tests: the
// solver knows nothing of files, servers and browsers, and every door goes through
// the same calls.
package archtest

// Package calls is the one table of what can be asked about a study. The command makes
// its subcommands and flags of it, the HTTP service its paths and query parameters, and
// the page's worker its methods, so that a call is one entry here.
package calls

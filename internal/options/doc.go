// Package options names the options of the engine's calls, once for the flags of
// the commands and the query parameters of the HTTP calls.
package options

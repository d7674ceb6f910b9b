// Package worker is what a worker of the page can do: each call of package engine, as
// a method of the bridge. Params are {"study": .., "options": ..}, with the study file
// and the options of the call; the result is that of the call.
package worker

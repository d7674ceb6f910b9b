// Package model is what the page shows, as plain Go: a study with its past and
// future, the cars solved from it, and what the reader looks at. It knows no
// browser; components of package ui render it and call its methods.
package model

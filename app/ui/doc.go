// Package ui is the page: go-app components and the routes they stand at. The
// server imports it too, to render the first view.
package ui

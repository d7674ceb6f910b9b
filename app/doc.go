// Command app is the program of the browser. The same binary runs as the page,
// where there is a document, and as each worker, where there is none. It is built
// with GOOS=js GOARCH=wasm; built for anything else it only says so.
//
//go:generate go run ../tools/icons web
package main

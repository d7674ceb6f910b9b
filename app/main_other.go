//go:build !js

package main

import (
	"fmt"
	"os"
)

func main() {
	fmt.Fprintln(os.Stderr, "app: runs in a browser only, built by make build; see cmd/toewright for the command")
	os.Exit(1)
}

// Command toewright finds the steering arm that keeps a wheel's toe through its
// travel. It works on study files, and serves the page that does the same.
package main

import "os"

func main() {
	os.Exit(run(os.Args[1:], os.Stdin, os.Stdout, os.Stderr))
}

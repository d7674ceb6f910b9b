// Command slim writes the modules that the page does not get whole, and the go.mod and go.sum
// that build the page with them. It is run from the root of the repository:
//
//	go run ./tools/slim -out bin/slim
//	GOOS=js GOARCH=wasm go build -modfile=bin/slim/go.mod ./app
//
// A third of the program would otherwise be code for servers, which go-app links even
// into a browser. Nothing of it can run there, so the page loses nothing.
package main

import (
	"embed"
	"errors"
	"flag"
	"fmt"
	"log"
	"os"
	"path/filepath"
)

//go:embed _goapp
var files embed.FS

func main() {
	log.SetFlags(0)
	log.SetPrefix("slim: ")
	out := flag.String("out", "bin/slim", "folder to write; what is in it goes")
	flag.Parse()
	if err := write(*out); err != nil {
		log.Fatal(err)
	}
}

// write puts all editions into a folder made anew, and beside them the module files.
func write(out string) error {
	if err := clear(out); err != nil {
		return err
	}
	mod, err := os.ReadFile("go.mod")
	if err != nil {
		return err
	}
	for _, e := range editions {
		dir := filepath.Join(out, e.ours[1:])
		if err := e.write(dir); err != nil {
			return err
		}
		mod = fmt.Appendf(mod, "\nreplace %s => %s\n", e.module, local(dir))
	}
	if err := os.WriteFile(filepath.Join(out, "go.mod"), mod, 0o666); err != nil {
		return err
	}
	return copyFile(filepath.Join(out, "go.sum"), os.DirFS("."), "go.sum")
}

// clear removes what an earlier run has written. A folder that holds anything else is
// an error.
func clear(out string) error {
	_, err := os.Stat(filepath.Join(out, "go.sum"))
	if err == nil {
		return os.RemoveAll(out)
	}
	if entries, err := os.ReadDir(out); err == nil && len(entries) > 0 {
		return fmt.Errorf("%s holds something else", out)
	}
	if errors.Is(err, os.ErrNotExist) {
		return nil
	}
	return err
}

// local returns a folder as a go.mod names it, which tells folders from modules by
// their first character.
func local(dir string) string {
	if filepath.IsAbs(dir) {
		return filepath.ToSlash(dir)
	}
	return "./" + filepath.ToSlash(dir)
}

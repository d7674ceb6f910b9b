// Command assets fills the folder that the server embeds: it copies the files of
// the front end there and lays a Brotli and a gzip form beside each that gains by
// it. What has not changed since the last time is left alone, as the strongest
// Brotli takes its time over the program.
//
//	go run ./tools/assets [-quick] -out internal/web/dist bin/app.wasm app/web/*
package main

import (
	"flag"
	"fmt"
	"os"
	"path/filepath"
)

func main() {
	out := flag.String("out", "", "folder to fill; other files in it are removed, but for those with a leading dot")
	quick := flag.Bool("quick", false, "leave Brotli out, which takes most of the time, for files that have changed")
	flag.Parse()
	if *out == "" || flag.NArg() == 0 {
		flag.Usage()
		os.Exit(2)
	}
	if err := fill(*out, flag.Args(), *quick); err != nil {
		fmt.Fprintln(os.Stderr, "assets:", err)
		os.Exit(1)
	}
}

// fill makes the folder hold the files and their compressed forms, and no others.
func fill(out string, files []string, quick bool) error {
	keep := map[string]bool{}
	for _, file := range files {
		if err := place(out, file, quick); err != nil {
			return fmt.Errorf("%s: %w", file, err)
		}
		for _, suffix := range []string{"", brotliForm.suffix, gzipForm.suffix} {
			keep[filepath.Base(file)+suffix] = true
		}
	}
	return removeOthers(out, keep)
}

// removeOthers removes the files of a folder that are not to be kept, save those
// with a leading dot.
func removeOthers(folder string, keep map[string]bool) error {
	entries, err := os.ReadDir(folder)
	if err != nil {
		return err
	}
	for _, e := range entries {
		if keep[e.Name()] || e.Name()[0] == '.' {
			continue
		}
		if err := os.Remove(filepath.Join(folder, e.Name())); err != nil {
			return err
		}
	}
	return nil
}

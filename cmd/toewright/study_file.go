package main

import (
	"fmt"
	"io"
	"os"

	"toewright/internal/study"
)

// standardInput is the FILE that stands for it.
const standardInput = "-"

// maxFile is more than the largest study that can be read, so that what is larger
// is refused by its reader and not for having been cut short.
const maxFile = 5 << 20

// readStudy reads the study in a file. The error names the file.
func readStudy(path string, stdin io.Reader) (*study.Document, error) {
	name := path
	if path == standardInput {
		name = "standard input"
	}
	data, err := readInput(path, stdin, maxFile)
	if err != nil {
		return nil, err
	}
	d, err := study.Decode(data)
	if err != nil {
		return nil, fmt.Errorf("%s: %w", name, err)
	}
	return d, nil
}

// readInput reads a file, or standard input, up to so many bytes.
func readInput(path string, stdin io.Reader, most int64) ([]byte, error) {
	if path == standardInput {
		return io.ReadAll(io.LimitReader(stdin, most))
	}
	f, err := os.Open(path)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	return io.ReadAll(io.LimitReader(f, most))
}

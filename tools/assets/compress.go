package main

import (
	"bytes"
	"compress/gzip"
	"io"

	"github.com/andybalholm/brotli"
)

// form is a compressed form of a file, named by what is added to the file's name.
type form struct {
	suffix string
	writer func(io.Writer) io.WriteCloser
}

// largestWindow is the base-2 logarithm of the largest window that every browser
// takes, in bytes: the whole program lies in it.
const largestWindow = 24

var (
	brotliForm = form{".br", func(w io.Writer) io.WriteCloser {
		return brotli.NewWriterOptions(w, brotli.WriterOptions{Quality: brotli.BestCompression, LGWin: largestWindow})
	}}
	gzipForm = form{".gz", func(w io.Writer) io.WriteCloser {
		z, _ := gzip.NewWriterLevel(w, gzip.BestCompression) // The level is valid.
		return z
	}}
)

// compress returns the data in this form.
func (f form) compress(data []byte) ([]byte, error) {
	var b bytes.Buffer
	w := f.writer(&b)
	if _, err := w.Write(data); err != nil {
		return nil, err
	}
	if err := w.Close(); err != nil {
		return nil, err
	}
	return b.Bytes(), nil
}

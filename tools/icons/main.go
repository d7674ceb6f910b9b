// Command icons draws the icons of the page into a folder: icon.svg, icon-192.png
// and icon-512.png.
//
//	go run ./tools/icons app/web
package main

import (
	"bytes"
	"fmt"
	"image/png"
	"os"
	"path/filepath"
)

func main() {
	if len(os.Args) != 2 {
		fmt.Fprintln(os.Stderr, "usage: icons FOLDER")
		os.Exit(2)
	}
	if err := writeAll(os.Args[1]); err != nil {
		fmt.Fprintln(os.Stderr, "icons:", err)
		os.Exit(1)
	}
}

func writeAll(folder string) error {
	strokes := drawing()
	if err := os.WriteFile(filepath.Join(folder, "icon.svg"), vector(strokes), 0o644); err != nil {
		return err
	}
	for _, size := range []int{192, 512} {
		if err := writePNG(filepath.Join(folder, fmt.Sprintf("icon-%d.png", size)), strokes, size); err != nil {
			return err
		}
	}
	return nil
}

func writePNG(name string, strokes []stroke, size int) error {
	var b bytes.Buffer
	if err := png.Encode(&b, picture(strokes, size)); err != nil {
		return err
	}
	return os.WriteFile(name, b.Bytes(), 0o644)
}

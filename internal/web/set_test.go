package web

import (
	"bytes"
	"crypto/sha256"
	"fmt"
	"regexp"
	"strings"
	"testing"
	"testing/fstest"
)

// TestPiecesAreTheProgram holds the digests that the document states of the program's pieces to the
// program that is served, for lengths about those of whole pieces.
func TestPiecesAreTheProgram(t *testing.T) {
	stated := regexp.MustCompile(`data-piece-size="(\d+)" data-pieces="([0-9a-f ]+)"`)
	for _, n := range []int{1, pieceSize - 1, pieceSize, pieceSize + 1, 2*pieceSize + 5} {
		files := front()
		files["app.wasm"] = &fstest.MapFile{Data: bytes.Repeat([]byte("ab"), n)[:n]}
		h := newTestHandler(t, Config{Assets: files})
		m := stated.FindStringSubmatch(bodyOf(t, get(h, "/")))
		if m == nil || m[1] != fmt.Sprint(pieceSize) {
			t.Fatalf("the document states %q of the program's pieces", m)
		}
		rest := bodyOf(t, get(h, "/web/app.wasm"))
		digests := strings.Fields(m[2])
		for i, d := range digests {
			piece := rest[:min(len(rest), pieceSize)]
			rest = rest[len(piece):]
			if want := fmt.Sprintf("%x", sha256.Sum256([]byte(piece)))[:16]; d != want {
				t.Errorf("piece %d of %d bytes has the digest %s in the document, want %s", i, n, d, want)
			}
		}
		if len(rest) > 0 || len(digests) != n/pieceSize+1 {
			t.Errorf("%d digests for %d bytes, of which %d are in no piece", len(digests), n, len(rest))
		}
	}
}

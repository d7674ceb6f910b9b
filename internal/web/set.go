package web

import (
	"crypto/sha256"
	_ "embed"
	"encoding/base64"
	"encoding/hex"
	"encoding/json"
	"fmt"
	"maps"
	"path"
	"slices"
	"strings"

	"toewright/internal/web/coding"
)

// A set is the files of one version of the page, by their paths from its document: what it
// runs, itself as "./". They are run together or not at all.
type set map[string]*asset

// serviceWorker is the template of the script that keeps a set for when there is no network.
// go-app has one too, which keeps an empty cache after a failed install and loses the page
// offline.
//
//go:embed shell/service-worker.js
var serviceWorker string

// File returns what the document calls a file: what it runs is named by its content, so that
// no address ever means the file of another version.
func (s set) File(file string) string {
	switch path.Ext(file) {
	case ".js", ".css", ".wasm":
		return file + "?" + s[file].digest()
	}
	return file
}

// digest returns the beginning of a file's SHA-256 in hex. It finds damage and other
// versions, not forgers: they would have to serve the document too.
func (a *asset) digest() string {
	return shortened(a.forms[coding.Identity].sum)
}

// shortened returns the beginning of a digest in hex.
func shortened(sum [sha256.Size]byte) string { return hex.EncodeToString(sum[:8]) }

// pieceSize is of how many bytes the pieces are by which the page checks the program while it
// arrives.
const pieceSize = 1 << 20

// pieces returns the digests of a file's pieces. The last is of what is left behind the whole ones,
// if only nothing.
func (a *asset) pieces() string {
	var digests []string
	for rest := a.forms[coding.Identity].data; ; rest = rest[pieceSize:] {
		n := min(pieceSize, len(rest))
		digests = append(digests, shortened(sha256.Sum256(rest[:n])))
		if n < pieceSize {
			return strings.Join(digests, " ")
		}
	}
}

// Integrity returns the whole of it, as a document states it of a script or a style.
func (s set) Integrity(file string) string {
	sum := s[file].forms[coding.Identity].sum
	return "sha256-" + base64.StdEncoding.EncodeToString(sum[:])
}

// list returns the digests of all files by their names, in JSON.
func (s set) list() []byte {
	digests := map[string]string{}
	for file, a := range s {
		digests[s.File(file)] = a.digest()
	}
	text, err := json.MarshalIndent(digests, "", "  ")
	if err != nil {
		panic(err) // It is a list of texts.
	}
	return text
}

// complete adds the document, which states a policy if that is not empty, and returns the
// script that keeps the set. The set's name, which the document holds, stands for the
// content of all files, the document without that name, and the script.
func (s set) complete(policy string) (worker *asset) {
	d := document{set: s, Policy: policy, Page: firstPage(), PieceSize: pieceSize, Pieces: s["web/"+programName].pieces()}
	s["./"] = renderedAsset("/", d.text())
	name := shortened(sha256.Sum256(append(s.list(), serviceWorker...)))
	d.Set = name
	s["./"] = renderedAsset("/", d.text())
	script := strings.NewReplacer(`"{{.Set}}"`, fmt.Sprintf("%q", name), "{{.Files}}", string(s.list())).Replace(serviceWorker)
	return renderedAsset(workerScript, []byte(script))
}

// newSet returns the files under /web/ and those of go-app, without the document.
func newSet(files assets) (set, error) {
	s := set{}
	for _, name := range slices.Sorted(maps.Keys(files)) {
		s["web/"+name] = files[name]
	}
	delete(s, "web/"+manifestName)
	s[manifestName] = files[manifestName]
	return s, s.addScripts(newShell(files))
}

package archtest

import (
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
)

// link is a link of Markdown or the source of an image.
var link = regexp.MustCompile(`\]\(([^)\s]+)\)|<img src="([^"]+)"`)

// TestDocumentLinks holds every relative link of the documents to a file that is there.
func TestDocumentLinks(t *testing.T) {
	for _, doc := range documents(t) {
		for _, m := range link.FindAllStringSubmatch(read(t, doc), -1) {
			to, _, _ := strings.Cut(m[1]+m[2], "#")
			if to == "" || strings.Contains(to, "://") {
				continue
			}
			if _, err := os.Stat(filepath.Join(filepath.Dir(doc), to)); err != nil {
				t.Errorf("%s: there is no %s", doc, to)
			}
		}
	}
}

// place is a file or a folder of the repository between backquotes.
var place = regexp.MustCompile("`((?:app|cmd|docs|internal|optimize|solver|testdata|tools|wasm)/[a-zA-Z0-9_/.-]*)`")

// TestDocumentsNamePlacesThatAre holds what the documents say of where things are. What
// the changes tell of may be gone.
func TestDocumentsNamePlacesThatAre(t *testing.T) {
	for _, doc := range documents(t) {
		if filepath.Base(doc) == "CHANGELOG.md" {
			continue
		}
		for _, m := range place.FindAllStringSubmatch(read(t, doc), -1) {
			if _, err := os.Stat(filepath.Join("../..", m[1])); err != nil {
				t.Errorf("%s: there is no %s", doc, m[1])
			}
		}
	}
}

// theoryFile is a line of the theory that names a file and what of it computes.
var theoryFile = regexp.MustCompile("(?m)^- \\[`([^`]+)`\\]\\(([^)]+)\\)(.*)$")

// name is something in code between backquotes.
var name = regexp.MustCompile("`([A-Za-z]+)`")

// TestTheoryNamesWhatComputes holds each section of the theory to files, and to what
// is declared in them.
func TestTheoryNamesWhatComputes(t *testing.T) {
	const doc = "../../docs/theory.md"
	sections := strings.Split(read(t, doc), "\n## ")[1:]
	if len(sections) == 0 {
		t.Fatalf("%s has no sections", doc)
	}
	for _, s := range sections {
		title, _, _ := strings.Cut(s, "\n")
		files := theoryFile.FindAllStringSubmatch(s, -1)
		if len(files) == 0 {
			t.Errorf("%q names no file that computes it", title)
		}
		for _, f := range files {
			if f[2] != "../"+f[1] {
				t.Errorf("%q: %s leads to %s", title, f[1], f[2])
			}
			source := read(t, filepath.Join(filepath.Dir(doc), f[2]))
			for _, n := range name.FindAllStringSubmatch(f[3], -1) {
				if !declares(source, n[1]) {
					t.Errorf("%q: %s declares no %s", title, f[1], n[1])
				}
			}
		}
	}
}

// declares reports whether a source file declares a function, method, type, constant or
// variable of a name.
func declares(source, name string) bool {
	return regexp.MustCompile(`(?m)^(func (\([^)]*\) )?|type |const |var )` + name + `\b`).MatchString(source)
}

// documents lists the documents of the repository.
func documents(t *testing.T) []string {
	t.Helper()
	list, err := filepath.Glob("../../docs/*.md")
	if err != nil || len(list) == 0 {
		t.Fatalf("no documents in docs: %v", err)
	}
	return append(list, "../../README.md", "../../DEVELOPERS.md", "../../CHANGELOG.md")
}

func read(t *testing.T, file string) string {
	t.Helper()
	data, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	return string(data)
}

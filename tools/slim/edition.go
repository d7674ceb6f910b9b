package main

import (
	"encoding/json"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
)

// edition says what the page gets of a module.
type edition struct {
	module  string
	version string   // the one that ours were written for
	folders []string // taken over, tests apart
	without []string // files left out of them
	ours    string   // folder in files that is laid over the rest
	edits   []edit
}

// editions lists the modules that the page does not get whole. What goes of go-app is
//
//   - its server with net/http and crypto/tls, and routes by regular expression;
//   - states, actions, notifications, and encryption of what it stores, none of which
//     the page uses;
//   - the table of all named characters, which package html has for reading;
//   - net/url, whose addresses of every kind bring tables of their own;
//   - the types of its elements but one;
//   - a slip by which a field that is emptied goes on showing what stood in it, and an
//     empty choice counts as its words.
var editions = []edition{{
	module:  "github.com/maxence-charriere/go-app/v10",
	version: "v10.1.11",
	folders: []string{"pkg/app", "pkg/errors"},
	without: []string{"pkg/app/http.go", "pkg/app/static.go", "pkg/app/crypto.go"},
	ours:    "_goapp",
	edits: []edit{
		{"pkg/app/context.go", leaveOut("Context", "Encrypt", "Decrypt", "cryptoKey", "DeviceID", "LocalStorage", "SessionStorage",
			"Notifications", "Handle", "NewAction", "NewActionWithValue", "ObserveState", "GetState", "SetState", "DelState")},
		{"pkg/app/engine.go", dropLines(" e.localStorage,", " e.sessionStorage,", "e.actions.Handle,", "e.actions.Post,",
			"e.states.Observe,", "e.states.Get,", "e.states.Set,", "e.states.Delete,",
			"e.states.CleanupExpiredPersistedStates(", "e.actions.Cleanup()", "e.states.Cleanup()")},
		{"pkg/app/engine.go", replace("document.(HTML).body()", "document.body()")},
		{"pkg/app/html_gen.go", shareElements},
		{"pkg/app/attribute.go", replace("switch v {\n\tcase \"cite\"", "switch name {\n\tcase \"cite\"")},
		{"pkg/app/node.go", replace("case *htmlElem, *htmlElemSelfClosing:", "case *htmlShared:")},
		{"pkg/app/node.go", replace(`"html"`, `"github.com/maxence-charriere/go-app/v10/pkg/html"`)},
		{"pkg/app/context.go", ourURL},
		{"pkg/app/engine.go", ourURL},
		{"pkg/app/js.go", ourURL},
		{"pkg/app/js_wasm.go", ourURL},
		{"pkg/app/page.go", ourURL},
		{"pkg/app/testing.go", ourURL},
	},
}}

// ourURL is the change from net/url to the package of ours.
var ourURL = replace(`"net/url"`, `"github.com/maxence-charriere/go-app/v10/pkg/url"`)

// source is a module of the build list, as go mod download describes it.
type source struct {
	Version string
	Dir     string
	GoMod   string
	Error   string
}

// find returns where the module is, which a new machine fetches first: nothing that this
// command needs has had it fetched. It is an error if the build list has it in another
// version than the one that the edition was made for.
func (e edition) find() (source, error) {
	out, err := exec.Command("go", "mod", "download", "-json", e.module).Output()
	var s source
	if json.Unmarshal(out, &s) == nil && s.Error != "" {
		return source{}, fmt.Errorf("go mod download %s: %s", e.module, s.Error)
	}
	var failed *exec.ExitError
	if errors.As(err, &failed) {
		return source{}, fmt.Errorf("go mod download %s: %s", e.module, failed.Stderr)
	} else if err != nil {
		return source{}, fmt.Errorf("go mod download %s: %w", e.module, err)
	}
	if s.Version != e.version {
		return source{}, fmt.Errorf("%s is %s, but tools/slim/%s was written for %s: compare the files that it replaces, then enter the version",
			e.module, s.Version, e.ours, e.version)
	}
	return s, nil
}

// write puts the edition into a folder, which must not be there yet.
func (e edition) write(dir string) error {
	s, err := e.find()
	if err != nil {
		return err
	}
	if err := copyFile(filepath.Join(dir, "go.mod"), os.DirFS(filepath.Dir(s.GoMod)), filepath.Base(s.GoMod)); err != nil {
		return err
	}
	module := os.DirFS(s.Dir)
	for _, folder := range e.folders {
		if err := copyFolder(dir, module, folder, e.has); err != nil {
			return err
		}
	}
	ours, err := fs.Sub(files, e.ours)
	if err != nil {
		return err
	}
	if err := copyFolder(dir, ours, ".", func(string) bool { return true }); err != nil {
		return err
	}
	for _, change := range e.edits {
		if err := change.apply(dir); err != nil {
			return err
		}
	}
	return nil
}

// has reports whether a file of the module belongs to the edition.
func (e edition) has(name string) bool {
	return strings.HasSuffix(name, ".go") && !strings.HasSuffix(name, "_test.go") && !slices.Contains(e.without, name)
}

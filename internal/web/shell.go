package web

import (
	"bytes"
	_ "embed"
	"encoding/json"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"toewright/internal/web/coding"
)

// serviceWorker is the template that go-app fills in. Its own one keeps an empty
// cache after a failed install and loses the page offline.
//
//go:embed shell/service-worker.js
var serviceWorker string

// paperColour is the colour of the sheet, for the frame that the system draws
// around an installed page.
const paperColour = "#f7f5ee"

// What the page is called and does.
const (
	pageName        = "Toewright"
	pageDescription = "Finds the steering arm that keeps the toe of a wheel through its travel."
)

// newShell returns go-app's handler for its scripts.
func newShell(files assets) *app.Handler {
	return &app.Handler{
		Name:                  pageName,
		LoadingLabel:          "Starting the solver: {progress} %",
		Resources:             resolver{},
		Version:               files.version(),
		WasmContentLength:     strconv.Itoa(len(files[programName].forms[coding.Identity].data)),
		ServiceWorkerTemplate: strings.ReplaceAll(serviceWorker, "{{.ResourcesToCache}}", keptList(files)),
	}
}

// keptList returns the paths of all files of the page, which are kept for when there is
// no network, as a list in JavaScript.
func keptList(files assets) string {
	kept := []string{"./", "app.js", "wasm_exec.js", manifestName}
	for name := range files {
		if name != manifestName {
			kept = append(kept, "web/"+name)
		}
	}
	slices.Sort(kept)
	list, err := json.Marshal(kept)
	if err != nil {
		panic(err) // It is a list of texts.
	}
	return string(list)
}

// appScript is the path of go-app's script.
const appScript = "/app.js"

// appEdits are what is changed in go-app's script: it takes the program that boot.js has
// asked for already, and has the page kept for when there is no network only once the page
// stands, as that competes with the start for the network and the processor. A crash says
// where it was by program counters, which all that is left of the program can say: see
// tools/shrink.
var appEdits = []struct{ theirs, ours string }{
	{`fetchWithProgress("web/app.wasm", showProgress)`, `toewright.arrival(showProgress)`},
	{"const go = new Go();", `const go = Object.assign(new Go(), { env: { GOTRACEBACK: "system" } });`},
	{"\ngoappInitServiceWorker();\n", "\ntoewright.standing.then(goappInitServiceWorker);\n"},
}

// edited returns go-app's script with the changes.
func edited(script []byte) ([]byte, error) {
	for _, e := range appEdits {
		if n := bytes.Count(script, []byte(e.theirs)); n != 1 {
			return nil, fmt.Errorf("web: %s holds %q %d times, want it once: see what go-app has changed", appScript, e.theirs, n)
		}
		script = bytes.Replace(script, []byte(e.theirs), []byte(e.ours), 1)
	}
	return script, nil
}

// shellPaths returns what is asked of go-app's handler. It answers more by itself:
// paths such as /robots.txt make it fetch from whatever host the request names.
func shellPaths() []string { return []string{appScript, "/app-worker.js", "/wasm_exec.js"} }

// exactly returns the pattern of a mux for one path and none below it.
func exactly(path string) string {
	if strings.HasSuffix(path, "/") {
		return path + "{$}"
	}
	return path
}

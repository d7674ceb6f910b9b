package web

import (
	"bytes"
	"fmt"
	"net/http"
	"strconv"
	"strings"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"toewright/internal/web/coding"
)

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
		Name:              pageName,
		LoadingLabel:      "Starting the solver: {progress} %",
		Resources:         resolver{},
		Version:           files.version(),
		WasmContentLength: strconv.Itoa(len(files[programName].forms[coding.Identity].data)),
	}
}

// What go-app's handler is asked for, and the script that keeps the page. go-app answers
// more by itself: paths such as /robots.txt make it fetch from whatever host the request
// names.
const (
	appScript    = "/app.js"
	glueScript   = "/wasm_exec.js"
	workerScript = "/app-worker.js"
)

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

// addScripts adds what go-app's handler answers. It is always the same.
func (s set) addScripts(shell http.Handler) error {
	for _, path := range []string{appScript, glueScript} {
		body, err := rendered(shell, path)
		if err == nil && path == appScript {
			body, err = edited(body)
		}
		if err != nil {
			return err
		}
		s[path[1:]] = renderedAsset(path, body)
	}
	return nil
}

// exactly returns the pattern of a mux for one path and none below it.
func exactly(path string) string {
	if strings.HasSuffix(path, "/") {
		return path + "{$}"
	}
	return path
}

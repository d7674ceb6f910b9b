package web

import (
	_ "embed"
	"strconv"
	"strings"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"toewright/app/ui"
)

// serviceWorker is the template that go-app fills in. Its own one keeps an empty
// cache after a failed install and loses the page offline.
//
//go:embed shell/service-worker.js
var serviceWorker string

// paperColour is the colour of the sheet, for the frame that the system draws
// around an installed page.
const paperColour = "#f7f5ee"

// newShell returns go-app's handler for the document and its scripts. The further tags
// are put at the end of its head.
func newShell(files assets, headTags ...string) *app.Handler {
	ui.Routes(nil)
	return &app.Handler{
		Name:        "Toewright",
		Title:       "Toewright",
		Description: "Finds the steering arm that keeps the toe of a wheel through its travel.",
		Lang:        "en",
		Icon: app.Icon{
			Default:  "/web/icon-192.png",
			Large:    "/web/icon-512.png",
			Maskable: "/web/icon-512.png",
			SVG:      "/web/icon.svg",
		},
		BackgroundColor: paperColour,
		ThemeColor:      paperColour,
		LoadingLabel:    "Starting the solver: {progress} %",
		// Not deferred, so that it runs before go-app's scripts, which are.
		Scripts:               []string{"/web/boot.js"},
		Styles:                []string{"/web/app.css", "/web/plot.css", "/web/sheet.css", "/web/panels.css", "/web/print.css"},
		CacheableResources:    []string{"/web/worker.js", "/web/icon.svg"},
		Resources:             resolver{},
		Version:               files.version(),
		WasmContentLength:     strconv.Itoa(len(files[programName].forms[identity].data)),
		ServiceWorkerTemplate: serviceWorker,
		RawHeaders:            headTags,
	}
}

// shellPaths returns what is asked of go-app's handler. It answers more by itself:
// paths such as /robots.txt make it fetch from whatever host the request names.
func shellPaths() []string {
	return append([]string{"/app.css", "/app.js", "/app-worker.js", "/wasm_exec.js"}, ui.Paths()...)
}

// exactly returns the pattern of a mux for one path and none below it.
func exactly(path string) string {
	if strings.HasSuffix(path, "/") {
		return path + "{$}"
	}
	return path
}

package engines

import (
	"testing"

	"toewright/internal/browsertest"
	"toewright/internal/web"
)

// TestUpdate has a new version come in each engine: the page goes on with its own until the
// reader changes to it, also without the server, and the study is there afterwards.
func TestUpdate(t *testing.T) {
	for _, e := range All {
		t.Run(e.Name, func(t *testing.T) {
			p := mustOpen(t, e, 1440, 900, Options{})
			p.wait(`navigator.serviceWorker.controller !== null`)
			p.opensAFile()
			p.Stop()
			p.Use(web.Config{Assets: browsertest.Version(t, "new")})
			p.Start()
			if got := get[string](p, browsertest.AskForUpdate); got != "found" {
				t.Fatalf("looking for a new version: %s", got)
			}
			p.wait(`toewright.updateWaiting`)
			p.Stop() // All of both is on the device.
			p.visit()
			if got := get[string](p, browsertest.ShownVersion); got == "new" {
				t.Error("the new version runs before the reader agreed")
			}
			p.wait(`toewright.updateWaiting`)
			get[any](p, `(toewright.update(), null)`)
			p.wait(browsertest.ShownVersion + ` === "new"`)
			p.ready()
			p.wait(`document.querySelector("#study-menu strong")?.textContent === "From a file"`)
		})
	}
}

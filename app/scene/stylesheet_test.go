package scene_test

import (
	"os"
	"testing"

	"toewright/app/scene"
	"toewright/internal/plot"
)

// stylesheetFile is the page's style sheet for what packages plot and scene draw.
const stylesheetFile = "../web/plot.css"

func TestStylesheetFile(t *testing.T) {
	want := "/* Written by go test ./app/scene -update from packages plot and scene. */\n" + plot.Stylesheet(plot.Page) + scene.Stylesheet()
	if *update {
		if err := os.WriteFile(stylesheetFile, []byte(want), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	got, err := os.ReadFile(stylesheetFile)
	if err != nil {
		t.Fatal(err)
	}
	if string(got) != want {
		t.Errorf("%s is not what packages plot and scene say; run go test ./app/scene -update", stylesheetFile)
	}
}

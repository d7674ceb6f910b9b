package scene_test

import (
	"os"
	"testing"

	"toewright/app/plot"
)

// stylesheetFile is the page's style sheet for what package plot draws.
const stylesheetFile = "../web/plot.css"

func TestStylesheetFile(t *testing.T) {
	want := "/* Written by go test ./app/scene -update from package plot. */\n" + plot.Stylesheet(plot.Page)
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
		t.Errorf("%s is not what package plot says; run go test ./app/scene -update", stylesheetFile)
	}
}

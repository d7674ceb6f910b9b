package scene_test

import (
	"bytes"
	"encoding/xml"
	"errors"
	"io"
	"strings"
	"testing"

	"toewright/app/scene"
	"toewright/internal/plot"
	"toewright/internal/study"
)

// fileOf returns the demo's sheet as a file, with its foot.
func fileOf(t *testing.T, name string) string {
	t.Helper()
	desk := deskOf(t, "double-wishbone-rack")
	if err := desk.Session.Edit("name", "", func(d *study.Document) { d.Name = name }); err != nil {
		t.Fatal(err)
	}
	d := scene.Document{Title: name, Description: "geometry", Size: paper, Foot: scene.Foot(desk, paper.Width)}
	return string(d.Append(nil, scene.NewStage().Draw(desk, paper)))
}

// TestDocumentStandsAlone checks that a file is well-formed whatever a study is called,
// and refers to nothing outside of itself.
func TestDocumentStandsAlone(t *testing.T) {
	text := fileOf(t, `Arm <b> & "Co" </svg>`)
	reader := xml.NewDecoder(strings.NewReader(text))
	for {
		_, err := reader.Token()
		if errors.Is(err, io.EOF) {
			break
		}
		if err != nil {
			t.Fatal(err)
		}
	}
	for _, outside := range []string{"@import", "href", "light-dark", "<script"} {
		if strings.Contains(text, outside) {
			t.Errorf("the file holds %q", outside)
		}
	}
	for _, part := range []string{"Spacers 12 mm", "not strength", "Toe change, left = right", "Arm &lt;b&gt;", ".foremost2 .line.s2"} {
		if !strings.Contains(text, part) {
			t.Errorf("the file does not hold %q", part)
		}
	}
}

// TestDocumentHasItsColours checks that every colour that a rule names is stated in the
// file.
func TestDocumentHasItsColours(t *testing.T) {
	text := fileOf(t, "Arm")
	for _, use := range strings.Split(text, "var(")[1:] {
		name, _, _ := strings.Cut(use, ")")
		if !strings.Contains(text, name+":") {
			t.Errorf("%s has no value in the file", name)
		}
	}
}

func TestFootLeavesHiddenCarsOut(t *testing.T) {
	desk := deskOf(t, "double-wishbone-rack")
	if err := desk.Session.Hide(1, true); err != nil {
		t.Fatal(err)
	}
	shown := scene.Foot(desk, paper.Width).AppendGroup(nil, plot.Point{})
	if bytes.Contains(shown, []byte(desk.Session.Document().Candidates[0].Name)) {
		t.Error("a hidden car stands in the key")
	}
}

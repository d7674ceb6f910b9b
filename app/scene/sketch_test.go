package scene_test

import (
	"encoding/xml"
	"io"
	"strconv"
	"strings"
	"testing"

	"toewright/app/scene"
	"toewright/internal/study"
)

// TestSketches draws every template: each picture is well-formed, within its size but for
// links that run off it, has something of the car in each half, and is unlike the others.
func TestSketches(t *testing.T) {
	seen := map[string]string{}
	for _, template := range study.Templates() {
		t.Run(template.Key, func(t *testing.T) {
			design, err := template.Start().Design()
			if err != nil {
				t.Fatal(err)
			}
			text := scene.Sketch(design, 136, 72)
			if other := seen[text]; other != "" {
				t.Errorf("drawn as %s is", other)
			}
			seen[text] = template.Key
			classes := map[string]int{}
			d := xml.NewDecoder(strings.NewReader(text))
			for {
				token, err := d.Token()
				if err == io.EOF {
					break
				}
				if err != nil {
					t.Fatal(err)
				}
				e, ok := token.(xml.StartElement)
				if !ok || e.Name.Local != "path" {
					continue
				}
				class, path := "part", e.Attr[len(e.Attr)-1].Value
				if len(e.Attr) > 1 {
					class = e.Attr[0].Value
				}
				if path != "" {
					classes[class]++
				}
				if strings.Contains(path, "NaN") || strings.Contains(path, "Inf") {
					t.Errorf("%s has no place: %.80s", class, path)
				}
				if class == "tyre" {
					within(t, path)
				}
			}
			for _, class := range []string{"tyre", "part", "ball"} {
				if classes[class] < 2 {
					t.Errorf("%d paths of class %s, want one in each view", classes[class], class)
				}
			}
		})
	}
}

// within fails the test for a path that begins outside of the picture.
func within(t *testing.T, path string) {
	t.Helper()
	numbers := strings.FieldsFunc(path, func(r rune) bool { return !strings.ContainsRune("-.0123456789", r) })
	x, err := strconv.ParseFloat(numbers[0], 64)
	y, err2 := strconv.ParseFloat(numbers[1], 64)
	if err != nil || err2 != nil || !(x >= 0 && x <= 68 && y >= 0 && y <= 72) {
		t.Errorf("begins at %v, %v", x, y)
	}
}

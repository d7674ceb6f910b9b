package archtest

import (
	"path/filepath"
	"strings"
	"testing"
)

// TestStylesDoNotAskWhatIsInThePage holds the styles to the page's own classes. With a rule for a
// page that has something in it the browser styles all of the page anew in every frame of a
// drag: on a processor slowed four times nine frames of ten were late.
func TestStylesDoNotAskWhatIsInThePage(t *testing.T) {
	files, err := filepath.Glob("../../app/web/*.css")
	if err != nil || len(files) == 0 {
		t.Fatalf("found %d styles, error %v", len(files), err)
	}
	for _, file := range files {
		for i, line := range strings.Split(read(t, file), "\n") {
			if strings.Contains(line, ".page:has(") || strings.Contains(line, ".page:not(:has(") {
				t.Errorf("%s:%d: %q: give the page a class in its place", filepath.Base(file), i+1, strings.TrimSpace(line))
			}
		}
	}
}

package plot

import (
	"strings"
	"testing"
)

func TestStylesheet(t *testing.T) {
	tests := []struct {
		name  string
		paper Paper
		want  []string
		not   string
	}{
		{"white", White, []string{"--plot-paper:#ffffff", ".s2{color:#045eed}"}, "light-dark"},
		{"light", Light, []string{"--plot-paper:#f7f5ee", "--plot-ink:#1f2c38"}, "light-dark"},
		{"dark", Dark, []string{"--plot-paper:#1a1f24", ".s2{color:#88a2fe}"}, "light-dark"},
		{"page", Page, []string{"--plot-paper:light-dark(#f7f5ee,#1a1f24)", ".s2{color:light-dark(#045eed,#88a2fe)}"}, "#ffffff"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			css := Stylesheet(tt.paper)
			for _, want := range append(tt.want, ".line.s1{stroke-dasharray:9 4}") {
				if !strings.Contains(css, want) {
					t.Errorf("no %q in\n%s", want, css)
				}
			}
			if strings.Contains(css, tt.not) {
				t.Errorf("%q in\n%s", tt.not, css)
			}
		})
	}
}

// Each class that a scene uses has a rule.
func TestStylesheetKnowsEveryClass(t *testing.T) {
	css := Stylesheet(White)
	plain := map[string]bool{"label": true, "tick": true} // texts as all texts are
	for _, scene := range []Picture{chartScene(), linkageScene(), mapScene(), spreadScene()} {
		for _, m := range scene.Marks {
			for _, class := range strings.Fields(m.Class) {
				if !plain[class] && !strings.Contains(css, "."+class) {
					t.Errorf("no rule for class %q", class)
				}
			}
		}
	}
}

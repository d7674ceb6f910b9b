package scene_test

import (
	"bytes"
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"toewright/app/model"
	"toewright/app/scene"
	"toewright/internal/study"
	"toewright/solver"
)

var update = flag.Bool("update", false, "write the golden files anew")

// paper is the size of a sheet on a desktop.
var paper = scene.Size{Width: 960, Height: 680}

// deskOf returns a desk with a template on it.
func deskOf(t testing.TB, key string) *model.Desk {
	t.Helper()
	template, ok := study.TemplateByKey(key)
	if !ok {
		t.Fatalf("there is no template %s", key)
	}
	return model.NewDesk(template.Document())
}

// standalone returns a frame as a file that a browser shows.
func standalone(out *scene.Output, size scene.Size) []byte {
	svg := scene.Markup("sheet")
	for i := range scene.SlotCount() {
		s := scene.Slot(i)
		if s.IsText() {
			text := out.Text(s)
			place := fmt.Sprintf(`x="%.2f" y="%.2f" text-anchor="%s" transform="rotate(%.2f %.2f %.2f)">`, text.At.X, text.At.Y, text.Align, text.Turn, text.At.X, text.At.Y)
			svg = replaceNode(svg, s, place+text.Content)
			continue
		}
		svg = replaceNode(svg, s, fmt.Sprintf(`d="%s"/>`, out.Path(s)))
	}
	svg = strings.Replace(svg, "<svg ", fmt.Sprintf(`<svg viewBox="0 0 %g %g" `, size.Width, size.Height), 1)
	svg = strings.Replace(svg, "><g ", `>`+"\n"+`<style>@import "../../web/app.css"; @import "../../web/plot.css"; @import "../../web/sheet.css";</style><g `, 1)
	svg, _, _ = strings.Cut(svg, `<g id="handles"`)
	return []byte(strings.ReplaceAll(svg+"</svg>", "><", ">\n<") + "\n")
}

// replaceNode puts what a frame says into the element of a slot.
func replaceNode(svg string, s scene.Slot, content string) string {
	head, tail, _ := strings.Cut(svg, ` id="`+s.ID()+`"`)
	end := "/>"
	if s.IsText() {
		end = "></text>"
		content += "</text>"
	}
	attributes, rest, _ := strings.Cut(tail, end)
	attributes, _, _ = strings.Cut(attributes, ` text-anchor=`)
	return head + attributes + " " + content + rest
}

// TestGolden draws whole sheets of different kinds of cars.
func TestGolden(t *testing.T) {
	for _, tt := range []struct {
		key string
		set func(*model.View)
	}{
		{"double-wishbone-rack", func(v *model.View) { v.Lift(solver.Left, 30); v.Instant = true }},
		{"double-wishbone-centre-link", func(v *model.View) { v.Steer = 0.3 }},
		{"strut-rack", func(v *model.View) { v.Motion = solver.RollMotion; v.Lift(solver.Left, 25); v.Steer = -20 }},
		{"multi-link-rear", func(v *model.View) { v.Face = model.OrbitFace }},
		{"solid-axle-pitman", func(v *model.View) { v.Motion = solver.LeftWheel; v.Lift(solver.Left, 40) }},
	} {
		t.Run(tt.key, func(t *testing.T) {
			desk := deskOf(t, tt.key)
			tt.set(&desk.View)
			stage := scene.NewStage()
			got := standalone(stage.Draw(desk, paper), paper)
			if err := stage.Err(); err != nil {
				t.Fatal(err)
			}
			checkGolden(t, tt.key+".svg", got)
		})
	}
}

func checkGolden(t *testing.T, name string, got []byte) {
	t.Helper()
	file := filepath.Join("testdata", name)
	if *update {
		if err := os.WriteFile(file, got, 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(got, want) {
		t.Errorf("%s is drawn otherwise; if that is meant, run go test ./app/scene -update and look at the diff", file)
	}
}

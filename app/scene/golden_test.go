package scene_test

import (
	"bytes"
	"flag"
	"os"
	"path/filepath"
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
	return model.NewDesk(study.Template{Key: key}.Document())
}

// file returns a frame as a file of its own.
func file(out *scene.Output, size scene.Size) []byte {
	d := scene.Document{Title: "Golden sheet", Description: "An invented car.", Size: size}
	return d.Append(nil, out)
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
		{"swing-arm-rack", func(v *model.View) { v.Lift(solver.Left, 40) }},
		{"solid-axle-pitman", func(v *model.View) { v.Motion = solver.LeftWheel; v.Lift(solver.Left, 40) }},
	} {
		t.Run(tt.key, func(t *testing.T) {
			desk := deskOf(t, tt.key)
			tt.set(&desk.View)
			stage := scene.NewStage()
			got := file(stage.Draw(desk, paper), paper)
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

package scene_test

import (
	"math"
	"regexp"
	"slices"
	"strconv"
	"testing"

	"toewright/app/model"
	"toewright/app/scene"
	"toewright/internal/engine"
	"toewright/internal/plot"
	"toewright/internal/study"
	"toewright/solver"
)

// terrain returns a map of the demo's selected car over the heights of the tie rod.
func terrain(t testing.TB, size int) *scene.Terrain {
	t.Helper()
	desk := model.NewDesk(study.Template{Key: "double-wishbone-rack"}.Document())
	g, err := desk.GroundOf("tieRodOuterHeight", "tieRodInnerHeight")
	if err != nil {
		t.Fatal(err)
	}
	run, err := engine.NewMapRun(g.Study(), g.Options(size))
	if err != nil {
		t.Fatal(err)
	}
	cells, err := run.Fill(t.Context(), engine.Whole)
	if err != nil {
		t.Fatal(err)
	}
	m := &model.Terrain{Ground: g, Size: size}
	for _, c := range cells {
		m.Cells = append(m.Cells, float64(c))
	}
	return &scene.Terrain{Desk: desk, Map: m}
}

// TestFieldFindsTheValley compares the field of a coarse map with a map of its places: the
// toe change is the same, at the bottom of the valley too, between the places that were
// computed.
func TestFieldFindsTheValley(t *testing.T) {
	const tolerance = 0.003 // deg, of 1.5 over the map: half of what a gauge reads
	coarse := terrain(t, 16)
	g := coarse.Field()
	fine := terrain(t, len(g.X))
	for i, cell := range fine.Map.Cells {
		want := solver.Angle(cell).Degrees()
		if got := g.Z[i]; !(math.Abs(got-want) <= tolerance) {
			t.Fatalf("field at %.2f, %.2f = %.4f deg, want %.4f", g.X[i%len(g.X)], g.Y[i/len(g.X)], got, want)
		}
	}
	inField, _ := plot.DomainOf(g.Z)
	if _, _, least, _ := coarse.Map.Least(); !(inField.Low < least.Degrees()) {
		t.Errorf("the field comes down to %g, the places to %g: want it to find less between them", inField.Low, least.Degrees())
	}
}

func TestLevelsAreRound(t *testing.T) {
	for _, tt := range []struct {
		name string
		z    []float64
		want []float64
	}{
		{"two decades", []float64{0.012, 1.5, math.NaN()}, []float64{0.02, 0.05, 0.1, 0.2, 0.5, 1}},
		{"the bottom of a valley is left out", []float64{0.0001, 0.9}, []float64{0.005, 0.01, 0.02, 0.05, 0.1, 0.2, 0.5}},
		{"level ground", []float64{0.3, 0.3}, nil},
		{"nothing", nil, nil},
	} {
		if got := scene.Levels(plot.Grid{Z: tt.z}); !slices.Equal(got, tt.want) {
			t.Errorf("%s: levels %v, want %v", tt.name, got, tt.want)
		}
	}
}

// TestPlaceOnTheMap finds the values at the corners of the map, and that there are none
// beside it.
func TestPlaceOnTheMap(t *testing.T) {
	m := terrain(t, 3)
	area := m.Frame().Area
	for _, tt := range []struct {
		name string
		at   plot.Point
		x, y float64
		on   bool
	}{
		{"low corner", plot.Point{X: area.Min.X, Y: area.Max.Y}, m.Map.X.Low, m.Map.Y.Low, true},
		{"high corner", plot.Point{X: area.Max.X, Y: area.Min.Y}, m.Map.X.High, m.Map.Y.High, true},
		{"left of it", plot.Point{X: area.Min.X - area.Width()/2, Y: area.Max.Y}, m.Map.X.Low - (m.Map.X.High-m.Map.X.Low)/2, m.Map.Y.Low, false},
	} {
		const tolerance = 1e-9 // mm
		x, y, on := m.Values(tt.at)
		if !(math.Abs(x-tt.x) <= tolerance) || !(math.Abs(y-tt.y) <= tolerance) || on != tt.on {
			t.Errorf("%s: %g, %g, %t, want %g, %g, %t", tt.name, x, y, on, tt.x, tt.y, tt.on)
		}
	}
}

// TestForbiddenGroundIsHatched breaks a limit on the right half of the map: strokes lie
// there and nowhere else.
func TestForbiddenGroundIsHatched(t *testing.T) {
	m := terrain(t, 4)
	if len(m.Map.Limits()) == 0 {
		t.Fatal("the demo states no limit")
	}
	m.Map.RoomSize, m.Map.Room = 5, [][]float64{nil}
	for range 5 {
		m.Map.Room[0] = append(m.Map.Room[0], 2, 1, 0, -1, -2)
	}
	field := m.Field()
	var strokes string
	for _, mark := range m.Ground(field, nil, func() {}).Marks {
		if mark.Class == "forbidden" {
			strokes = string(mark.Path)
		}
	}
	ends := regexp.MustCompile(`[ML]([0-9.]+) `).FindAllStringSubmatch(strokes, -1)
	if len(ends) < 40 {
		t.Fatalf("%d ends of strokes, want the half of the map to be full of them", len(ends))
	}
	middle := m.Frame().Area.Centre().X
	for _, end := range ends {
		if x, _ := strconv.ParseFloat(end[1], 64); x < middle {
			t.Errorf("a stroke reaches to %g, left of the edge at %g", x, middle)
		}
	}
}

// TestLabelsStandClear puts the edge of a limit, whose name is long, across the map: no
// level of a contour line is written into the name.
func TestLabelsStandClear(t *testing.T) {
	m := terrain(t, 16)
	m.Map.RoomSize, m.Map.Room = 5, [][]float64{nil}
	for range 5 {
		m.Map.Room[0] = append(m.Map.Room[0], 2, 1, 0, -1, -2)
	}
	field := m.Field()
	var name *plot.Mark
	var levels []plot.Mark
	for _, mark := range m.Ground(field, scene.Levels(field), func() {}).Marks {
		_, err := strconv.ParseFloat(mark.Text, 64)
		switch {
		case mark.Class != "figure":
		case err == nil:
			levels = append(levels, mark)
		default:
			name = &mark
		}
	}
	if name == nil || len(levels) < 2 {
		t.Fatalf("the map has %d levels written, and the limit's name: %t", len(levels), name != nil)
	}
	turn := name.Anchor.Turn * math.Pi / 180
	letters := float64(len(name.Text)) / 4 * name.Size // half its length, a letter half as wide as high
	for _, l := range levels {
		d := l.Anchor.At.Sub(name.Anchor.At)
		along, across := d.X*math.Cos(turn)+d.Y*math.Sin(turn), d.Y*math.Cos(turn)-d.X*math.Sin(turn)
		if math.Abs(along) < letters && math.Abs(across) < l.Size {
			t.Errorf("%s is written %.0f px from the line of %q", l.Text, math.Abs(across), name.Text)
		}
	}
}

func BenchmarkTerrain(b *testing.B) {
	for name, size := range map[string]int{"coarse": 16, "full": model.FullMap} {
		b.Run(name, func(b *testing.B) {
			t := terrain(b, size)
			b.ReportAllocs()
			for b.Loop() {
				field := t.Field()
				t.Ground(field, scene.Levels(field), func() {}).AppendMarks(nil)
			}
		})
	}
}

package scene

import (
	"fmt"
	"math"
	"testing"

	"toewright/app/model"
	"toewright/internal/plot"
	"toewright/internal/study"
	"toewright/solver"
)

// templateDesk returns a desk with a template on it, in inches if asked for.
func templateDesk(t testing.TB, key string, inches bool) *model.Desk {
	t.Helper()
	desk := model.NewDesk(study.Template{Key: key}.Document())
	if inches {
		err := desk.Session.SetDisplay("units", func(v *study.Display) { v.Units, v.Toe, v.Base = study.Inch, "plate", 15 })
		if err != nil {
			t.Fatal(err)
		}
	}
	return desk
}

// unlikeDesk returns the demo with a candidate whose sides differ selected.
func unlikeDesk(t testing.TB) *model.Desk {
	t.Helper()
	desk := templateDesk(t, "double-wishbone-rack", false)
	car, err := desk.Session.AddCandidate(study.Candidate{Name: "unlike", Changes: study.Changes{"tieRodOuterHeight@left": -14, "tieRodOuterHeight@right": -10}})
	if err != nil {
		t.Fatal(err)
	}
	desk.Select(car)
	return desk
}

// TestForm: a car whose sides are alike is drawn by half, any other whole.
func TestForm(t *testing.T) {
	for _, tt := range []struct {
		name string
		desk *model.Desk
		set  func(*model.Desk)
		half bool
	}{
		{"sides alike", templateDesk(t, "double-wishbone-rack", false), func(*model.Desk) {}, true},
		{"a centre link", templateDesk(t, "double-wishbone-centre-link", false), func(*model.Desk) {}, true},
		{"lifted", templateDesk(t, "strut-rack", false), func(d *model.Desk) { d.View.Lift(solver.Left, 20) }, true},
		{"a drag link", templateDesk(t, "solid-axle-pitman", false), func(*model.Desk) {}, false},
		{"steered", templateDesk(t, "strut-rack", false), func(d *model.Desk) { d.View.Steer = 10 }, false},
		{"rolled", templateDesk(t, "strut-rack", false), func(d *model.Desk) { d.View.Motion = solver.RollMotion }, false},
		{"an unlike candidate", unlikeDesk(t), func(*model.Desk) {}, false},
		{"an unlike candidate that is not selected", unlikeDesk(t), func(d *model.Desk) { d.Select(1) }, false},
		{"an unlike candidate that is not drawn", unlikeDesk(t), func(d *model.Desk) { d.Select(1); d.View.Alone = true }, true},
		{"unlike targets", templateDesk(t, "strut-rack", false), func(d *model.Desk) {
			if err := d.Session.EditSearch("", "", func(f *study.Search) { f.TargetRight = [][2]float64{{0, 0}, {20, 0.1}} }); err != nil {
				t.Fatal(err)
			}
		}, false},
	} {
		tt.set(tt.desk)
		s := NewStage()
		s.Draw(tt.desk, Size{900, 640})
		if s.form.half != tt.half {
			t.Errorf("%s: drawn by half = %t, want %t", tt.name, s.form.half, tt.half)
		}
	}
}

// everySheet draws every template at every size, and an unlike car, in both units.
func everySheet(t *testing.T, check func(t *testing.T, s *Stage)) {
	t.Helper()
	desks := map[string]*model.Desk{"unlike": unlikeDesk(t)}
	for _, template := range study.Templates() {
		desks[template.Key] = templateDesk(t, template.Key, false)
		desks[template.Key+" in inches"] = templateDesk(t, template.Key, true)
	}
	for name, desk := range desks {
		for _, size := range sheetSizes {
			for _, side := range solver.Sides {
				t.Run(fmt.Sprintf("%s %gx%g %s", name, size.Width, size.Height, side), func(t *testing.T) {
					desk.View.Side = side
					s := NewStage()
					s.Draw(desk, size)
					if err := s.Err(); err != nil {
						t.Fatal(err)
					}
					check(t, s)
				})
			}
		}
	}
}

// TestChartAndWheelShareTheirAxis: the chart's zero lies on the level of the wheel's centre
// at ride height, and the view beside it has room for the ground at full droop.
func TestChartAndWheelShareTheirAxis(t *testing.T) {
	everySheet(t, func(t *testing.T, s *Stage) {
		v := &s.views[frontView]
		for _, side := range solver.Sides {
			if !s.charted(side) {
				continue
			}
			home := s.rig.place(&s.home, s.rig.wheel[side])
			if zero, hub := s.charts[side].frame.Y.At(0), v.paper(home).Y; math.Abs(zero-hub) > 0.01 {
				t.Errorf("%s: zero of the chart at %.2f, the wheel's centre at %.2f", side, zero, hub)
			}
			ground := v.paper(home.Add(plot.Vec{Z: s.cars.Travels[0] - s.car.Axle.TyreRadius()}))
			if ground.Y > s.areas.view[frontView].Max.Y {
				t.Errorf("%s: the ground at full droop at %.1f, below the view's end at %.1f", side, ground.Y, s.areas.view[frontView].Max.Y)
			}
		}
	})
}

// TestAxesHaveTicks: each axis has three figures or more, none off the sheet and none on
// another.
func TestAxesHaveTicks(t *testing.T) {
	everySheet(t, func(t *testing.T, s *Stage) {
		for _, side := range solver.Sides {
			if !s.charted(side) {
				continue
			}
			slots := s.charts[side].slots
			for axis, list := range map[string][]Slot{"toe": slots.toeTicks[:], "travel": slots.travelTicks[:]} {
				checkTicks(t, s, side.String()+" "+axis, list)
			}
		}
	})
}

func checkTicks(t *testing.T, s *Stage, name string, list []Slot) {
	t.Helper()
	var boxes []plot.Rect
	for _, slot := range list {
		text := s.out.Text(slot)
		if text.Content == "" {
			continue
		}
		width := plot.TextWidth(text.Content, tickSize)
		left := text.At.X - width*float64(text.Align)/2 // start, middle, end
		box := plot.Box(left, text.At.Y-tickSize*0.8, width, tickSize*0.8)
		if box.Min.X < 0 || box.Max.X > s.size.Width {
			t.Errorf("%s: %s runs from %.1f to %.1f, off the sheet", name, text.Content, box.Min.X, box.Max.X)
		}
		if overlapsAny(box, boxes) {
			t.Errorf("%s: %s stands on another figure", name, text.Content)
		}
		boxes = append(boxes, box)
	}
	if len(boxes) < 3 {
		t.Errorf("%s: %d figures, want 3", name, len(boxes))
	}
}

// TestEverySheetHasSomethingToDrag: the marker of each chart, and a ball that makes a
// candidate, are on every sheet.
func TestEverySheetHasSomethingToDrag(t *testing.T) {
	everySheet(t, func(t *testing.T, s *Stage) {
		var kinds [MarkerHandle + 1]int
		paper := plot.Box(0, 0, s.size.Width, s.size.Height)
		for _, h := range s.Handles() {
			if !paper.Contains(h.At) {
				t.Errorf("the handle of the %s %s is off the sheet, at %.0f", h.Side, h.Label, h.At)
			}
			kinds[h.Kind]++
		}
		movable := 0
		for i := range movables {
			if s.has(movables[i].keys[0]) {
				movable++
			}
		}
		if kinds[MarkerHandle] == 0 || kinds[WheelHandle] == 0 || movable > 0 && kinds[PartHandle] == 0 {
			t.Errorf("%d markers, %d wheels and %d balls to drag, want some of each", kinds[MarkerHandle], kinds[WheelHandle], kinds[PartHandle])
		}
		if len(s.Handles()) >= MaxHandles {
			t.Errorf("%d handles: there is no room for more", len(s.Handles()))
		}
	})
}

// TestMarkerLeadsToTheHub: the dashed line runs from the marker over the bracket to the hub,
// on the level of the wheel where the bracket is not enlarged.
func TestMarkerLeadsToTheHub(t *testing.T) {
	desk := templateDesk(t, "double-wishbone-rack", false)
	desk.View.Lift(solver.Left, 40)
	for _, tt := range []struct {
		size  Size
		times int
	}{{Size{1000, 700}, 1}, {Size{390, 250}, 4}} {
		s := NewStage()
		s.Draw(desk, tt.size)
		b, ok := s.bracket(solver.Left)
		hub := s.views[frontView].on(s.rig.wheel[solver.Left])
		want := plot.Path(nil).Polyline(s.marker[solver.Left], plot.Point{X: s.charts[solver.Left].frame.Area.Max.X, Y: s.marker[solver.Left].Y},
			plot.Point{X: b.x, Y: b.at(40)}, hub)
		if got := s.out.Path(s.charts[solver.Left].slots.leader); string(got) != want.String() {
			t.Errorf("%v: the line is %s, want %s", tt.size, got, want)
		}
		if !ok || b.times != tt.times || tt.times == 1 && math.Abs(b.at(40)-hub.Y) > 0.5 {
			t.Errorf("%v: bracket %+v, want it %d times the view's scale, and level with the hub at %.1f", tt.size, b, tt.times, hub.Y)
		}
	}
}

// TestMarksOfCurves: the selected car's curve and the reference's have marks at every 25 mm,
// or inch, and no other has any.
func TestMarksOfCurves(t *testing.T) {
	for _, tt := range []struct {
		inches bool
		want   int
	}{{false, 5}, {true, 5}} { // +-60 mm is +-2.36 in
		desk := templateDesk(t, "double-wishbone-rack", tt.inches)
		desk.Select(3)
		desk.View.Yardstick = 1
		s := NewStage()
		out := s.Draw(desk, Size{900, 640})
		for i := range desk.Session.Cars().List {
			marks := 0
			for _, c := range out.Path(s.charts[solver.Left].slots.marks[i]) {
				if c == 'M' {
					marks++
				}
			}
			want := 0
			if i == 3 || i == 1 {
				want = tt.want
			}
			if marks != want {
				t.Errorf("in inches %t: curve %d has %d marks, want %d", tt.inches, i, marks, want)
			}
		}
		if got := out.Class(); got != "drawing foremost3 reference1 s3" {
			t.Errorf("the picture's classes are %q", got)
		}
	}
}

// TestBallsOfUnlikeSides: where a car changes a part of each side by itself, so do the
// handles, and each has the focus of the keyboard.
func TestBallsOfUnlikeSides(t *testing.T) {
	desk := unlikeDesk(t)
	s := NewStage()
	s.Draw(desk, Size{1000, 700})
	found := 0
	for _, h := range s.Handles() {
		if want := "tieRodOuterHeight@" + h.Side.String(); h.Kind == PartHandle && h.Moves[0].Key == want {
			found++
			if !h.Focus {
				t.Errorf("the %s ball cannot be reached by the keyboard", h.Side)
			}
			if err := desk.Set(want, -3, ""); err != nil {
				t.Error(err)
			}
		}
	}
	s.Draw(desk, Size{1000, 700})
	if err := s.Err(); found < 2 || err != nil {
		t.Errorf("%d handles move a side by itself, want both; then %v", found, err)
	}
}

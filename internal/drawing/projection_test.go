package drawing

import (
	"math"
	"strings"
	"testing"

	"toewright/internal/drawing/dxf"
	"toewright/internal/study"
)

// viewsOf returns where each view of a block stands on the paper, by the marks of the ball in
// the order in which the views are drawn.
func viewsOf(list []dxf.Entity, lies string) (at [3]dxf.Point) {
	order, i := map[string][3]int{
		study.ThirdAngle: {mainView, planView, endView}, study.FirstAngle: {mainView, endView, planView},
	}[lies], 0
	for _, e := range list {
		if m, ok := e.(dxf.Mark); ok && m.Layer == original {
			at[order[i]] = m.At
			i++
		}
	}
	return at
}

// TestProjection: on the sheet and in the file at 1:1, of both arms of every suspension, the
// view from above stands over that from outside in third angle and under it in first, both at
// the same place across; that from the end stands at the end it is seen from in third angle
// and at the other in first, at the same height (ISO 5456-2, from memory).
func TestProjection(t *testing.T) {
	for name, d := range armStudies() {
		for _, lies := range Projections {
			sign := map[string]float64{study.ThirdAngle: 1, study.FirstAngle: -1}[lies]
			parts, err := partsOf(t.Context(), d, &Options{Candidate: "part", Projection: lies})
			if err != nil {
				t.Fatalf("%s: %v", name, err)
			}
			for _, p := range parts {
				list, _, _ := p.block(1, "")
				at := viewsOf(list, lies)
				main, plan, end := at[mainView], at[planView], at[endView]
				if !(math.Abs(main.X-plan.X) < 1e-9 && math.Abs(main.Y-end.Y) < 1e-9) {
					t.Errorf("%s, %s, %s: views at %v do not line up", name, p.Side, lies, at)
				}
				if !(sign*(plan.Y-main.Y) > 0) {
					t.Errorf("%s, %s, %s: from above at %v, from outside at %v", name, p.Side, lies, plan, main)
				}
				v := p.views(1)
				seen := v[endView].out()
				toward := seen.X*v[mainView].right.X + seen.Y*v[mainView].right.Y + seen.Z*v[mainView].right.Z
				if !(sign*toward*(end.X-main.X) > 0) {
					t.Errorf("%s, %s, %s: from the end at %v, from outside at %v, seen from %v", name, p.Side, lies, end, main, toward)
				}
			}
		}
	}
}

// TestProjectionSign: the sign's cone has its small end at the left, and what is seen from
// there stands there in third angle and at the right in first. The option goes before the
// study, and one that is none is refused by name.
func TestProjectionSign(t *testing.T) {
	d := armStudies()["strut-rack"]
	d.Arm.Projection = study.FirstAngle
	for asked, sign := range map[string]float64{"": -1, study.FirstAngle: -1, study.ThirdAngle: 1} {
		of, err := subjectOf(t.Context(), d, &Options{Candidate: "part", Projection: asked})
		if err != nil {
			t.Fatal(err)
		}
		s := &sheet{pen: &pen{}, subject: of}
		s.projection(0, 0)
		circle, cone := s.drawn[0].(dxf.Circle), s.drawn[2].(dxf.Polyline)
		if small := cone.Points[0]; !(sign*(small.X-circle.Centre.X) > 0) || !(cone.Points[1].X > small.X) {
			t.Errorf("%q: circles at %v, cone at %v", asked, circle.Centre, cone.Points)
		}
	}
	if _, err := partsOf(t.Context(), d, &Options{Projection: "second-angle"}); err == nil || !strings.Contains(err.Error(), "first-angle") {
		t.Errorf("second-angle gives %v", err)
	}
}

package engine

import (
	"context"
	"encoding/json"
	"math"
	"strings"
	"testing"

	"toewright/internal/study"
	"toewright/solver"
)

// loaded returns a template with springs, a stud and load cases. Springs stand where
// one stands in most cars.
func loaded(t *testing.T, template study.Template) *study.Document {
	t.Helper()
	d := template.Document()
	addSprings(t, d)
	wheel := 3000.0
	d.Loads = []study.LoadCase{
		{Name: "parking", Left: &study.WheelLoad{Force: study.Vec3{0, 0, wheel}, Moment: &study.Vec3{0, 0, 140}}, Right: &study.WheelLoad{Force: study.Vec3{0, 0, wheel}, Moment: &study.Vec3{0, 0, -140}}},
		{Name: "kerb", Travel: d.Units.FromMillimetres(15), Left: &study.WheelLoad{Force: study.Vec3{-2.6 * wheel, -0.4 * wheel, 2 * wheel}, At: "wheel-centre"}},
	}
	if s := d.Steering; s != nil && s.Type != study.NoGear {
		d.Loads[1].Steer = d.Units.FromMillimetres(8)
		if s.Type == study.CentreLink {
			d.Loads[1].Steer = 3
		}
	}
	if d.TieRod == nil {
		d.TieRod = &study.TieRod{}
	}
	if d.TieRod.OuterBall == nil {
		d.TieRod.OuterBall = &study.BallJoint{Cone: 25}
	}
	d.TieRod.OuterBall.Stud = &study.Stud{Diameter: d.Units.FromMillimetres(14), Height: d.Units.FromMillimetres(22)}
	return d
}

// addSprings states a spring on the lower arm, the knuckle of a multi-link or the beam
// of a solid axle; a strut has its own.
func addSprings(t *testing.T, d *study.Document) {
	t.Helper()
	design, err := d.Design()
	if err != nil {
		t.Fatal(err)
	}
	on := map[string]string{"double-wishbone": "lower-arm", "swing-arm": "lower-arm", "multi-link": "knuckle", "solid-axle": ""}
	carrier, ok := on[d.Suspension.Type]
	if !ok {
		return
	}
	spring := func(s solver.Side) *study.Damper {
		w := design.Points[s][roleIndex(design.Kind, solver.WheelCentreRole)]
		at := func(x, part, z float64) study.Vec3 {
			mm := d.Units.FromMillimetres
			return study.Vec3{mm(w.X + x), mm(part * w.Y), mm(w.Z + z)}
		}
		return &study.Damper{Body: at(-10, 0.62, 380), Moving: at(15, 0.78, -90), On: carrier}
	}
	d.Suspension.Left.Spring = spring(solver.Left)
	if r := d.Suspension.Right; r != nil {
		r.Spring = spring(solver.Right)
	}
}

func loadsOf(t *testing.T, d *study.Document) []Load {
	t.Helper()
	r, err := Loads(context.Background(), d, LoadsOptions{})
	if err != nil {
		t.Fatal(err)
	}
	return r.Loads
}

// alikeLoads is how well two ways to state one car agree, as a share of a force.
const alikeLoads = 1e-7

func sameLoads(t *testing.T, where string, a, b []Load) {
	t.Helper()
	if len(a) != len(b) {
		t.Fatalf("%s: %d figures, want %d", where, len(b), len(a))
	}
	for i := range a {
		var x, y map[string]any
		for _, v := range []struct {
			from Load
			to   *map[string]any
		}{{a[i], &x}, {b[i], &y}} {
			data, err := json.Marshal(v.from)
			if err != nil {
				t.Fatal(err)
			}
			if err := json.Unmarshal(data, v.to); err != nil {
				t.Fatal(err)
			}
		}
		sameFigures(t, where+", "+a[i].Candidate+", "+a[i].Case+", "+a[i].Side, x, y)
	}
}

func sameFigures(t *testing.T, where string, a, b any) {
	t.Helper()
	switch x := a.(type) {
	case map[string]any:
		y, _ := b.(map[string]any)
		for key := range x {
			sameFigures(t, where+" "+key, x[key], y[key])
		}
	case []any:
		y, _ := b.([]any)
		for i := range x {
			sameFigures(t, where, x[i], y[i])
		}
	case float64:
		y, ok := b.(float64)
		if !ok || !(math.Abs(x-y) <= alikeLoads*math.Max(1000, math.Abs(x))) {
			t.Errorf("%s: %v, want %v", where, b, x)
		}
	default:
		if a != b {
			t.Errorf("%s: %v, want %v", where, b, a)
		}
	}
}

// TestLoadsOfEveryTemplate: each car of each template answers, a figure for each case
// and side; the right side written out is the mirrored one; the car in the other unit
// of length has the same forces; and a mirrored load on a mirrored car is the other
// wheel's.
func TestLoadsOfEveryTemplate(t *testing.T) {
	for _, template := range study.Templates() {
		t.Run(template.Key, func(t *testing.T) {
			d := loaded(t, template)
			got := loadsOf(t, d)
			if want := 2 * len(d.Loads) * (1 + len(d.Candidates)); len(got) != want {
				t.Fatalf("%d figures, want %d", len(got), want)
			}
			for i := range got {
				l := &got[i]
				if l.Stud == nil || (l.Arm != nil) != (d.Suspension.Left.ArmFace != nil) || (l.DragLink != nil) != (d.Suspension.Common != nil) {
					t.Errorf("%s, %s, %s: figures that are stated are missing, or others there: %+v", l.Candidate, l.Case, l.Side, *l)
				}
				idle := l.Case == "kerb" && l.Side == "right" && d.Suspension.Common == nil
				if idle != (l.Ratio == nil) || idle && (l.TieRod != 0 || l.Spring != 0 || l.Stud.Bending != 0) || !idle && !(l.Spring != 0) {
					t.Errorf("%s, %s, %s: %+v, idle %t", l.Candidate, l.Case, l.Side, *l, idle)
				}
				if l.Candidate == study.BaseName && l.Ratio != nil && *l.Ratio != 1 {
					t.Errorf("ratio of the base car %g", *l.Ratio)
				}
			}
			sameLoads(t, "in the other unit", got, loadsOf(t, inOtherUnits(t, d)))
			sameLoads(t, "on another datum", got, loadsOf(t, onAnotherDatum(d)))
			if d.Suspension.Right == nil {
				out := d.Clone()
				right := d.Suspension.Left.Mirrored()
				out.Suspension.Right = &right
				sameLoads(t, "right side written out", got, loadsOf(t, out))
			}
		})
	}
}

// onAnotherDatum returns the study with all that stands on the car moved forward and up,
// the ground but for the tyre's radius with it.
func onAnotherDatum(d *study.Document) *study.Document {
	c := d.Clone()
	c.Vehicle.TyreRadius = d.TyreRadius()
	by := study.Vec3{d.Units.FromMillimetres(130), 0, d.Units.FromMillimetres(-42)}
	for _, p := range c.Points() {
		for k := range by {
			p.Place[k] += by[k]
		}
		if err := c.SetPoint(p); err != nil {
			panic(err)
		}
	}
	c.ShiftMounts(by)
	return c
}

// inOtherUnits returns the study with its lengths in the other unit.
func inOtherUnits(t *testing.T, d *study.Document) *study.Document {
	t.Helper()
	to := study.Inch
	if d.Units == study.Inch {
		to = study.Millimetre
	}
	c := d.Clone()
	by := func(x float64) float64 { return d.Units.Convert(x, to) }
	vec := func(v *study.Vec3) { *v = study.Vec3{by(v[0]), by(v[1]), by(v[2])} }
	corner := func(k *study.Corner) {
		for name, v := range k.Points {
			vec(&v)
			k.Points[name] = v
		}
		for _, m := range []*study.Damper{k.Spring, k.Damper} {
			if m != nil {
				vec(&m.Body)
				vec(&m.Moving)
			}
		}
		if f := k.ArmFace; f != nil {
			vec(&f.Point)
			for i := range f.Bolts {
				vec(&f.Bolts[i])
			}
		}
	}
	corner(&c.Suspension.Left)
	if c.Suspension.Right != nil {
		corner(c.Suspension.Right)
	}
	for name, v := range c.Suspension.Common {
		vec(&v)
		c.Suspension.Common[name] = v
	}
	if s := c.Steering; s != nil {
		for _, p := range []*study.Vec3{s.PitmanPivot, s.PitmanBall, s.IdlerPivot, s.IdlerBall} {
			if p != nil {
				vec(p)
			}
		}
	}
	c.Units = to
	c.Vehicle.Wheelbase, c.Vehicle.TyreRadius = by(d.Vehicle.Wheelbase), by(d.Vehicle.TyreRadius)
	s := c.TieRod.OuterBall.Stud
	s.Diameter, s.Height = by(s.Diameter), by(s.Height)
	for i := range c.Loads {
		l := &c.Loads[i]
		l.Travel = by(l.Travel)
		if c.Steering != nil && c.Steering.Type == study.Rack {
			l.Steer = by(l.Steer)
		}
	}
	design, err := d.Design()
	if err != nil {
		t.Fatal(err)
	}
	for i := range c.Candidates {
		for key, v := range c.Candidates[i].Changes {
			p, _, err := solver.FindParameter(design, key)
			if err != nil {
				t.Fatal(err)
			}
			if p.Quantity == solver.LengthQuantity {
				c.Candidates[i].Changes[key] = by(v)
			}
		}
	}
	return c
}

// TestLoadsMirrored: on a symmetric car straight ahead, mirrored loads give mirrored
// forces: all alike but the twist, whose sign is the right hand's.
func TestLoadsMirrored(t *testing.T) {
	for _, template := range study.Templates() {
		d := loaded(t, template)
		if d.Suspension.Right != nil {
			continue
		}
		d.Loads = d.Loads[:1]
		got := loadsOf(t, d)
		for i := 0; i < len(got); i += 2 {
			l, r := got[i], got[i+1]
			if l.Arm != nil {
				twisted := *r.Arm
				twisted.Twist = -twisted.Twist
				r.Arm = &twisted
			}
			r.Side = l.Side
			sameLoads(t, template.Key, []Load{l}, []Load{r})
		}
	}
}

func TestLoadsRefuse(t *testing.T) {
	const spring = `"spring": {"body": [0, 480, 620], "moving": [0, 600, 200], "on": "lower-arm"},`
	ask := func(t *testing.T, corner, loads string) error {
		text := strings.Replace(saloon, `"wheelCentre"`, corner+`"wheelCentre"`, 1)
		d, err := study.Decode([]byte(strings.Replace(text, "MORE", loads, 1)))
		if err != nil {
			t.Fatal(err)
		}
		_, err = Loads(context.Background(), d, LoadsOptions{})
		return err
	}
	const bump = `"loads": [{"name": "bump", "right": {"force": [0, 0, 9000]}}],`
	for _, tt := range []struct {
		name, corner, loads string
		fault               Fault
		key, part           string
	}{
		{"no loads", spring, "", Wrong, "loads", "none given"},
		{"a name twice", spring, `"loads": [{"name": "a"}, {"name": "a"}],`, Wrong, "loads.1.name", "is taken"},
		{"no spring", "", bump, Wrong, "suspension.left.spring", "state its two mounts"},
		{"bolts in one place", spring + `"armFace": {"point": [-30, 680, 250], "normal": [-1, 0, 0], "bolts": [[-30, 680, 230], [-30, 680, 230]]},`, bump,
			Wrong, "suspension.left.armFace.bolts", "one place"},
		{"out of reach", spring, `"loads": [{"name": "deep", "travel": 900, "right": {"force": [0, 0, 9000]}}],`, Unsolvable, "", `base car, case "deep": right side: travel 900 mm cannot be reached`},
		{"spring along the hinge", `"spring": {"body": [150, 350, 195], "moving": [-150, 355, 185], "on": "lower-arm"},`, bump,
			Wrong, "suspension.left.spring", "does not hold"},
	} {
		t.Run(tt.name, func(t *testing.T) { wantError(t, ask(t, tt.corner, tt.loads), tt.fault, tt.key, tt.part) })
	}
	if err := ask(t, "", `"loads": [{"name": "nothing"}],`); err != nil {
		t.Errorf("idle wheels want no spring: %v", err)
	}
}

// TestLoadsOnTheWrongArm: a spring, or the damper that serves for it, on an arm that the
// suspension has not is named by its place in the file.
func TestLoadsOnTheWrongArm(t *testing.T) {
	for key, on := range map[string]string{"multi-link-rack": "lower-arm", "swing-arm-rack": "upper-arm", "strut-rack": "upper-arm"} {
		template := study.Template{Key: key}
		d := loaded(t, template)
		mounts := &study.Damper{Body: study.Vec3{0, 450, 800}, Moving: study.Vec3{0, 600, 250}, On: on}
		d.Suspension.Left.Spring = mounts
		_, err := Loads(context.Background(), d, LoadsOptions{})
		wantError(t, err, Wrong, "suspension.left.spring", on)
		d.Suspension.Left.Spring, d.Suspension.Left.Damper = nil, mounts
		_, err = Loads(context.Background(), d, LoadsOptions{})
		wantError(t, err, Wrong, "suspension.left.damper", on)
	}
}

// TestLoadsByTheDamper: where no spring is stated the damper's line serves as one.
func TestLoadsByTheDamper(t *testing.T) {
	template := study.Template{Key: "double-wishbone-centre-link"}
	d := loaded(t, template)
	want := loadsOf(t, d)
	d.Suspension.Left.Damper, d.Suspension.Left.Spring = d.Suspension.Left.Spring, nil
	sameLoads(t, "by the damper", want, loadsOf(t, d))
}

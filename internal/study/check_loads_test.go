package study

import (
	"strings"
	"testing"
)

// loadedText is the car of wishboneText with loads, a stud and a spring.
func loadedText() string {
	s := strings.Replace(wishboneText, `"tyreRadius": 310`, `"tyreRadius": 310, "wheelLoad": 3000`, 1)
	s = strings.Replace(s, `"camber": -0.5`, `"camber": -0.5, "spring": {"body": [0, 480, 620], "moving": [0, 600, 200], "on": "lower-arm"}`, 1)
	return strings.Replace(s, `"travel"`, `"tieRod": {"outerBall": {"cone": 25, "stud": {"diameter": 14, "height": 22}}},
  "loads": [{"name": "kerb", "left": {"force": [-8000, 0, 9000], "at": "wheel-centre"}}, {"name": "parking", "right": {"force": [0, 0, 3000]}}],
  "travel"`, 1)
}

func TestCheckLoads(t *testing.T) {
	if got := Check(decode(t, []byte(loadedText()))); len(got) > 0 {
		t.Fatalf("the sound car: %+v", got)
	}
	for _, tt := range []struct{ name, old, new, path, message string }{
		{"kilograms", `"wheelLoad": 3000`, `"wheelLoad": 305`, "vehicle.wheelLoad", "305 N"},
		{"stud in inches", `"diameter": 14`, `"diameter": 0.55`, "tieRod.outerBall.stud.diameter", "0.55 mm"},
		{"tall stud", `"height": 22`, `"height": 220`, "tieRod.outerBall.stud.height", "220 mm"},
		{"one name twice", `"parking"`, `"kerb"`, "loads.1.name", "is taken"},
		{"nothing on it", `"right": {"force": [0, 0, 3000]}`, `"travel": 5`, "loads.1", "nothing on either wheel"},
		{"no spring", `"spring"`, `"damper": {"body": [0, 480, 620], "moving": [0, 600, 200], "on": "lower-arm"}, "spring"`, "", ""},
	} {
		t.Run(tt.name, func(t *testing.T) {
			text := strings.Replace(loadedText(), tt.old, tt.new, 1)
			got := Check(decode(t, []byte(text)))
			if tt.path == "" {
				if len(got) > 0 {
					t.Errorf("Check = %+v, want nothing", got)
				}
				return
			}
			if len(got) != 1 || got[0].Path != tt.path || !strings.Contains(got[0].Message, tt.message) {
				t.Errorf("Check = %+v, want one on %s with %q", got, tt.path, tt.message)
			}
		})
	}
}

// TestCheckNamesTheMissingSpring of every template: by the place in the file where it
// belongs, and none where a strut or a damper serves.
func TestCheckNamesTheMissingSpring(t *testing.T) {
	for _, tt := range Templates() {
		d := tt.Document()
		d.Suspension.Left.Spring, d.Suspension.Left.Damper = nil, nil
		if r := d.Suspension.Right; r != nil {
			r.Spring, r.Damper = nil, nil
		}
		d.Loads = []LoadCase{{Name: "bump", Left: &WheelLoad{Force: Vec3{0, 0, 9000}}}}
		want := map[string]bool{"suspension.left.spring": true}
		switch d.Suspension.Type {
		case "strut":
			want = map[string]bool{}
		case "solid-axle":
			want = map[string]bool{"suspension.springs.left": true, "suspension.springs.right": true}
		}
		for _, f := range Check(d) {
			if strings.Contains(f.Path, "spring") {
				if !want[f.Path] {
					t.Errorf("%s: finding on %s, want those on %v", tt.Key, f.Path, want)
				}
				delete(want, f.Path)
			}
		}
		if len(want) > 0 {
			t.Errorf("%s: no finding on %v", tt.Key, want)
		}
	}
}

// TestSpringsOfAnAxle come back as they were read, and mirrored where a corner is.
func TestSpringsOfAnAxle(t *testing.T) {
	template := Template{Key: "solid-axle-rack"}
	text := strings.Replace(string(template.Text()), `"dragLink"`,
		`"springs": {"left": {"axle": [10, 500, 450], "body": [0, 470, 800]}, "right": {"axle": [10, -500, 450], "body": [0, -470, 800]}}, "dragLink"`, 1)
	d := decode(t, []byte(text))
	if s := d.SpringOf(Right); s == nil || s.Moving != (Vec3{10, -500, 450}) || s.Body != (Vec3{0, -470, 800}) {
		t.Errorf("right spring %+v", s)
	}
	again, err := Encode(d)
	if err != nil {
		t.Fatal(err)
	}
	if s := decode(t, again).SpringOf(Left); s == nil || s.Moving != (Vec3{10, 500, 450}) {
		t.Errorf("left spring after writing %+v", s)
	}
	w := decode(t, []byte(loadedText()))
	if s := w.SpringOf(Right); s == nil || s.Moving != (Vec3{0, -600, 200}) || s.On != "lower-arm" {
		t.Errorf("mirrored spring %+v", s)
	}
}

func TestDecodeRefusesLoads(t *testing.T) {
	for _, tt := range []struct{ name, old, new, part string }{
		{"force of two numbers", `[0, 0, 3000]`, `[0, 3000]`, "loads.1.right.force"},
		{"no force", `"force": [0, 0, 3000]`, `"at": "contact"`, "loads.1.right.force"},
		{"unknown place", `"at": "wheel-centre"`, `"at": "hub"`, "loads.0.left.at"},
		{"unknown key", `"name": "kerb"`, `"name": "kerb", "heave": 3`, "heave"},
		{"stud of the inner ball", `"outerBall"`, `"innerBall"`, "tieRod.innerBall.stud"},
		{"spring on the beam", `"on": "lower-arm"`, `"on": "axle"`, "suspension.left.spring.on"},
	} {
		_, err := Decode([]byte(strings.Replace(loadedText(), tt.old, tt.new, 1)))
		if err == nil || !strings.Contains(err.Error(), tt.part) {
			t.Errorf("%s: error %v, want one with %q", tt.name, err, tt.part)
		}
	}
}

package study

import (
	"testing"

	"github.com/google/go-cmp/cmp"
)

func TestParseCatalogue(t *testing.T) {
	const text = `name,Slot,Price,tieRodOuterHeight,steeringArmLength (in),camber,excludes,note
"Arm, long",arm,"1,5",-6,1/2,,Block | Ball,forged
Ball,ball joint,,,,-1.5,,
`
	want := []Part{
		{
			Slot: "arm", Name: "Arm, long", Price: 1.5, Excludes: []string{"Block", "Ball"}, Note: "forged",
			Changes: Changes{"tieRodOuterHeight": -6, "steeringArmLength": 12.7},
		},
		{Slot: "ball joint", Name: "Ball", Changes: Changes{"camber": -1.5}},
	}
	got, err := ParseCatalogue([]byte(text), templateDoc(t, "strut-rack"))
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Errorf("ParseCatalogue (-want +got):\n%s", diff)
	}
}

func TestParseCatalogueErrors(t *testing.T) {
	tests := []struct{ name, text, want string }{
		{"empty", "\n", "line 1: table is empty"},
		{"no slot", "name,price\nArm,5\n", "line 1: want columns slot and name in the header"},
		{"unknown column", "slot,name,prize\narm,Arm,5\n", "line 1, column 3 (prize): unknown column; did you mean price?"},
		{"unknown parameter", "slot,name,upperFrontPivot.z\narm,Arm,5\n", "line 1, column 3 (upperFrontPivot.z): is not a parameter of a strut; the nearest is lowerFrontPivot.z"},
		{"part without a slot", "slot,name\n,Arm\n", "line 2, column 1 (slot): the part has no slot"},
		{"part without a name", "slot,name\narm,\n", "line 2, column 2 (name): the part has no name"},
		{"price is not a number", "slot,name,price\narm,Arm,free\n", "line 2, column 3 (price): \"free\" is not a number"},
		{"negative price", "slot,name,price\narm,Arm,-5\n", "line 2, column 3 (price): a price of -5 is none, want 0 or more"},
		{"change is not a length", "slot,name,steeringArmLength\narm,Arm,long\n", "line 2, column 3 (steeringArmLength): \"long\" is not a length; type a number like 12.7, or 1/2 in"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			_, err := ParseCatalogue([]byte(tt.text), templateDoc(t, "strut-rack"))
			if err == nil || err.Error() != tt.want {
				t.Errorf("ParseCatalogue = %v, want %s", err, tt.want)
			}
		})
	}
}

func TestCatalogueRoundTrip(t *testing.T) {
	for _, template := range Templates() {
		t.Run(template.Key, func(t *testing.T) {
			d := template.Document()
			got, err := ParseCatalogue(FormatCatalogue(d.Catalogue), d)
			if err != nil {
				t.Fatal(err)
			}
			if diff := cmp.Diff(d.Catalogue, got); diff != "" {
				t.Errorf("ParseCatalogue(FormatCatalogue) (-want +got):\n%s", diff)
			}
		})
	}
}

// FuzzParseCatalogue checks that no table makes the parser panic, and that every
// part can be fitted to the car it was read for.
func FuzzParseCatalogue(f *testing.F) {
	d := templateDoc(f, "strut-rack")
	f.Add(FormatCatalogue(d.Catalogue))
	f.Add([]byte("slot;name;caster\na;b;4,5\n"))
	f.Fuzz(func(t *testing.T, data []byte) {
		parts, err := ParseCatalogue(data, d)
		if err != nil {
			return
		}
		c := d.Clone()
		c.Catalogue = parts
		if p := c.firstProblem(); p != nil {
			t.Fatalf("%s: %s", p.path, p.message)
		}
	})
}

package study

import (
	"strings"
	"testing"
)

// TestDecimalCommas are taken as such or refused by line and column, in every table: no
// number is ever split, and no table of whole numbers refused that can be read one way.
func TestDecimalCommas(t *testing.T) {
	d := templateDoc(t, "strut-rack")
	points := func(text string) error { _, err := ParsePoints([]byte(text), d); return err }
	readings := func(text string) error { _, err := ParseReadings([]byte(text), d, Reading{Base: 381}); return err }
	parts := func(text string) error { _, err := ParseCatalogue([]byte(text), d); return err }
	for _, tt := range []struct {
		name  string
		parse func(string) error
		text  string
		want  string // empty where the table is taken
	}{
		{"more cells than columns", readings, "travel,left\n-60,6,72\n", "line 2, column 3: "},
		{"an empty cell too many", readings, "travel,left,right\n-60,6,72,\n", "line 2, column 2: "},
		{"a half with a nought before it", readings, "travel,left,right\n-60,6,7\n-40,6,05\n", "line 3, column 3: "},
		{"5,00", readings, "travel,left,right\n-60,5,00\n", "line 2, column 3: "},
		{"no header, so that one side fits as two", readings, "-60,6,72\n0,0,0\n60,7,28\n", "line 1, column 3: "},
		{"lines of unlike length", readings, "travel,left,right\n-60,6,72\n0,0\n", "line 2, column 3: "},
		{"points", points, "point,x,y,z\nlowerBallJoint,5,690,05\n", "line 2, column 4: "},
		{"a price", parts, "slot,name,price,tieRodOuterHeight\narm,Arm,2,05\n", "line 2, column 4: "},

		{"quoted thousands of a point", points, "point,x,y,z\nlowerBallJoint,5,\"1,690\",185\n", "line 2, column 3 (y): "},
		{"quoted thousands of a price", parts, "slot,name,price\narm,Arm,\"1,200\"\n", "line 2, column 3 (price): "},
		{"pasted thousands beside decimal points", parts, "slot\tname\tprice\narm\tArm\t1,200\narm\tOther\t950.50\n", "line 2, column 3 (price): "},
		{"pasted thousands beside hundreds", parts, "slot\tname\tprice\narm\tArm\t950\narm\tOther\t-1,200\n", "line 3, column 3 (price): "},

		{"three decimals", readings, "travel;left\n50;1,234\n0;0\n-50;−2,310\n", ""},
		{"three decimals beside whole numbers", points, "point;x;y;z\nlowerBallJoint;155;690,250;185\ntieRodInner;-146,125;374;236\n", ""},
		{"pasted, three decimals beside two", points, "point\tx\ty\tz\nlowerBallJoint\t155\t690,25\t185\ntieRodInner\t-146,125\t374\t236\n", ""},
		{"quoted, three decimals beside one", points, "point,x,y,z\nlowerBallJoint,\"5,5\",\"690,250\",185\n", ""},
		{"four digits and three decimals", points, "point;x;y;z\nlowerBallJoint;-1234,500;690,250;0,185\n", ""},
		{"quoted decimals", points, "point,x,y,z\nlowerBallJoint,\"5,5\",\"690,25\",\"0,185\"\n", ""},
		{"a name of thousands", parts, "slot\tname\tprice\narm\t1,200\t950\n", ""},
		{"whole numbers under a header", readings, "travel,left,right\n-60,6,7\n0,0,0\n60,2,4\n", ""},
		{"two whole numbers", readings, "travel,left\n5,5\n-5,3\n", ""},
		{"two whole numbers without a header", readings, "5,5\n-5,3\n", ""},
		{"a sign is no decimal's", readings, "-60,6,-7\n0,0,0\n60,-6,-7\n", ""},
		{"a point elsewhere", readings, "-60,6,7\n0,0,0\n60,6.5,7\n", ""},
		{"semicolons", readings, "travel;left\n5,5;6,72\n", ""},
		{"tabs", readings, "5,5\t6,05\t7\n", ""},
		{"a semicolon in a remark", readings, "# cold; in the yard\ntravel,left\n5,5\n", ""},
		{"a semicolon in a note", parts, "slot,name,price,note\narm,Arm,2,\"steel; black\"\n", ""},
		{"names in digits", parts, "slot,name,price\n3,05,2\n", ""},
	} {
		err := tt.parse(tt.text)
		if tt.want == "" && err != nil || tt.want != "" && (err == nil || !strings.HasPrefix(err.Error(), tt.want)) {
			t.Errorf("%s: %v, want %q", tt.name, err, tt.want)
		}
		if err != nil && !strings.Contains(err.Error(), "semicolons or tabs") && !strings.Contains(err.Error(), "without a comma, or with a point") {
			t.Errorf("%s: %v does not say how to write it", tt.name, err)
		}
	}
}

// TestPointsKept says of every point of every car whether the table places it, and where
// it does not, that it stays.
func TestPointsKept(t *testing.T) {
	for name, data := range studyFiles(t) {
		d := decode(t, data)
		all := d.Points()
		for n := range all {
			header := "point,side,x,y,z\n"
			lines := strings.SplitAfterN(string(FormatPoints(d)), "\n", n+3)
			got, err := ParsePoints([]byte(header+strings.Join(lines[1:n+2], "")), d)
			if err != nil {
				t.Fatalf("%s: %v", name, err)
			}
			if len(got.Taken) != n+1 || len(got.Kept) != len(all)-n-1 || got.Taken[n].Line != n+2 {
				t.Errorf("%s: of %d points, %d lines: %d taken, %d kept, the last of line %d", name, len(all), n+1, len(got.Taken), len(got.Kept), got.Taken[n].Line)
			}
		}
	}
}

// TestPointsKeptByMirror checks that the points of a right side that was the mirror image
// are named, once the table states one of them.
func TestPointsKeptByMirror(t *testing.T) {
	d := templateDoc(t, "strut-rack")
	got, err := ParsePoints([]byte("point,x,y,z\nlowerBallJoint,5,-690,185\n"), d)
	if err != nil {
		t.Fatal(err)
	}
	mirrored := 0
	for _, p := range got.Kept {
		if p.Mirrored != (p.Side == Right) {
			t.Errorf("%s %s: mirrored is %t", p.Side, p.Name, p.Mirrored)
		}
		if p.Mirrored {
			mirrored++
		}
	}
	if want := len(d.Suspension.Left.Points) - 1; mirrored != want {
		t.Errorf("%d points mirrored, want %d", mirrored, want)
	}
}

package study

import (
	"testing"

	"github.com/google/go-cmp/cmp"
)

// templateDoc returns a fresh template.
func templateDoc(t testing.TB, key string) *Document {
	t.Helper()
	return Template{Key: key}.Document()
}

func TestParsePoints(t *testing.T) {
	tests := []struct {
		name, template, text string
		want                 []PlacedPoint
	}{
		{
			"keys", "strut-rack", "point,x,y,z\nlowerBallJoint,5,690,185\n",
			[]PlacedPoint{{"lowerBallJoint", Left, Vec3{5, 690, 185}}},
		},
		{
			"labels, other order, semicolons and decimal commas", "strut-rack",
			"Z (mm);Y (mm);X (mm);Name\r\n185,5;690;-5;Lower ball joint\r\n",
			[]PlacedPoint{{"lowerBallJoint", Left, Vec3{-5, 690, 185.5}}},
		},
		{
			"tabs without a header", "strut-rack", "strut top\t-30\t580\t840\n\nLOWER_BALL_JOINT\t5\t690\t185\n",
			[]PlacedPoint{{"strutTop", Left, Vec3{-30, 580, 840}}, {"lowerBallJoint", Left, Vec3{5, 690, 185}}},
		},
		{
			"inches among millimetres", "strut-rack", "point,x [in],y [in],z (mm)\nlowerBallJoint,1/2,27.5,185\n",
			[]PlacedPoint{{"lowerBallJoint", Left, Vec3{12.7, 698.5, 185}}},
		},
		{
			"inch mark", "strut-rack", "point,x,y,z\nlowerBallJoint,1/2\",690,185\n",
			[]PlacedPoint{{"lowerBallJoint", Left, Vec3{12.7, 690, 185}}},
		},
		{
			"unit in the cell", "strut-rack", "point,x,y,z\nlowerBallJoint,0.5 in,690,185\n",
			[]PlacedPoint{{"lowerBallJoint", Left, Vec3{12.7, 690, 185}}},
		},
		{
			"millimetres for a car in inches", "double-wishbone-centre-link", "point,x mm,y mm,z mm\npitmanBall,-127,254,50.8\n",
			[]PlacedPoint{{"pitmanBall", "", Vec3{-5, 10, 2}}},
		},
		{
			"side by the sign of y", "strut-rack", "point,x,y,z\nlowerBallJoint,5,-690,185\n",
			[]PlacedPoint{{"lowerBallJoint", Right, Vec3{5, -690, 185}}},
		},
		{
			"side by column", "strut-rack", "side,point,x,y,z\nR,tieRodInner,-150,-2,240\nleft,tieRodInner,-150,-1,240\n",
			[]PlacedPoint{{"tieRodInner", Right, Vec3{-150, -2, 240}}, {"tieRodInner", Left, Vec3{-150, -1, 240}}},
		},
		{
			"side by name", "strut-rack", "point,x,y,z\nlowerBallJoint@right,5,-690,185\nLeft lower ball joint,5,690,185\n",
			[]PlacedPoint{{"lowerBallJoint", Right, Vec3{5, -690, 185}}, {"lowerBallJoint", Left, Vec3{5, 690, 185}}},
		},
		{
			"solid axle", "solid-axle-rack", "point,x,y,z\nkingpins.right.0,-16,-606,486\nlinks.3.inner,140,-470,530\n",
			[]PlacedPoint{{"kingpins.0", Right, Vec3{-16, -606, 486}}, {"links.3.inner", "", Vec3{140, -470, 530}}},
		},
		{
			"remarks", "strut-rack", "# taped on the shop floor\npoint,x,y,z\nlowerBallJoint,5,690,185\n# end\n",
			[]PlacedPoint{{"lowerBallJoint", Left, Vec3{5, 690, 185}}},
		},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			got, err := ParsePoints([]byte(tt.text), templateDoc(t, tt.template))
			if err != nil {
				t.Fatal(err)
			}
			if diff := cmp.Diff(tt.want, got.Points()); diff != "" {
				t.Errorf("ParsePoints (-want +got):\n%s", diff)
			}
		})
	}
}

func TestParsePointsErrors(t *testing.T) {
	tests := []struct{ name, text, want string }{
		{"empty", " \n\n", "line 1: table is empty"},
		{"unknown point", "point,x,y,z\nlowerBallJoint,5,690,185\nlowerBallJont,5,690,185\n", "line 3, column 1 (point): \"lowerBallJont\" is not a point of this car; did you mean lower ball joint? (it has: lower arm, front pivot; lower arm, rear pivot; lower ball joint; strut top mount; point low on the strut's axis; tie rod, outer ball; tie rod, inner ball; wheel centre)"},
		{"point of another car", "name,x,y,z\nupperBallJoint,5,690,185\n", "line 2, column 1 (name): \"upperBallJoint\" is not a point of this car; did you mean lower ball joint? (it has: lower arm, front pivot; lower arm, rear pivot; lower ball joint; strut top mount; point low on the strut's axis; tie rod, outer ball; tie rod, inner ball; wheel centre)"},
		{"no number", "point,x,y,z\nlowerBallJoint,5,abc,185\n", "line 2, column 3 (y): \"abc\" is not a length; type a number like 12.7, or 1/2 in"},
		{"empty cell", "point,x,y,z\nlowerBallJoint,5,,185\n", "line 2, column 3 (y): \"\" is not a length; type a number like 12.7, or 1/2 in"},
		{"too few cells", "point,x,y,z\nlowerBallJoint,5,690\n", "line 2, column 4 (z): \"\" is not a length; type a number like 12.7, or 1/2 in"},
		{"unknown side", "point,side,x,y,z\nlowerBallJoint,middle,5,690,185\n", "line 2, column 2 (side): \"middle\" is not a side, want left or right"},
		{"point twice", "point,x,y,z\nlowerBallJoint,5,690,185\nLower ball joint,6,690,185\n", "line 3, column 1 (point): the left lower ball joint stands twice"},
		{"slip of a sign", "point,x,y,z\nlowerBallJoint,5,690,185\nstrutTop,-30,-580,840\ntieRodInner,-150,330,240\n", "line 3, column 3 (y): -580 makes this a point of the right side, while most stand on the other: correct the sign, or state the side in a column side"},
		{"slip of a sign on the right", "point,x,y,z\nlowerBallJoint,5,-690,185\nstrutTop,-30,580,840\ntieRodInner,-150,-330,240\n", "line 3, column 3 (y): 580 makes this a point of the left side, while most stand on the other: correct the sign, or state the side in a column side"},
		{"column of another table", "point,x,y,z,camber\nlowerBallJoint,5,690,185,1\n", "line 1, column 5 (camber): no column of a table of points; want point, side, x, y, z"},
		{"column misspelt", "point,x,y,z,sied\nlowerBallJoint,5,690,185,R\n", "line 1, column 5 (sied): no column of a table of points; want point, side, x, y, z; did you mean side?"},
		{"column in two units", "point,x (mm),y,z,x (in)\nlowerBallJoint,5,690,185,1\n", "line 1, column 5 (x (in)): the column stands twice"},
		{"column under two names", "point,x,y,z,name\nlowerBallJoint,5,690,185,Ball\n", "line 1, column 5 (name): the column stands twice; the other is \"point\""},
		{"no column of names", "x,y,z\n5,690,185\n", "line 1: want a column point in the header"},
		{"point of a gear that the car has not", "point,x,y,z\npitmanBall,5,690,185\n", "line 2, column 1 (point): \"pitmanBall\" is not a point of this car (it has: lower arm, front pivot; lower arm, rear pivot; lower ball joint; strut top mount; point low on the strut's axis; tie rod, outer ball; tie rod, inner ball; wheel centre)"},
		{"quote left open", "point,x,y,z\n\"lowerBallJoint,5,690,185\n", "line 2, column 1 (point): \"lowerBallJoint,5,690,185\" is not a point of this car; did you mean lower ball joint? (it has: lower arm, front pivot; lower arm, rear pivot; lower ball joint; strut top mount; point low on the strut's axis; tie rod, outer ball; tie rod, inner ball; wheel centre)"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			_, err := ParsePoints([]byte(tt.text), templateDoc(t, "strut-rack"))
			if err == nil || err.Error() != tt.want {
				t.Errorf("ParsePoints = %v, want %s", err, tt.want)
			}
		})
	}
}

// TestPointsRoundTrip checks that every point of every car comes back from its
// table.
func TestPointsRoundTrip(t *testing.T) {
	for name, data := range studyFiles(t) {
		t.Run(name, func(t *testing.T) {
			d := decode(t, data)
			got, err := ParsePoints(FormatPoints(d), d)
			if err != nil {
				t.Fatal(err)
			}
			if diff := cmp.Diff(d.Points(), got.Points()); diff != "" {
				t.Errorf("ParsePoints(FormatPoints) (-want +got):\n%s", diff)
			}
		})
	}
}

// FuzzParsePoints checks that no table makes the parser panic.
func FuzzParsePoints(f *testing.F) {
	d := templateDoc(f, "strut-rack")
	f.Add(FormatPoints(d))
	f.Add([]byte("point;x (in);y_mm;z\nstrutTop;1/2;\"2,5\";-3\n"))
	f.Add([]byte("\"\n"))
	f.Fuzz(func(t *testing.T, data []byte) {
		points, err := ParsePoints(data, d)
		if err != nil {
			return
		}
		c := d.Clone()
		for _, p := range points.Points() {
			if err := c.SetPoint(p); err != nil {
				t.Fatalf("SetPoint(%+v): %v", p, err)
			}
		}
	})
}

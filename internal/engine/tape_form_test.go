package engine

import (
	"math"
	"path/filepath"
	"testing"
)

// formShare is how well the spread that a form promises is what taking its measures leaves: the
// toe's derivatives are those of where the car was located each time.
const formShare = 0.02

// TestFormKeepsWhatWasMeasured takes a form's measures on simulated cars that were half measured,
// on templates that are not them, as the cars have them: the toe is then as well known as the form
// said, and no more measures are doubted than before. A measure counted as the template has it
// would contradict the tape.
func TestFormKeepsWhatWasMeasured(t *testing.T) {
	files, err := filepath.Glob("../../testdata/taped/*.json")
	if err != nil || len(files) < 5 {
		t.Fatalf("%d jobs, %v", len(files), err)
	}
	for _, file := range files {
		t.Run(filepath.Base(file), func(t *testing.T) {
			d, _ := tapedJob(t, file)
			if m := d.Measured; len(m.Lengths) > 12 {
				m.Lengths = m.Lengths[:12]
			}
			before, err := Locate(t.Context(), d, LocateOptions{})
			if err != nil {
				t.Fatal(err)
			}
			most := 8
			form, err := TapeForm(t.Context(), d, TapeFormOptions{Measures: &most})
			if err != nil || len(form) != most {
				t.Fatalf("%d measures, %v", len(form), err)
			}
			for i := range form {
				takeAsLocated(d, before, &form[i].NextTape)
			}
			after, err := Locate(t.Context(), d, LocateOptions{})
			if err != nil {
				t.Fatal(err)
			}
			if len(after.Outliers) > len(before.Outliers) {
				t.Errorf("%d measures are doubted, were %d: %+v", len(after.Outliers), len(before.Outliers), after.Outliers)
			}
			left := 0.0
			for _, toe := range after.Toe {
				left = math.Max(left, math.Max(float64(toe.Bump.SD), float64(toe.Droop.SD)))
			}
			if want := form[most-1].ToeSD; !(math.Abs(left-want) <= formShare*want) {
				t.Errorf("toe is known to %.5f deg once all was taken, the form says %.5f", left, want)
			}
		})
	}
}

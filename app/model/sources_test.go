package model_test

import (
	"strconv"
	"strings"
	"testing"

	"toewright/app/model"
	"toewright/internal/study"
)

// begun returns a session on a new study of every kind of car.
func begun(t *testing.T) map[string]*model.Session {
	t.Helper()
	all := map[string]*model.Session{}
	for _, template := range study.Templates() {
		all[template.Key] = model.Open(template.Start())
	}
	return all
}

// mustDo fails where an edit does.
func mustDo(t *testing.T, err error) {
	t.Helper()
	if err != nil {
		t.Fatal(err)
	}
}

// TestNewStudyIsTypedOver types over every point of a new study of every kind, as it
// stands or otherwise, and its static angles and axes are kept as they stand: then no part
// of the page says template of what decides the curve.
func TestNewStudyIsTypedOver(t *testing.T) {
	for key, s := range begun(t) {
		t.Run(key, func(t *testing.T) {
			if s.Cars().Err != nil || s.Cars().Base().Err != nil {
				t.Fatal("a new study cannot be solved")
			}
			for i, p := range allRows(s.Document()) {
				for axis := range p.Place {
					if model.ShortWarning(s.Document()) == "" {
						t.Fatalf("no warning, and %s is yet to be typed", p.Name)
					}
					if tag := model.SourceTag(s.Document(), p.Path); !strings.Contains(tag, "template") {
						t.Fatalf("%s, of which axis %d is yet to be typed, says %q", p.Name, axis, tag)
					}
					p.Place[axis] += float64(i%2) / 8 // every other one is what stood there
					mustDo(t, s.SetPlace(p, axis, p.Place[axis]))
				}
				if tag := model.SourceTag(s.Document(), p.Path); tag != "" {
					t.Fatalf("%s, which was typed, says %q", p.Name, tag)
				}
			}
			for _, path := range []string{"left.toe", "left.camber", "toe", "camber", "steering"} {
				if s.Document().IsBorrowed(path) {
					if model.ShortWarning(s.Document()) == "" {
						t.Fatalf("no warning, and %s is the template's", path)
					}
					mustDo(t, s.Own(path, path))
				}
			}
			if w := model.ShortWarning(s.Document()); w != "" {
				t.Errorf("all is typed, and yet: %s (%v)", w, s.Document().Sources)
			}
			s.Undo()
			if model.ShortWarning(s.Document()) == "" {
				t.Error("no warning after undo")
			}
		})
	}
}

// TestSourcesOfEdits checks what edits of the whole car make of where its numbers come
// from.
func TestSourcesOfEdits(t *testing.T) {
	for key, s := range begun(t) {
		t.Run(key, func(t *testing.T) {
			d := s.Document()
			p := d.Points()[0]
			before := d.Borrowed()
			mustDo(t, s.Shift(study.Vec3{1, 0, 2}))
			if b := s.Document().Borrowed(); b.Decisive != before.Decisive {
				t.Errorf("%d borrowed numbers after a shift onto another datum, want %d", b.Decisive, before.Decisive)
			}
			mustDo(t, s.TakePoints([]study.PlacedPoint{p}))
			if got := s.Document().Sources.At(s.Document().SourcePath(p) + ".y"); got != study.FromFile {
				t.Errorf("a point of a table is from %q", got)
			}
			if d.Suspension.Common == nil {
				mustDo(t, s.OwnRight())
				if got := s.Document().Sources.At("right." + p.Name + ".y"); got != study.FromFile {
					t.Errorf("its twin of the new right side is from %q", got)
				}
			}
			for _, q := range model.PointRows(s.Document(), study.Right) {
				if q.Name == p.Name {
					mustDo(t, s.SetPlace(q, 2, q.Place[2]+1))
				}
			}
			mustDo(t, s.MirrorLeft())
			if got := s.Document().Sources.At(s.Document().SourcePath(p) + ".z"); got != study.FromTyping {
				t.Errorf("a left coordinate mirrored from one that was typed is from %q", got)
			}
			mustDo(t, s.MirrorRight())
			if _, err := study.Encode(s.Document()); err != nil {
				t.Fatal(err)
			}
		})
	}
}

// TestUsualValuesSaySo: what is put into a study unasked is marked until it is typed, kept
// or taken out.
func TestUsualValuesSaySo(t *testing.T) {
	for key, s := range begun(t) {
		t.Run(key, func(t *testing.T) {
			mustDo(t, s.AddUsualTolerances())
			n := len(s.Document().Tolerances)
			if b := model.BorrowedOf(s.Document(), "tolerances"); b.From != n || b.String() == "" {
				t.Fatalf("%+v of %d usual tolerances", b, n)
			}
			mustDo(t, s.SetTolerance(0, func(k *study.Tolerance) { k.PlusMinus *= 2 }))
			mustDo(t, s.Own("tolerances.1", "a tolerance"))
			if b := model.BorrowedOf(s.Document(), "tolerances"); b.From != n-2 {
				t.Errorf("%+v after one was typed and one kept", b)
			}
			mustDo(t, s.RemoveBorrowed("tolerances"))
			if got := len(s.Document().Tolerances); got != 2 {
				t.Errorf("%d tolerances are left, want 2", got)
			}
			mustDo(t, s.AddPart(study.Part{Slot: "s", Name: "n", Price: 3}))
			if b := model.BorrowedOf(s.Document(), "catalogue"); b.From != 0 {
				t.Errorf("a part that was typed: %+v", b)
			}

			if _, err := s.AddRun(); err != nil {
				t.Fatal(err)
			}
			x := 0.25
			mustDo(t, s.AddReading(model.Runs(s.Document())[0], &model.ReadingRow{Travel: 10, Left: &x, Right: &x}))
			if b := model.BorrowedOf(s.Document(), "readings"); b.From != 0 {
				t.Errorf("a run that was read, with a usual gauge: %+v", b)
			}
			mustDo(t, s.RemoveBorrowed("readings"))
			if runs := model.Runs(s.Document()); len(runs) != 1 {
				t.Fatalf("%d runs are left of one that was read", len(runs))
			}
			gauge := func(i int, name string) study.Source {
				return s.Document().Sources.At("readings." + string(rune('0'+i)) + "." + name)
			}
			if gauge(0, "base") != study.FromTemplate || gauge(1, "repeatability") != study.FromTemplate {
				t.Errorf("the gauge of a first run: %v", s.Document().Sources)
			}
			mustDo(t, s.SetRun(model.Runs(s.Document())[0], "gauge", func(r *study.Reading) { r.Base += 10 }))
			if _, err := s.AddRun(); err != nil {
				t.Fatal(err)
			}
			if gauge(2, "base") != study.FromTyping || gauge(3, "repeatability") != study.FromTemplate {
				t.Errorf("the gauge of the run after: %v", s.Document().Sources)
			}
		})
	}
}

// TestTableOfReadingsSaysItsGauge: what a table states of the gauge is the file's, be it
// the usual value, what it does not state is nobody's.
func TestTableOfReadingsSaysItsGauge(t *testing.T) {
	for key, s := range begun(t) {
		t.Run(key, func(t *testing.T) {
			base := s.UsualReading().Base
			mustDo(t, s.TakeReadings([]byte("travel,left,right,base\n-1,0.1,0.1,"+strconv.FormatFloat(base, 'g', -1, 64)+"\n1,0.2,0.2,"+strconv.FormatFloat(base, 'g', -1, 64)+"\n")))
			if got := s.Document().Sources.At("readings.1.base"); got != study.FromFile {
				t.Errorf("a base that was stated is from %q", got)
			}
			if got := s.Document().Sources.At("readings.1.repeatability"); got != study.FromTemplate {
				t.Errorf("a repeatability that was not is from %q", got)
			}
			if got := s.Document().Sources.At("readings.0.values.1.1"); got != study.FromFile {
				t.Errorf("a reading is from %q", got)
			}
			if use := model.FitUseOf(s.Document(), nil, nil); use != model.FitMissing {
				t.Errorf("own readings: %q", use)
			}
		})
	}
}

// TestKeptThroughClone: sources stay through edits of what has none.
func TestKeptThroughClone(t *testing.T) {
	s := template(t, "double-wishbone-rack")
	mustDo(t, s.SetDisplay("units", func(v *study.Display) { v.Units = study.Inch }))
	if _, err := s.AddCandidate(study.Candidate{Name: "n"}); err != nil {
		t.Fatal(err)
	}
	if !s.Document().Borrowed().All() {
		t.Error("the example's numbers are no longer a template's")
	}
}

// allRows lists the rows of both sides, those of neither once.
func allRows(d *study.Document) (rows []model.PointRow) {
	for _, side := range []study.Side{study.Left, study.Right} {
		for _, p := range model.PointRows(d, side) {
			if p.Side == side || side == study.Left {
				rows = append(rows, p)
			}
		}
	}
	return rows
}

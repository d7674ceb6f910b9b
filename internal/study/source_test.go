package study

import (
	"maps"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// numbersOf lists the paths of a document's numbers in the order of the file.
func numbersOf(t *testing.T, d *Document) (paths []string) {
	t.Helper()
	tree, err := newNumberTree(d)
	if err != nil {
		t.Fatal(err)
	}
	tree.each(func(path string, _ float64) { paths = append(paths, path) })
	return paths
}

// changed returns the document after an edit, with its changes attributed.
func changed(d *Document, source Source, edit func(*Document)) *Document {
	next := d.Clone()
	edit(next)
	next.Attribute(d, source)
	return next
}

// kept checks that a document is the same after it was written and read.
func kept(t *testing.T, d *Document) {
	t.Helper()
	text, err := Encode(d)
	if err != nil {
		t.Fatal(err)
	}
	again, err := Decode(text)
	if err != nil {
		t.Fatalf("%v\n%v", err, d.Sources)
	}
	if diff := cmp.Diff(d.Sources, again.Sources); diff != "" {
		t.Errorf("sources after the file was read (-before +after):\n%s", diff)
	}
}

// starts are a new study of each kind of car, one with its right side written out.
func starts(t *testing.T) map[string]*Document {
	t.Helper()
	all := map[string]*Document{}
	for _, template := range Templates() {
		all[template.Key] = template.Start()
	}
	own := templateDoc(t, "strut-centre-link").Geometry()
	all["right side of its own"] = changed(own, FromTyping, func(d *Document) { d.stateRight() })
	return all
}

// TestWarningLastsAsLongAsABorrowedNumber replaces every point of every kind of car, one
// coordinate after the other, and its static angles and axes: the warning stands until the
// last of them is the car's own, and not longer.
func TestWarningLastsAsLongAsABorrowedNumber(t *testing.T) {
	for key, d := range starts(t) {
		t.Run(key, func(t *testing.T) {
			total := d.Borrowed()
			if !total.All() || !strings.Contains(total.Warning(), "Invented example") {
				t.Fatalf("a new study: %+v, want nothing to be the car's own", total)
			}
			left := total.Decisive
			step := func(numbers int, edit func(*Document)) {
				t.Helper()
				d, left = changed(d, FromTyping, edit), left-numbers
				b := d.Borrowed()
				if b.Decisive != left || b.Deciding != total.Deciding || (b.Warning() != "") != (left > 0) {
					t.Fatalf("%d of %d borrowed, want %d; warning %q", b.Decisive, b.Deciding, left, b.Warning())
				}
				kept(t, d)
			}
			for _, p := range d.Points() {
				for axis := range p.Place {
					p.Place[axis] += 0.25
					step(1, func(d *Document) {
						if err := d.SetPoint(p); err != nil {
							t.Fatal(err)
						}
					})
				}
			}
			for i, c := range []*Corner{&d.Suspension.Left, d.Suspension.Right} {
				if c == nil || i == 1 && d.Suspension.Common != nil {
					continue // a solid axle's angles are one number each
				}
				step(1, func(d *Document) { both(d, i, func(c *Corner) { c.Toe += 0.05 }) })
				step(1, func(d *Document) { both(d, i, func(c *Corner) { c.Camber += 0.05 }) })
			}
			for _, key := range axesOf(d) {
				step(3, func(d *Document) { setAxis(d, key, Vec3{0.3, 0.2, 0.9}) })
			}
			if left != 0 {
				t.Errorf("%d numbers were not reached: %v", left, d.Borrowed().Places)
			}
		})
	}
}

// gearAxes lists the directions in which a gear moves or turns.
func gearAxes(s *Steering) []gearVec {
	return []gearVec{{"axis", &s.Axis}, {"pitmanAxis", &s.PitmanAxis}, {"idlerAxis", &s.IdlerAxis}}
}

// axesOf lists the axes that a gear states.
func axesOf(d *Document) (keys []string) {
	if d.Steering == nil {
		return nil
	}
	for _, v := range gearAxes(d.Steering) {
		if *v.value != nil {
			keys = append(keys, v.key)
		}
	}
	return keys
}

// setAxis sets an axis of the gear.
func setAxis(d *Document, key string, axis Vec3) {
	for _, v := range gearAxes(d.Steering) {
		if v.key == key {
			*v.value = &axis
		}
	}
}

// both changes a corner, or of a solid axle both.
func both(d *Document, i int, change func(*Corner)) {
	if i == 0 || d.Suspension.Common != nil {
		change(&d.Suspension.Left)
	}
	if i == 1 || d.Suspension.Common != nil {
		change(d.Suspension.Right)
	}
}

// TestNamesSayNothing checks that words in names and notes neither make a study a
// template nor end that.
func TestNamesSayNothing(t *testing.T) {
	d := decode(t, []byte(smallText))
	d.Name, d.Notes = "Invented by a template", "invented"
	if b := d.Borrowed(); b.Warning() != "" || b.Remark() != "" {
		t.Errorf("a study of its own: %q, %q", b.Warning(), b.Remark())
	}
	d = templateDoc(t, "strut-rack")
	d.Name, d.Notes = "My car", ""
	if b := d.Borrowed(); !b.All() {
		t.Errorf("an example under another name: %+v", b)
	}
}

func TestWarningNamesPlaces(t *testing.T) {
	d := decode(t, []byte(smallText))
	d.Sources = Sources{"left.tieRodOuter.z": FromTemplate, "left.toe": FromTemplate, "tolerances": FromTemplate, "catalogue.0": FromTemplate}
	b := d.Borrowed()
	if want := "2 of the 26 numbers that the toe curve depends on are a template's, no car was measured for them: tie rod, outer ball; static toe. Make no part by it."; b.Warning() != want {
		t.Errorf("got %q", b.Warning())
	}
	if want := "Not this car's own either, but a template's or usual values: tolerances; parts."; b.Remark() != want {
		t.Errorf("got %q", b.Remark())
	}
}

// TestStartIsGeometry checks what a new study of every kind brings, and that the numbers
// are all there is.
func TestStartIsGeometry(t *testing.T) {
	for _, template := range Templates() {
		t.Run(template.Key, func(t *testing.T) {
			d, example := template.Start(), template.Document()
			want := &Document{
				Format: Format, Name: template.Title, Units: example.Units, Display: example.Display,
				Vehicle:    Vehicle{TyreRadius: example.Vehicle.TyreRadius, Axle: example.Vehicle.Axle},
				Suspension: d.Suspension, Steering: d.Steering, Sources: Sources{AnyNumber: FromTemplate},
			}
			if diff := cmp.Diff(want, d); diff != "" {
				t.Errorf("more than the car (-want +got):\n%s", diff)
			}
			if diff := cmp.Diff(example.Points(), d.Points()); diff != "" {
				t.Errorf("points (-example +new):\n%s", diff)
			}
			for _, path := range numbersOf(t, d) {
				if strings.Contains(path, "armFace") || strings.Contains(path, "damper") || strings.Contains(path, "stud") || strings.Contains(path, "perTurn") || strings.Contains(path, "lock") {
					t.Errorf("%s came along", path)
				}
			}
			if err := d.ReadyToSweep(); err != nil {
				t.Error(err)
			}
			if found := Check(d); len(found) > 0 {
				t.Errorf("findings: %+v", found)
			}
			for side, curve := range sweep(t, d, Candidate{Name: BaseName}) {
				if !curve.Reach.Whole() {
					t.Errorf("side %d reaches %+v, want the whole window", side, curve.Reach)
				}
			}
			kept(t, d)
		})
	}
}

// TestSourcesFollow checks that sources go with their numbers through edits of every
// kind.
func TestSourcesFollow(t *testing.T) {
	lists := func() *Document { d := templateDoc(t, "double-wishbone-rack"); return d }
	tests := []struct {
		name   string
		from   *Document
		source Source
		edit   func(*Document)
		want   map[string]Source
	}{
		{"one coordinate", lists(), FromTyping, func(d *Document) { d.SetPoint(PlacedPoint{"tieRodOuter", Left, Vec3{-132, 680, 240}}) },
			map[string]Source{"left.tieRodOuter.x": FromTemplate, "left.tieRodOuter.y": FromTyping, "left.tieRodOuter.z": FromTemplate}},
		{"right side stated", lists(), FromTyping, func(d *Document) { d.SetPoint(PlacedPoint{"tieRodOuter", Right, Vec3{-132, -686, 241}}) },
			map[string]Source{"right.tieRodOuter.y": FromTemplate, "right.tieRodOuter.z": FromTyping, "right.toe": FromTemplate, "left.tieRodOuter.z": FromTemplate}},
		{"another datum", lists(), "", func(d *Document) { d.SetPoint(PlacedPoint{"tieRodOuter", Left, Vec3{-133, 687, 241}}) },
			map[string]Source{"left.tieRodOuter.x": FromTemplate, "left.tieRodOuter.z": FromTemplate}},
		{"a table", lists(), FromFile, func(d *Document) { d.SetPoint(PlacedPoint{"tieRodOuter", Left, Vec3{1, 2, 3}}) },
			map[string]Source{"left.tieRodOuter.x": FromFile, "left.tieRodInner.x": FromTemplate}},
		{"wheelbase", lists(), FromTyping, func(d *Document) { d.Vehicle.Wheelbase = 2500 },
			map[string]Source{"vehicle.wheelbase": FromTyping, "vehicle.tyreRadius": FromTemplate}},
		{"a part removed", lists(), FromTyping, func(d *Document) { d.Catalogue = slices.Delete(d.Catalogue, 0, 1) },
			map[string]Source{"catalogue.0.price": FromTemplate, "catalogue.7.price": FromTemplate}},
		{"a part added", lists(), FromTyping, func(d *Document) {
			d.Catalogue = append([]Part{{Slot: "s", Name: "n", Price: 3}}, d.Catalogue...)
		},
			map[string]Source{"catalogue.0.price": FromTyping, "catalogue.1.price": FromTemplate, "catalogue.9.price": FromTemplate}},
		{"a price changed", lists(), FromTyping, func(d *Document) { d.Catalogue[2].Price = 1 },
			map[string]Source{"catalogue.1.price": FromTemplate, "catalogue.2.price": FromTyping, "catalogue.2.changes.tieRodOuterHeight": FromTemplate}},
		{"a reading added", lists(), FromTyping, func(d *Document) {
			d.Readings[0].Values = slices.Insert(d.Readings[0].Values, 1, [2]float64{-55, 6})
		},
			map[string]Source{"readings.0.values.0.1": FromTemplate, "readings.0.values.1.1": FromTyping, "readings.0.values.2.1": FromTemplate}},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			d := changed(tt.from, tt.source, tt.edit)
			for path, want := range tt.want {
				if got := d.Sources.At(path); got != want {
					t.Errorf("%s is from %q, want %q", path, got, want)
				}
				if !slices.Contains(numbersOf(t, d), path) {
					t.Errorf("there is no %s", path)
				}
			}
			kept(t, d)
		})
	}
}

// TestSolidAxleAngles checks the one number that becomes two, for the side that changed.
func TestSolidAxleAngles(t *testing.T) {
	d := templateDoc(t, "solid-axle-rack").Geometry()
	next := changed(d, FromTyping, func(d *Document) { d.Suspension.Right.Toe += 0.1 })
	if l, r := next.Sources.At("toe.left"), next.Sources.At("toe.right"); l != FromTemplate || r != FromTyping {
		t.Errorf("toe of left from %q, of right from %q", l, r)
	}
	kept(t, next)
}

// TestMirrorSources checks that a mirrored side says what its twin says.
func TestMirrorSources(t *testing.T) {
	for key, d := range starts(t) {
		if d.Suspension.Right == nil {
			d.stateRight()
		}
		var of Side
		for _, of = range sides {
			from := d.Clone()
			from.SetSource(from.SourcePath(PlacedPoint{Name: d.corners()[0].names()[0], Side: of}), FromTape)
			before := maps.Clone(from.Sources)
			from.MirrorSources(of)
			n := 0
			for _, path := range numbersOf(t, from) {
				if from.Sources.At(path) == FromTape {
					n++
				}
			}
			if n != 6 {
				t.Errorf("%s, from the %s: %d coordinates are from the tape, want 3 on each side (%v, then %v)", key, of, n, before, from.Sources)
			}
		}
	}
}

// TestEncodeDropsDangling checks that a file can be opened whatever was taken out of the
// study by one who knows nothing of sources.
func TestEncodeDropsDangling(t *testing.T) {
	d := templateDoc(t, "double-wishbone-rack")
	d.Sources = Sources{"readings.3": FromTyping, "left.toe": FromTyping, "tolerances.6.plusMinus": FromTemplate}
	d.Readings, d.Tolerances = d.Readings[:1], nil
	text, err := Encode(d)
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(Sources{"left.toe": FromTyping}, decode(t, text).Sources); diff != "" {
		t.Errorf("(-want +got):\n%s", diff)
	}
}

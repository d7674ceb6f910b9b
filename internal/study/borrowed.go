package study

import (
	"cmp"
	"slices"
	"strings"

	"toewright/solver"
)

// Borrowed are the numbers of a study that are a template's: no car was measured for them.
type Borrowed struct {
	// Deciding is how many numbers the toe curve depends on: coordinates of hardpoints,
	// static toe and camber, the gear's places and axes. It is not counted where nothing
	// is a template's.
	Deciding int
	Decisive int      // Decisive is how many of those are a template's.
	Places   []string // Places are what the latter belong to, as a reader calls it: "lower ball joint, left".
	Others   []string // Others are what the template's other numbers belong to: "wheelbase", "tolerances".
}

// All reports whether nothing that the toe curve depends on is the car's own.
func (b Borrowed) All() bool { return b.Decisive > 0 && b.Decisive == b.Deciding }

// Borrowed tells which numbers are a template's.
func (d *Document) Borrowed() Borrowed {
	var b Borrowed
	if !d.Sources.has(FromTemplate) {
		return b
	}
	t, err := newNumberTree(d)
	if err != nil {
		return b
	}
	labels := d.PointLabels()
	t.each(func(path string, _ float64) {
		key, side := keyOf(path)
		decisive, template := isDecisive(labels, key), d.Sources.At(path) == FromTemplate
		if decisive {
			b.Deciding++
		}
		switch name := d.placeName(labels, key, side); {
		case !template:
		case decisive:
			b.Decisive++
			b.Places = appendNew(b.Places, name)
		default:
			b.Others = appendNew(b.Others, name)
		}
	})
	return b
}

// BorrowedPaths lists the paths of the numbers that are a template's, in the order of the
// file.
func (d *Document) BorrowedPaths() (paths []string) {
	if !d.Sources.has(FromTemplate) {
		return nil
	}
	if t, err := newNumberTree(d); err == nil {
		t.each(func(path string, _ float64) {
			if d.Sources.At(path) == FromTemplate {
				paths = append(paths, path)
			}
		})
	}
	return paths
}

// IsBorrowed reports whether any number at or under a path is a template's.
func (d *Document) IsBorrowed(path string) bool {
	return slices.ContainsFunc(d.BorrowedPaths(), func(p string) bool { return Within(p, path) })
}

// appendNew appends a text that a list does not have.
func appendNew(list []string, text string) []string {
	if slices.Contains(list, text) {
		return list
	}
	return append(list, text)
}

// deciding are the keys of what a toe curve depends on besides hardpoints.
var deciding = []string{"toe", "camber", "studAxis", "studAxes", "steering.axis", "steering.pitmanAxis", "steering.idlerAxis"}

// isDecisive reports whether a toe curve depends on what stands at a key, as [keyOf] has it.
func isDecisive(labels map[string]string, key string) bool {
	for k := key; k != ""; k = above(k) {
		if _, ok := labels[strings.TrimPrefix(k, "steering.")]; ok || slices.Contains(deciding, k) {
			return true
		}
	}
	return false
}

// keyOf returns a number's path without its side, and the side, "" where it has none.
func keyOf(path string) (key string, side Side) {
	keys := strings.Split(path, ".")
	i := slices.IndexFunc(keys, func(key string) bool { return key == string(Left) || key == string(Right) })
	if i < 0 {
		return path, ""
	}
	side = Side(keys[i])
	return strings.Join(slices.Delete(keys, i, i+1), "."), side
}

// PointLabels returns what the hardpoints of the car are called, by their names.
func (d *Document) PointLabels() map[string]string {
	labels := map[string]string{}
	kind, err := solver.KindByName(d.Suspension.Type)
	if err != nil {
		return labels
	}
	for _, h := range slices.Concat(kind.SidePoints, kind.CommonPoints, solver.GearPoints) {
		labels[h.Name] = h.Label
	}
	return labels
}

// PointName returns what a point is called in a sentence: "left lower ball joint".
func (d *Document) PointName(p PlacedPoint) string {
	return p.Side.prefix() + strings.ToLower(cmp.Or(d.PointLabels()[p.Name], p.Name))
}

// numberNames are what numbers are called that belong to no hardpoint, by the key that
// their path has.
var numberNames = map[string]string{
	"toe": "static toe", "camber": "static camber", "studAxis": "stud axis", "studAxes": "stud axis",
	"axis": "rack's axis", "pitmanAxis": "pitman axis", "idlerAxis": "idler axis",
	"damper": "damper", "spring": "spring", "springs": "springs", "wheelLoad": "wheel load", "loads": "loads", "stiffness": "stiffness", "measured": "what the tape measured", "armFace": "face of the arm", "arm": "arm as a part", "perTurn": "steering by turn of the wheel", "lock": "full lock",
	"wheelbase": "wheelbase", "tyreRadius": "tyre radius", "corneringStiffness": "cornering stiffness",
	"tieRod": "tie rod", "tolerances": "tolerances", "readings": "readings", "series": "cars of the series", "catalogue": "parts",
}

// placeName returns what the place of a number is called, with its side where both are
// stated.
func (d *Document) placeName(labels map[string]string, key string, side Side) string {
	keys := strings.Split(key, ".")
	for n := 1; n <= len(keys); n++ {
		name, ok := labels[strings.TrimPrefix(strings.Join(keys[:n], "."), "steering.")]
		if !ok {
			name, ok = numberNames[keys[n-1]]
		}
		switch {
		case ok && side != "" && d.Suspension.Right != nil:
			return name + ", " + string(side)
		case ok:
			return name
		}
	}
	return key
}

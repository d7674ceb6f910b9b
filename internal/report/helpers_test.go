package report

import (
	"html"
	"regexp"
	"strings"
	"testing"

	"toewright/internal/study"
)

// car returns the study of an invented car by the key of its template.
func car(t *testing.T, key string) *study.Document {
	t.Helper()
	return study.Template{Key: key}.Document()
}

// twoSided returns a study whose left and right arms differ, with a target, toe as a
// length and long names: the most that a sheet has to hold.
func twoSided(t *testing.T) *study.Document {
	t.Helper()
	d := car(t, "double-wishbone-rack")
	right := d.Suspension.Left.Mirrored()
	right.Points["tieRodOuter"] = study.Vec3{-132, -686, 243}
	d.Suspension.Right = &right
	d.Candidates = []study.Candidate{{
		Name: "Own arms", Note: "Forged arms, one for each side.",
		Changes: study.Changes{
			"tieRodOuterHeight@left": -11.9, "tieRodOuterHeight@right": -14.5,
			"steeringArmLength": -6, "steeringArmOffset": 4,
		},
	}}
	d.Search.Target = [][2]float64{{-60, 0.1}, {0, 0}, {60, -0.2}}
	d.Display = &study.Display{Toe: "indicators", Base: 300}
	return d
}

// inInches returns a study that is shown in fractions of an inch.
func inInches(t *testing.T) *study.Document {
	t.Helper()
	d := car(t, "strut-rack")
	d.Display = &study.Display{Units: study.Inch, Fraction: study.UsualFraction, Toe: "plate", Base: 381}
	return d
}

// fewCars keeps the tests quick: what they look at does not hang on the number.
const fewCars = 200

func gathered(t *testing.T, d *study.Document, o Options) *Sheet {
	t.Helper()
	if o.Cars == nil {
		o.Cars = new(fewCars)
	}
	s, err := Gather(t.Context(), d, o)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func written(t *testing.T, s *Sheet) string {
	t.Helper()
	var b strings.Builder
	if err := Write(&b, s); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

var (
	rowPattern  = regexp.MustCompile(`(?s)<tr[^>]*>(.*?)</tr>`)
	cellPattern = regexp.MustCompile(`(?s)<t[hd][^>]*>(.*?)</t[hd]>`)
	tagPattern  = regexp.MustCompile(`<[^>]*>`)
)

// cells returns the rows of the first table of a class, each cell as its reader sees
// it.
func cells(t *testing.T, page, class string) [][]string {
	t.Helper()
	_, rest, ok := strings.Cut(page, `<table class="`+class+`">`)
	if !ok {
		t.Fatalf("no table of class %s", class)
	}
	table, _, _ := strings.Cut(rest, "</table>")
	var rows [][]string
	for _, row := range rowPattern.FindAllStringSubmatch(table, -1) {
		var list []string
		for _, cell := range cellPattern.FindAllStringSubmatch(row[1], -1) {
			list = append(list, seen(cell[1]))
		}
		rows = append(rows, list)
	}
	return rows
}

// seen returns what a reader sees of a piece of a page.
func seen(markup string) string {
	return strings.TrimSpace(html.UnescapeString(tagPattern.ReplaceAllString(markup, "")))
}

package model

import (
	"fmt"
	"strings"

	"toewright/internal/study"
)

// PointOrigins says of each point of a car where a table leaves it: placed by which line,
// or kept, and then from where. The document is the one that the table was read for.
func PointOrigins(d *study.Document, t *study.PointTable) []string {
	var said []string
	taken := make([]string, len(t.Taken))
	for i, p := range t.Taken {
		taken[i] = fmt.Sprintf("%s (line %d)", d.PointName(p.PlacedPoint), p.Line)
	}
	if len(taken) > 0 {
		said = append(said, "Placed by the table: "+strings.Join(taken, "; ")+".")
	}
	if t.Datum != nil {
		n := NumbersOf(d)
		off := make([]string, len(t.Datum.Common))
		for i, c := range t.Datum.Common {
			off[i] = c.Name + " " + n.Length(d.Units.Millimetres(c.Off))
		}
		said = append(said, "Turned and moved so that its marks stand where the car's do; off by "+strings.Join(off, ", ")+".")
	}
	kept := map[string][]string{}
	var reasons []string
	for _, p := range t.Kept {
		why := keptWhy(d, p)
		if kept[why] == nil {
			reasons = append(reasons, why)
		}
		kept[why] = append(kept[why], d.PointName(p.PlacedPoint))
	}
	for _, why := range reasons {
		said = append(said, why+": "+strings.Join(kept[why], "; ")+".")
	}
	return said
}

// keptWhy says where a point is from that a table leaves as it stood.
func keptWhy(d *study.Document, p study.KeptPoint) string {
	if p.Mirrored {
		return "Not in the table, mirrored from the left"
	}
	switch tag := SourceTag(d, d.SourcePath(p.PlacedPoint)); tag {
	case "":
		return "Not in the table, kept as they stood"
	case sourceTags[study.FromTemplate]:
		return "Not in the table, still the template's"
	default:
		return "Not in the table, kept as they stood (" + tag + ")"
	}
}

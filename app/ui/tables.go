package ui

import (
	"fmt"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"toewright/app/model"
	"toewright/internal/number"
	"toewright/internal/study"
)

// pointsTable takes the points of the car from a table.
func pointsTable(b bench) app.UI {
	return &tableBox{
		Lasting: b.Lasting, ID: "points", Title: "Points from a table (CSV)",
		About: "Columns point, x, y, z and if wanted side, in any order, under a header that may state the unit: x (in). In axes of its own where rows named as three marks of By tape are among them.",
		Take: func(ctx app.Context, text []byte) ([]string, error) {
			table, err := study.ParsePoints(text, b.document())
			if err != nil {
				return nil, err
			}
			told := model.PointOrigins(b.document(), table)
			err = b.changeTold(ctx, fmt.Sprintf("Taken from the table: %s; %d kept as they stood.", number.Count(len(table.Taken), "point"), len(table.Kept)), func() error {
				return b.session().TakePoints(table.Points())
			})
			return told, err
		},
		Save: func() {
			download(fileName(b.document().Name)+"-points.csv", "text/csv", study.FormatPoints(b.document()))
		},
	}
}

// partsTable takes parts for the shelf from a table.
func partsTable(b bench) app.UI {
	return &tableBox{
		Lasting: b.Lasting, ID: "parts", Title: "Parts from a table (CSV)",
		About: "Columns slot, name, price, excludes, note, and one for each parameter that parts change, by its key such as tieRodOuterHeight (mm).",
		Take: func(ctx app.Context, text []byte) ([]string, error) {
			parts, err := study.ParseCatalogue(text, b.document())
			if err != nil {
				return nil, err
			}
			return nil, b.changeTold(ctx, "Taken from the table: "+number.Count(len(parts), "part")+".", func() error { return b.session().TakeParts(parts) })
		},
		Save: func() {
			download(fileName(b.document().Name)+"-parts.csv", "text/csv", study.FormatCatalogue(b.document().Catalogue))
		},
	}
}

// readingsTable takes readings of the gauge from a table.
func readingsTable(b bench) app.UI {
	return &tableBox{
		Lasting: b.Lasting, ID: "readings", Title: "Readings from a table (CSV)",
		About: "Columns travel, left, right, under a header or without one; gauge, base, repeatability, run and the keys of parameters that differed, if wanted.",
		Take: func(ctx app.Context, text []byte) ([]string, error) {
			return nil, b.changeTold(ctx, "The readings are taken from the table.", func() error { return b.session().TakeReadings(text) })
		},
		Save: func() {
			download(fileName(b.document().Name)+"-readings.csv", "text/csv", study.FormatReadings(b.document().Readings))
		},
	}
}

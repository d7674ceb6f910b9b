package study

import (
	"bytes"
	"encoding/csv"
	"strconv"
)

// FormatTable writes rows of cells set apart by commas.
func FormatTable(rows [][]string) []byte {
	var b bytes.Buffer
	w := csv.NewWriter(&b)
	if err := w.WriteAll(rows); err != nil {
		panic(err) // a Buffer takes everything
	}
	return b.Bytes()
}

// plainNumber writes the shortest decimal that reads back as x, without an exponent.
func plainNumber(x float64) string { return strconv.FormatFloat(x, 'f', -1, 64) }

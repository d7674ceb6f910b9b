package report

import (
	"crypto/sha256"
	_ "embed"
	"encoding/base64"

	"toewright/app/plot"
)

//go:embed sheet.css
var sheetStyle string

// pageSizes are the papers as CSS knows them.
var pageSizes = map[Paper]string{A4: "A4", Letter: "letter"}

// stylesheet returns all rules of a page: those of the paper, of the sheet and of its
// pictures.
func stylesheet(p Paper) string {
	return "\n@page{size:" + pageSizes[p] + " portrait}\n" + plot.Stylesheet(plot.White) + sheetStyle
}

// Policy returns the content policy of a page: its one stylesheet, by its hash, and
// nothing else. No script runs, nothing is loaded, nothing is sent.
func Policy(p Paper) string {
	sum := sha256.Sum256([]byte(stylesheet(p)))
	return "default-src 'none'; style-src 'sha256-" + base64.StdEncoding.EncodeToString(sum[:]) +
		"'; base-uri 'none'; form-action 'none'"
}

package report

import (
	_ "embed"

	"toewright/internal/plot"
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

// styleHashes are the SHA-256 of the stylesheets in base64. They stand here as computing
// them would bring all of Go's cryptography into the browser; the test of this file
// says what they must be.
var styleHashes = map[Paper]string{
	A4:     "fPmfE72j5/j1ZrgMWz+sG5O7ZuKv4xRP+MWpnLAJefE=",
	Letter: "KGnnoWOjh4F6d/cEWs7nKmk7tUv4eHFszo24yTXNq6A=",
}

// Policy returns the content policy of a page: its one stylesheet, by its hash, and
// nothing else. No script runs, nothing is loaded, nothing is sent.
func Policy(p Paper) string {
	return "default-src 'none'; style-src 'sha256-" + styleHashes[p] + "'; base-uri 'none'; form-action 'none'"
}

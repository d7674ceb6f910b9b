package ui

import (
	"github.com/maxence-charriere/go-app/v10/pkg/app"
)

// icon draws lines in a square of 24, in the colour of the text around. It says nothing
// that stands not beside it in words.
func icon(path string) app.UI {
	return app.Raw(`<svg class="icon" viewBox="0 0 24 24" width="24" height="24" aria-hidden="true"><path d="` + path + `"/></svg>`)
}

// The lines of the icons.
const (
	undoIcon = "M9 5L5 9l4 4M5 9h9a5 5 0 0 1 0 10h-3"
	redoIcon = "M15 5l4 4-4 4M19 9h-9a5 5 0 0 0 0 10h3"

	axleIcon  = "M4 5h4v14H4zM16 5h4v14h-4zM8 10h8M8 14h8"
	dialIcon  = "M5 10a7 7 0 1 0 14 0a7 7 0 1 0-14 0M12 10l3-4M12 17v4M9 21h6"
	curveIcon = "M12 2v20M7 3c0 9 10 9 10 18M9.5 12a2.5 2.5 0 1 0 5 0a2.5 2.5 0 1 0-5 0"
	tableIcon = "M4 5h16v14H4zM4 10h16M4 14.5h16M10 5v14M15 5v14"
	armIcon   = "M4 7a3 3 0 1 0 6 0a3 3 0 1 0-6 0M14 17a3 3 0 1 0 6 0a3 3 0 1 0-6 0M9.1 4.9l10 10M4.9 9.1l10 10"
)

// pageMark is a straight wheel and the toe curve that leaves it.
const pageMark = `<svg class="page-mark" viewBox="0 0 14 24" width="14" height="24" aria-hidden="true">` +
	`<path class="mark-line" d="M7 1v22"/><path class="mark-curve" d="M2 2c3 6 4 9 5 10s3 5 5 10"/></svg>`

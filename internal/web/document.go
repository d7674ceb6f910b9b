package web

import (
	"bytes"
	_ "embed"
	"html/template"
	"regexp"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"toewright/app/ui"
)

// documentText is the document of the page. go-app has one too, which asks for the
// program only after all scripts and styles.
//
//go:embed shell/document.html
var documentText string

var documentTemplate = template.Must(template.New("document").Parse(documentText))

// untrue finds an attribute that go-app writes as "false" where it does not hold, which
// HTML takes for one that holds.
var untrue = regexp.MustCompile(` (checked|disabled|hidden|multiple|open|readonly|required|selected)="false"`)

// firstPage returns the page as it is before the program runs, in HTML.
func firstPage() template.HTML {
	return template.HTML(untrue.ReplaceAllString(app.HTMLString(ui.New(nil)), ""))
}

// document returns the document of the page, as it stands until the program runs. A
// policy is stated in it, if it is not empty.
func document(policy string) []byte {
	var b bytes.Buffer
	err := documentTemplate.Execute(&b, struct {
		Name, Description, Colour, Policy string
		Page                              template.HTML
	}{pageName, pageDescription, paperColour, policy, firstPage()})
	if err != nil {
		panic(err) // The template is embedded, and a buffer takes all.
	}
	return b.Bytes()
}

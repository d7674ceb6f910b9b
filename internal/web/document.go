package web

import (
	"bytes"
	_ "embed"
	"html/template"
	"regexp"
	"slices"
	"strings"

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

// tag finds a tag with attributes, and attribute each of them.
var (
	tag       = regexp.MustCompile(`<[a-z][a-z0-9-]*( [^\s=">]+(="[^"]*")?)+`)
	attribute = regexp.MustCompile(` [^\s=">]+(="[^"]*")?`)
)

// firstPage returns the page as it is before the program runs, in HTML. go-app writes
// attributes in any order, which would make each server's page another version.
func firstPage() template.HTML {
	page := untrue.ReplaceAllString(app.HTMLString(ui.New(nil)), "")
	return template.HTML(tag.ReplaceAllStringFunc(page, func(tag string) string {
		list := attribute.FindAllString(tag, -1)
		name := tag[:len(tag)-len(strings.Join(list, ""))]
		slices.Sort(list)
		return name + strings.Join(list, "")
	}))
}

// document is what the page's document is made of, as it stands until the program runs.
type document struct {
	set
	Set       string        // its name
	Policy    string        // that is stated in the document, if it is not empty
	Page      template.HTML // before the program runs
	PieceSize int           // of the program, in bytes
	Pieces    string        // digests of the program's pieces
}

// Name, Description and Colour say what the page is.
func (document) Name() string        { return pageName }
func (document) Description() string { return pageDescription }
func (document) Colour() string      { return paperColour }

// text returns the document.
func (d document) text() []byte {
	var b bytes.Buffer
	if err := documentTemplate.Execute(&b, d); err != nil {
		panic(err) // The template is embedded, and a buffer takes all.
	}
	return b.Bytes()
}

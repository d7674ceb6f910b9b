package ui

import (
	"sync"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"toewright/app/scene"
)

// Sheet is the drawing with its tools. The picture is rendered once; its frames are
// painted by the drawing.
type Sheet struct {
	app.Compo

	Drawing *drawing

	wired wires
}

// pictureID is the id of the picture's element.
const pictureID = "picture"

// picture returns the markup of the picture: workers have none.
var picture = sync.OnceValue(func() string { return scene.Markup(pictureID) })

// OnMount joins the drawing to the page.
func (s *Sheet) OnMount(app.Context) { s.wired.join(s.Drawing) }

// OnDismount lets go of the page.
func (s *Sheet) OnDismount() { s.wired.part(s.Drawing) }

// Render draws the empty picture, for which the document of the server has the place.
func (s *Sheet) Render() app.UI {
	return app.Div().ID("canvas").Class("canvas").Body(
		only(app.IsClient, func() app.UI { return app.Raw(picture()) }),
	)
}

package ui

import (
	"strings"

	"github.com/maxence-charriere/go-app/v10/pkg/app"
)

// explain shows a word of the trade that says what it means when it is touched.
func explain(word, meaning string) app.UI {
	return app.Details().Class("explain").Body(
		app.Summary().Text(word),
		app.P().Text(meaning),
	)
}

// Words of the trade that stand in more than one panel.
const (
	aboutToe       = "Angle of the wheel to straight ahead, seen from above. Toe-in is positive: the front of the wheel points to the car's middle. It is given per wheel."
	aboutWheelbase = "From the centre of the front axle to that of the rear one. The Ackermann error and the turning circle are reckoned with it; toe by travel is not."
	aboutRadius    = "Height of the wheel centre above the ground with the car's weight on the tyre."
	aboutStaticToe = "The toe, toe-in positive, and the camber that the wheel had while the points were measured. They say which way the wheel's axis points."
	aboutCamber    = "Lean of the wheel seen from behind, positive with the top outward."
	aboutYardstick = "The car that the differences are taken from."
	aboutWindow    = "The wheel travel over which a curve is judged, counted from ride height: bump is the wheel moving up in the body, droop down."
	aboutTarget    = "The toe change that is wanted at each travel, counted from the toe at ride height. Flat is no change at all."
	aboutSetpoint  = "An alignment value that is set again after the parts are changed: the upper joint and the tie rod's length take it up. One that is not held floats."
)

// shortCaution stands in the bottom line, always.
const shortCaution = "Geometry, not strength: no arm is to be bent, heated, welded or bored on this program's word."

// caution stands wherever a result is taken away.
const caution = shortCaution + cautionRest

const cautionRest = " Rubber bushings add toe change that is left out here. Check lock to lock at full bump and droop, and have the work inspected."

func cautionLine() app.UI { return app.P().Class("caution").Body(withCaution(caution)...) }

// withCaution is a text with the caution at its end, whose first sentence is seen where the
// bottom line does not show it.
func withCaution(text string) []app.UI {
	before, ok := strings.CutSuffix(text, caution)
	if !ok {
		return []app.UI{app.Text(text)}
	}
	return []app.UI{app.Text(before), app.Span().Class("said-below").Text(shortCaution), app.Text(cautionRest)}
}

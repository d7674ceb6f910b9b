package ui

// frames are the screen's, in which the sheet is drawn. What is drawn alongside keeps
// step with a drag without go-app.
type frames interface {
	request()              // asks for a frame
	alongside(draw func()) // draws something in every frame; nil ends it
}

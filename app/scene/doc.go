// Package scene composes the moving sheet: from the cars of a study and what the
// reader looks at it makes paths, texts and places for handles, ready to be put into
// the nodes of one picture that stands on the page from the beginning to the end. It
// knows no browser.
//
// # Nodes
//
// The picture is a fixed list of nodes, each with its [Slot]; see [Markup]. A frame
// fills slots with path data and text and leaves what it does not show empty. So a
// drag creates no node and removes none, and what has not changed is not touched.
//
// # Sheet
//
// The front elevation stands in the middle, seen from behind, with the toe curve of
// each wheel outside it. Chart and wheel share the axis of travel: the travel of the
// wheel, a few centimetres on a drawing of the whole car, is projected by two fan
// lines from a ladder beside the tyre onto the height of the chart. The plan lies
// below the elevation at the same scale, the side view of the left wheel beside it,
// and a detail shows the left steering arm enlarged.
package scene

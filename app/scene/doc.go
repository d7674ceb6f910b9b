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
// The chart of toe by travel stands beside the rear elevation, and both share the axis of
// travel: the chart's zero lies on the level of the wheel's centre at ride height. The
// travel of the wheel, a few centimetres on a drawing of the whole car, is spread by two
// lines from a bracket beside the tyre to the ends of the chart; where the bracket is
// small it is enlarged and says so. The marker's line runs through it to the hub.
//
// A car whose sides do the same is drawn to its centre line, with one chart for both
// wheels. Where left and right differ there are two charts with the axle between, its
// middle broken out; a narrow sheet has one of them, which never turns, and that side of
// the car. See [Stage.formOf]. Any view may take the place of the elevation; the others
// stand below, small, where there is room.
package scene

package main

import (
	"toewright/internal/calls"
	"toewright/internal/engine"
	"toewright/internal/study"
)

// manual is what the command alone has to say of a call.
type manual struct {
	long  string
	show  func(*report, any) // prints the answer for people
	apply *applying          // nil where the answer does not go into the study
}

// applying is how the study is printed with an answer in it.
type applying struct {
	usage string
	in    func(*study.Document, any) (*study.Document, error)
}

// shows returns what prints an answer of one type.
func shows[R any](show func(*report, *R)) func(*report, any) {
	return func(r *report, answer any) { show(r, answer.(*R)) }
}

// applies returns what puts an answer of one type into the study.
func applies[R any](usage string, in func(*study.Document, *R) (*study.Document, error)) *applying {
	return &applying{usage, func(d *study.Document, answer any) (*study.Document, error) { return in(d, answer.(*R)) }}
}

// manuals are those of all calls, by their names.
var manuals = map[string]manual{
	calls.Sweep: {
		show: shows(showSweep),
		long: `Move the wheels of the base car and of each candidate through the study's
window of travel, and print toe, camber and what else changes on the way.

FILE - reads standard input. Tables run from bump at the top to droop at the
bottom; the JSON runs from droop to bump. Toe is toe-in positive, static toe
included. Where the linkage locks, the positions before it are printed and what
stands in the way is named.`,
	},
	calls.Compare: {
		show: shows(showCompare),
		long: `Print the figures of the base car and of each candidate over the window of the
study's search or else of its travel, each with its difference from the reference car.

FILE - reads standard input. Toe change is against the car's own toe at travel 0;
its error, that less the target, which is flat where the study states none.`,
	},
	calls.Steer: {
		show: shows(showSteer),
		long: `Move the steering gear from lock to lock at one height of the wheels, and print the
angles of both wheels from straight ahead, toe-out on the turn, the Ackermann
percentage against the cot rule, the turning circle and the ratio.

FILE - reads standard input.`,
	},
	calls.Diagnose: {
		show: shows(showDiagnosis),
		long: `Split the toe change of each car into what ball height, rod length and pivots out of
plane make of it, and print what to move by how much.

FILE - reads standard input.`,
	},
	calls.Axle: {
		show: shows(showAxle),
		long: `Print roll steer, the axle's steer by one wheel's bump and the roll centre, and as
estimates what static toe costs in scrub and drag, and how far one wheel's bump
leads the car off its line.

FILE - reads standard input.`,
	},
	calls.Loads: {
		show: shows(showLoads),
		long: `Print, for each load case of the study, the force in the tie rod and the spring of
each car, what the rod does to the steering arm at its face and to the ball's stud,
and the ratio to the base car's rod.

FILE - reads standard input. The links weigh nothing, the joints have no friction,
the gear is held, and the spring holds the wheel at its travel. Nothing is added to
the forces stated. --preset takes usual cases, scaled by vehicle.wheelLoad, in place
of the study's; --preset list says how each is made and where it comes from. What a part bears is for strength work to say.`,
	},
	calls.Covers: {
		show: shows(showCovers),
		long: `Print, for each parameter of the set-up, between which values about the car's own
its toe change stays within a limit over the study's travel, everything else as it
stands: which cars a part serves, and which it does not. The figure is the worse
wheel's.

FILE - reads standard input. An end is where the limit is passed, where the linkage
locks or cannot be built, or a bound to which it was looked. A setting such as caster
is set alike on both sides; ride height is the change from the file. For two at a time
use map.`,
	},
	calls.Search: {
		show: shows(showSearch),
		apply: applies("print the study with the answer as a candidate, on the steps and sizes stated, and nothing else", func(d *study.Document, r *engine.SearchResult) (*study.Document, error) {
			return engine.ApplySearch(d, r), nil
		}),
		long: `Look for the values of the study's variables, within their bounds, that bring the
toe change nearest to its target over the whole window, and print them.

FILE - reads standard input. Searches start from many places within the bounds; how
many of them end at the same value tells how far the answer may be trusted to be
the best there is. Interrupted, the search prints the best so far.`,
	},
	calls.TradeOff: {
		show: shows(showTradeOff),
		long: `Repeat the study's search with a second aim held ever smaller, and print the designs
between the least toe change and the least of the aim: the distance from the stock
parts, the Ackermann error, or the change of the steering ratio.

FILE - reads standard input.`,
	},
	calls.Locate: {
		show:  shows(showLocate),
		apply: applies("print the study with its hardpoints as located, and nothing else", engine.ApplyLocation),
		long: `Find where the hardpoints are that the study's key "measured" has lengths, heights,
sides and stations of, and print how well each is known, which measures do not agree
with the others, what the tape leaves open of toe at the ends of the travel, and what
to measure next. The hardpoints in the file are the start: a template will do.

FILE - reads standard input. Static toe and camber stay as the study gives them.

With --apply the study is printed with its hardpoints as located:

    toewright locate car.json --apply | toewright sweep -`,
	},
	calls.Fit: {
		show:  shows(showFit),
		apply: applies("print the study with its hardpoints as fitted, and nothing else", engine.ApplyFit),
		long: `Find the car that the study's readings most likely came from, given how well its
hardpoints are known, and print whether it explains them, which readings do not
belong, what to fit for the least toe change with its 90 % band, and what to
measure next.

FILE - reads standard input. Readings with the purpose "verify" are not fitted but
held against what the fitted car should give.

With --apply the study is printed with its hardpoints as fitted, for a search that
serves the real car:

    toewright fit car.json --apply | toewright search -`,
	},
	calls.Tolerance: {
		show: shows(showTolerance),
		long: `Build a series of cars that differ within the study's tolerances and print how far
their toe curves spread, by simulation and by linear propagation side by side; how
many pass a limit; and which dimensions decide it. Each car has its static toe set
again or, with --toe as-built, leaves the line with its rods as drawn.

FILE - reads standard input. The same seed gives the same cars. Interrupted, the
command prints what the cars built so far say.`,
	},
	calls.Series: {
		show: shows(showSeries),
		long: `Judge each car of the study's "series" by its own readings, as "readings" states them:
the car is fitted to them, and its worse wheel passes the limit of the study's yield or
not, with a 90 % band. How many pass is told with a 95 % interval (Wilson's score). A
car is left open where its readings do not reach over the window, a wheel was not read
with the candidate's parts on, or no car near the one stated gives them. Then a fit over
all cars at once says by how much each dimension is off on all of them alike, and which
one alone explains most of it. What is free is as in fit: the study's priors, else
every hardpoint.

FILE - reads standard input.`,
	},
	calls.Choose: {
		show: shows(showChoose),
		long: `Try every combination of the study's catalogue, each slot with one of its parts or
as it stands, and print the best, and the undominated ones: no other has both less
toe change and a lower price.

FILE - reads standard input. Interrupted, the command prints the best so far.`,
	},
	calls.Map: {
		show: shows(showMap),
		long: `Print how the toe change less target depends on two parameters: the valley along
which they make up for each other. People are shown a coarse map; --json has all
cells.

FILE - reads standard input.`,
	},
	calls.Drawing: {
		long: `Write one steering arm of a candidate as a file for the shop that makes it. As dxf
(release 12, mm, 1:1) and svg it is drawn in three views, square to the face, along it
and along the stud, with basic sizes from face and bolts, the original hole dashed,
the tolerances that the study assumes, and what the study's load cases make of arm and
stud. --projection says how the views lie, which the sheet's sign shows; --step to what
the shop works: the sizes to make are rounded to it, and the sheet says by how much and
at what cost in toe. svg is one sheet of both arms, or of one by --side, on --paper at
a scale that a printed line checks; a right arm that mirrors the left is not drawn where
that lets the scale be larger. As step (AP214, mm, vehicle axes) it has
the named places, axes and circles to build the part on, where the file's own static
position has them.

FILE - reads standard input. What the study's "arm" states (thickness, hole, boltDiameter,
projection, and in the maker's words material, heatTreatment, finish, grain, draft, stock,
sections, tolerances, stamp, proofLoad, numberLeft, numberRight, drawnBy, checkedBy) is
printed; what it does not is left out, or a blank in the title block to fill in by hand.
Geometry, not strength: loads stand there without a verdict.`,
	},
	calls.Form: {
		long: `Print the measures to take of a study's car, each with a blank, in the order in which
each settles the toe curve most: lengths from the study's marks, direct lengths,
heights, plumbed distances. Where the toe is known well enough to choose a spacer a
line says so. What cannot be reached is left blank. A study without marks gets six on
the left, as docs/tape.md sets them. How to measure is there too.

FILE - reads standard input.`,
	},
	calls.Report: {
		long: `Write the bench sheet of a candidate as one self-contained HTML page: the steering
arms' dimensions from the original hole, toe before and after as curves and numbers,
what else changes, limits, tolerances, conditions and cautions. It prints on one or
two pages, or on three where arms that differ and load cases come together, legible in black
and white.

FILE - reads standard input.`,
	},
}

package model

import (
	"slices"
	"strings"

	"toewright/internal/study"
)

// keysWithField are the keys of a study file that the page has a field, a menu or a
// button for, besides those of hardpoints. A list is written [], left and right "side".
var keysWithField = []string{
	"name", "notes", "revision", "date",
	"display.units", "display.fraction", "display.toe", "display.base", "display.yardstick",
	"vehicle.wheelbase", "vehicle.tyreRadius", "vehicle.axle", "vehicle.corneringStiffness", "vehicle.wheelLoad",
	"suspension.adjuster", "suspension.side.toe", "suspension.side.camber", "suspension.side.studAxis",
	"suspension.side.armFace", "suspension.side.spring", "suspension.side.damper", "suspension.springs",
	"suspension.toe", "suspension.toe.side", "suspension.camber", "suspension.camber.side", "suspension.studAxes.side",
	"steering.axis", "steering.pitmanAxis", "steering.idlerAxis", "steering.perTurn", "steering.lock",
	"tieRod.threadPitch", "tieRod.engagement", "tieRod.minEngagement", "tieRod.maxEngagement", "tieRod.innerBall.cone", "tieRod.outerBall.cone", "tieRod.outerBall.stud",
	"travel.bump", "travel.droop", "travel.step",
	"candidates[].name", "candidates[].changes", "candidates[].hold", "candidates[].hidden", "candidates[].note", "candidates[].price",
	"search.variables[].parameter", "search.variables[].min", "search.variables[].max", "search.variables[].grid", "search.variables[].sizes",
	"search.target", "search.targetOf", "search.targetSlope", "search.band", "search.minimise",
	"search.window.bump", "search.window.droop", "search.window.step",
	"search.scenarios[].name", "search.scenarios[].changes", "search.scenarios[].weight", "search.scenarios[].attitude", "search.combine",
	"search.limits[].result", "search.limits[].min", "search.limits[].max", "search.limits[].side", "search.limits[].at", "search.limits[].of", "search.limits[].radius",
	"search.limits[].plane.point", "search.limits[].plane.normal", "search.limits[].link.from", "search.limits[].link.to", "search.limits[].link.radius",
	"search.limits[].rim.radius", "search.limits[].rim.offset", "search.percentile",
	"tolerances[].parameter", "tolerances[].plusMinus", "tolerances[].sd", "tolerances[].varies",
	"yield.limit", "yield.keepToe",
	"readings[].side", "readings[].gauge", "readings[].base", "readings[].repeatability", "readings[].travelAs", "readings[].direction",
	"readings[].slopeSd", "readings[].turned", "readings[].zero", "readings[].note", "readings[].changes", "readings[].purpose", "readings[].values",
	"series[].car", "series[].date", "series[].readings",
	"priors[].parameter", "priors[].sd", "advise.parameter", "advise.step",
	"catalogue[].slot", "catalogue[].name", "catalogue[].price", "catalogue[].changes",
	"loads", "stiffness", "sources", "arm",
}

// keysUntouched are the keys that have none, with what they are called. The page keeps
// what stands there.
var keysUntouched = []struct{ key, name string }{
	{"format", "the version of the file's format"},
	{"units", "the unit that the file is written in"},
	{"suspension.type", "the kind of suspension, which a template brings"},
	{"suspension.dragLink.side", "the side whose arm the drag link pulls"},
	{"steering.type", "the kind of steering gear, which a template brings"},
	{"measured", "what the tape measured"},
	{"dragLink", "what the adjuster and the joints of the drag link allow"},
	{"tieRod.innerBall.axis", "the axis of the inner ball"},
	{"tieRod.outerBall.axis", "the axis of the outer ball"},
	{"tieRod.innerBall.stud", "the stud of the inner ball"},
	{"search.targetRight", "a target of the right wheel's own"},
	{"search.weights", "the weights of the travel in a search"},
	{"search.scenarios[].hold", "what a set-up holds"},
	{"search.seed", "the seed of a search"},
	{"tolerances[].distribution", "how tolerances are spread"},
	{"yield.figure", "the figure that a series is judged by"},
	{"yield.candidate", "the candidate of a series"},
	{"yield.cars", "the number of cars in a series"},
	{"yield.seed", "the seed of a series"},
	{"priors[].shared", "which points are off alike on both sides"},
	{"advise.min", "the least value that advice may take"},
	{"advise.max", "the largest value that advice may take"},
	{"catalogue[].excludes", "which parts do not go together"},
	{"catalogue[].note", "notes on parts"},
}

// always are those of the keys without a field that every file has, or that say nothing
// which a reader would look for.
var always = []string{"format", "units", "suspension.type", "suspension.dragLink.side", "steering.type"}

// KeptUntouched lists what stands in a study that the page has no field for, and keeps.
func KeptUntouched(d *study.Document) []string {
	var names []string
	keys := d.Keys()
	for _, k := range keysUntouched {
		if !slices.Contains(always, k.key) && slices.ContainsFunc(keys, func(key string) bool { return isKeyUnder(key, k.key) }) {
			names = append(names, k.name)
		}
	}
	return names
}

// isKeyUnder reports whether a key is another or stands within it.
func isKeyUnder(key, of string) bool {
	rest, ok := strings.CutPrefix(key, of)
	return ok && (rest == "" || rest[0] == '.' || rest[0] == '[')
}

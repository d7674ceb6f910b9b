//go:build unix

package main

// looks are what seeds showed before.
var looks = []look{
	{1, "2026-11-25, after tests for what it showed", "`solver`, `optimize`", 160, 153},
	{2, "2026-11-26, first look", "these four", 0, 0},
}

// reasons say of mutants that live why no test kills them, by their id.
var reasons = map[string]string{
	"solver/trace.go tracer.advance: 0 -> 1": "One refused step fewer before the path is followed by its own length instead: " +
		"the same path, another way along it.",
	"solver/trace.go tracer.advance: step /= 2 -> step *= 2": "A refused step that grows is refused again, and the path is handed over " +
		"to the follower by its own length: the same places, found more slowly.",
	"solver/travelof.go travelQuest.find: from, short = at, e -> ": "The bracket of the reading then begins at static height, and not at " +
		"the last step: where the reading runs one way it holds the same travel, found in more steps.",
	"solver/closedform_trace.go closedTrace.advance: target - c.now.s -> target + c.now.s": "A sweep runs outward from static height, so that " +
		"the step, too long then, is cut at the target in the next line.",
	"optimize/advice.go stack.describe: return err -> return *new(error)": "The cars of the best and of the advised value were built by the " +
		"search before; an error is left only where rounding to a spacer steps over the edge of what can be built, and no test has such a car.",
	"optimize/svd.go singularsOf: { break } -> {}": "Sweeps after the one that finds all columns square to each other turn nothing.",
	"optimize/stack.go stack.band: return err -> return *new(error)": "The slopes beside the best value were asked for by the search before; " +
		"an error is left only a thousandth of the bounds from the edge of what can be built, and no test has such a car.",
}

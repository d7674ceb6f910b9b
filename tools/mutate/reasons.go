//go:build unix

package main

// looks are what seeds showed before. In the first of seed 2 two changes changed
// nothing; they do not count here, and are drawn no more.
var looks = []look{
	{1, "2026-11-25, after tests for what it showed", "`solver`, `optimize`", 160, 153},
	{2, "2026-11-26, first look", "all four", 318, 263},
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
	"optimize/fit_advice.go stack.describe: return err -> return *new(error)": "The cars of the best and of the advised value were built before; what is " +
		"left is the car as it stood, of which another test says what its error is.",
	"optimize/nlp/matrix_svd.go singularValues: { break } -> {}": "Sweeps after the one that finds all columns orthogonal rotate nothing.",
	"solver/tangents.go tangentWork.factor: w.plain, w.factored = true, true -> ": "The equations are then factored anew for each parameter: " +
		"the same rates, found more slowly.",
	"solver/trace.go tracer.advance: step *= 2 -> ": "Steps that do not grow again lead along the same path, in more of them.",
	"solver/trace.go tracer.correct: 0.0 -> 1e-3": "The corrections of a step may then add up to a thousandth less before " +
		"it is refused and halved: the same path.",
	"solver/idealinner.go fitCentre: c, start -> start, c": "A distance is the same from either end.",
	"solver/staticmemo.go memoKey.slot: (h ^ math.Float64bits(k.changes[i].value)) * 0x9e3779b97f4a7c15 -> -((h ^ math.Float64bits(k.changes[i].value)) * 0x9e3779b97f4a7c15)": "An " +
		"odd factor spreads as well as another: the place in the memo differs, what is found there does not.",
	"optimize/limit.go toeModel.limitsAt: return g, false -> return *new([]float64), *new(bool)":   "Beside false nobody looks at the values; their memory is taken again.",
	"optimize/nlp/matrix_gramschmidt.go linearLeastSquares: n - 1 -> n + 1":                        "The columns past the last have none behind them to project out: nothing is done there.",
	"optimize/nlp/leastsquares.go newFitter: 2 -> 3":                                               "The damping grows faster at a step that fails: the same minimum by other steps.",
	"optimize/nlp/local_polish.go polisher.iterate: p.radius < minRadius -> p.radius <= minRadius": "A radius of just the least, to the last digit.",
	"internal/number/parse.go ParseLength: 0 -> 1":                                                 "Beside an error nobody looks at the number.",
	"internal/engine/search_extra.go searcher.robust: return nil, explain(err, \"\") -> return *new(*SearchResult), *new(error)": "The search was checked when it was " +
		"made: no study that gets here has an error left.",
	"internal/engine/target.go sweeper.curveOf: return nil, nil, err -> return *new([][2]float64), *new([][2]float64), *new(error)": "A car that was built moves from " +
		"its static height without an error; where it does not go far, the next lines say so.",
	"internal/engine/axle.go sweeper.drift: 1000*o.Distance -> -(1000*o.Distance)": "A car leaves its line by the square of the run: backward as much as forward.",
	"internal/engine/arm.go Arm: return nil, err -> return *new(*ArmResult), *new(error)": "The base car with a candidate's corrections, where the candidate itself " +
		"was built before: no test has corrections that its parts make possible.",
}

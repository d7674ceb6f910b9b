package api

import (
	"net/http"
	"strings"

	"toewright/internal/study"
)

// Bounds of what a study may ask for. A study's bytes say little of that: a line more can
// be a hundred cars. What lies within them and still takes too long ends at the deadline.
const (
	// mostReadings is how many readings of a gauge are fitted: 10,000 take some 2 s.
	mostReadings = 20_000
	// mostRuns is how many runs of them there are: each may be a set-up of its own.
	mostRuns = 2_000
	// mostPositions is how many positions all cars are moved to, in all set-ups: each is
	// some 500 bytes of an answer.
	mostPositions = 200_000
)

// tooMuch returns the fault of a study that asks for more than the service does.
func tooMuch(d *study.Document) *fault {
	runs, readings, key := 0, 0, ""
	for path, r := range d.Runs() {
		runs, readings = runs+1, readings+len(r.Values)
		if key == "" && (runs > mostRuns || readings > mostReadings) {
			key, _, _ = strings.Cut(path, ".")
		}
	}
	if runs > mostRuns {
		return beyond(key, runs, "runs of readings", mostRuns)
	}
	if readings > mostReadings {
		return beyond(key, readings, "readings", mostReadings)
	}
	travels := 1
	for _, t := range []study.Travel{d.Window(), d.SearchWindow()} {
		if t.Step > 0 {
			travels = max(travels, int(min((t.Bump+t.Droop)/t.Step, mostPositions)))
		}
	}
	setups := 1 + len(d.Loads)
	if d.Search != nil {
		setups += len(d.Search.Scenarios)
	}
	if n := travels * setups * (1 + len(d.Candidates)); n > mostPositions {
		return beyond("candidates", n, "positions of all candidates in all set-ups", mostPositions)
	}
	return nil
}

func beyond(key string, n int, what string, most int) *fault {
	return faultf(http.StatusRequestEntityTooLarge, key, "%d %s are more than the service takes, %d; send fewer, or use the command, which has no such bound", n, what, most)
}

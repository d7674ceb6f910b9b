package ui

import (
	"math"
	"time"
)

// pace guesses how long a job takes, from how far it has come. Searches go fast here and
// slowly there: the guess waits until it rests on something, and then follows slowly.
type pace struct {
	at   time.Duration // since the start, of the last look
	done float64       // share of the whole
	end  time.Duration // guess of the whole; 0 while there is none
}

const (
	// guessFrom is the share of a job that must be done before its time is guessed.
	guessFrom = 0.1
	// guessTime is the time in which a guess follows what is seen.
	guessTime = 6 * time.Second
)

// look takes in how far the job is at a time since its start.
func (p *pace) look(done float64, at time.Duration) {
	since := at - p.at
	p.at, p.done = at, done
	if !(done >= guessFrom) {
		return
	}
	seen := time.Duration(float64(at) / math.Min(done, 1))
	if p.end == 0 {
		p.end = seen
		return
	}
	p.end += time.Duration(float64(seen-p.end) * -math.Expm1(-float64(since)/float64(guessTime)))
}

// left returns the time that the job still takes; ok is false while nobody can say.
func (p *pace) left() (left time.Duration, ok bool) {
	return max(p.end-p.at, 0), p.end > 0
}

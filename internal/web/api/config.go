package api

import (
	"cmp"
	"log/slog"
	"runtime"
	"time"
)

// Config says how calls are answered. The zero value works.
type Config struct {
	Version string       // of the program, for the OpenAPI document
	Logger  *slog.Logger // nil logs nothing
	// Stopping is closed when the server is to stop: calls that wait then, or
	// come later, are refused; those that run are given Grace to finish.
	Stopping <-chan struct{}
	Grace    time.Duration // 0 means 1 s

	MaxBody  int64         // largest study in bytes; 0 means 1 MiB
	Deadline time.Duration // for one answer, its wait included; 0 means 30 s
	Workers  int           // calls that run at once; 0 means one for each core
	Queue    int           // calls that wait for one of these; 0 means 64
	// Reading is how many calls may send their study at once; 0 means 256.
	// Together with MaxBody it bounds what their bodies hold in memory.
	Reading int
	// BodyTimeout is for sending the study; 0 means 10 s.
	BodyTimeout time.Duration
	// Streams is how many calls for many change sets may run at once; 0 means 16.
	Streams int
	// Kept is the memory for studies that calls may name by their digest, in bytes of
	// their texts; 0 means 4 MiB. Negative keeps none.
	Kept int
}

// Defaults of [Config].
const (
	defaultMaxBody     = 1 << 20
	defaultDeadline    = 30 * time.Second
	defaultQueue       = 64
	defaultReading     = 256
	defaultBodyTimeout = 10 * time.Second
	defaultGrace       = time.Second
	defaultStreams     = 16
	defaultKept        = 4 << 20
)

func (c Config) withDefaults() Config {
	c.MaxBody = cmp.Or(c.MaxBody, defaultMaxBody)
	c.Deadline = cmp.Or(c.Deadline, defaultDeadline)
	c.Workers = cmp.Or(c.Workers, runtime.GOMAXPROCS(0))
	c.Queue = cmp.Or(c.Queue, defaultQueue)
	c.Reading = cmp.Or(c.Reading, defaultReading)
	c.Grace = cmp.Or(c.Grace, defaultGrace)
	c.BodyTimeout = cmp.Or(c.BodyTimeout, defaultBodyTimeout)
	c.Streams = cmp.Or(c.Streams, defaultStreams)
	c.Kept = cmp.Or(c.Kept, defaultKept)
	if c.Logger == nil {
		c.Logger = slog.New(slog.DiscardHandler)
	}
	return c
}

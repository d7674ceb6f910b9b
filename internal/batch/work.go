package batch

import (
	"bytes"
	"context"
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"fmt"
	"runtime"

	"toewright/internal/engine"
	"toewright/internal/shards"
	"toewright/internal/study"
	"toewright/internal/version"
)

// Work is one command on one study, to be done in shards.
type Work struct {
	job     shards.Job
	command string
	study   StudyID
	options json.RawMessage
}

// commands are those that can be divided.
var commands = map[string]shards.Start{
	"tolerance": shards.Tolerance,
	"choose":    shards.Choose,
	"map":       shards.Map,
}

// Divides reports whether a command's work can be done in shards.
func Divides(command string) bool { return commands[command] != nil }

// New returns the work of a command with its options, of the engine's type for
// that command.
func New(command string, d *study.Document, options any) (*Work, error) {
	raw, err := json.Marshal(options)
	if err != nil {
		return nil, fmt.Errorf("an option is not a number: %w", err)
	}
	id, err := identify(d)
	if err != nil {
		return nil, err
	}
	j, err := commands[command](shards.Run{Study: d, Options: raw})
	if err != nil {
		return nil, err
	}
	return &Work{j, command, id, raw}, nil
}

// Run does the work of one shard and returns the file of its part. It returns an
// error, and no part, where the context ends before it is done.
func (w *Work) Run(ctx context.Context, s engine.Shard) ([]byte, error) {
	result, err := w.job.Do(ctx, s)
	if ctx.Err() != nil {
		return nil, fmt.Errorf("shard %s was stopped before it was done, and wrote no part; run it again: %w", named(s), ctx.Err())
	}
	if err != nil {
		return nil, err
	}
	raw, err := json.Marshal(result)
	if err != nil {
		return nil, err
	}
	return encode(&Part{
		Format: Format, Version: version.Name(), Machine: runtime.GOARCH,
		Command: w.command, Study: w.study, Options: w.options, Shard: s, Result: raw,
	})
}

// identify returns what tells a study from others: not how its file is laid out.
func identify(d *study.Document) (StudyID, error) {
	text, err := study.Encode(d)
	if err != nil {
		return StudyID{}, err
	}
	sum := sha256.Sum256(text)
	return StudyID{Name: d.Name, SHA256: hex.EncodeToString(sum[:])}, nil
}

// same reports whether two texts of JSON are the same but for blanks.
func same(a, b json.RawMessage) bool {
	var x, y bytes.Buffer
	return json.Compact(&x, a) == nil && json.Compact(&y, b) == nil && bytes.Equal(x.Bytes(), y.Bytes())
}

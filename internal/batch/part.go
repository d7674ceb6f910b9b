package batch

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"errors"
	"fmt"

	"toewright/internal/engine"
	"toewright/internal/shards"
)

// Format is what the files of parts state as theirs.
const Format = "toewright-part/1"

// Part is what came of one shard.
type Part struct {
	Format  string          `json:"format"`
	Version string          `json:"version"`
	Machine string          `json:"machine"`
	Command string          `json:"command"`
	Study   StudyID         `json:"study"`
	Options json.RawMessage `json:"options"`
	Shard   engine.Shard    `json:"shard"`
	Result  json.RawMessage `json:"result"`
}

// StudyID tells studies apart.
type StudyID struct {
	Name   string `json:"name,omitzero"` // for the reader
	SHA256 string `json:"sha256"`        // in hexadecimal, of the study as it is written anew
}

// A part ends with the checksum of what it would be without it.
const (
	sealOpen  = `,"sha256":"`
	sealClose = `"}`
	sealSize  = len(sealOpen) + 2*sha256.Size + len(sealClose)
)

// encode writes a part with its checksum.
func encode(p *Part) ([]byte, error) {
	body, err := json.Marshal(p)
	if err != nil {
		return nil, err
	}
	sum := sha256.Sum256(body)
	out := append(body[:len(body)-1], sealOpen...)
	out = hex.AppendEncode(out, sum[:])
	return append(out, sealClose+"\n"...), nil
}

// errChanged is that a file is not as encode left it.
var errChanged = errors.New("was changed since it was written, as its checksum shows; run its shard again")

// decode reads a part after its checksum was held against it.
func decode(data []byte) (*Part, error) {
	body, err := unseal(bytes.TrimRight(data, "\r\n\t "))
	if err != nil {
		return nil, err
	}
	p := new(Part)
	if err := shards.Strict(body, p); err != nil {
		return nil, err
	}
	if p.Format != Format {
		return nil, fmt.Errorf("has the format %.40q, this version reads %q", p.Format, Format)
	}
	if !valid(p.Shard) {
		return nil, fmt.Errorf("says that it is shard %s, which there is not", named(p.Shard))
	}
	return p, nil
}

// unseal returns the document that the checksum at the end of data is of.
func unseal(data []byte) ([]byte, error) {
	at := len(data) - sealSize
	if at < 0 || !bytes.HasPrefix(data[at:], []byte(sealOpen)) || !bytes.HasSuffix(data, []byte(sealClose)) {
		return nil, shards.ErrCut
	}
	stated := data[at+len(sealOpen) : len(data)-len(sealClose)]
	body := append(bytes.Clone(data[:at]), '}')
	sum := sha256.Sum256(body)
	if hex.EncodeToString(sum[:]) != string(stated) {
		return nil, errChanged
	}
	return body, nil
}

package store

import (
	"encoding/json"
	"fmt"
	"strings"
	"time"

	"toewright/internal/study"
)

// Revision is a study as it was at one save.
type Revision struct {
	Version Version
	Parent  Version // Parent is the version that it was made from; none for the first.
	Label   string  // Label names the edit that led to it.
	Saved   time.Time
	// Problem says why the revision cannot be opened; nil where it can.
	Problem error

	packed string
}

// revisionBody is what is written of a revision, above the packed study.
type revisionBody struct {
	Parent string    `json:"parent,omitzero"`
	Label  string    `json:"label,omitzero"`
	Saved  time.Time `json:"saved,omitzero"`
}

// text returns the revision as it is kept.
func (r *Revision) text() (string, error) {
	meta, err := json.Marshal(revisionBody{r.Parent.String(), r.Label, r.Saved})
	if err != nil {
		return "", fmt.Errorf("store: revision %s: %w", r.Version, err)
	}
	return seal("revision", string(meta)+"\n"+r.packed), nil
}

// parseRevision reads a revision. One that cannot be used has its Problem set.
func parseRevision(v Version, text string) *Revision {
	r := &Revision{Version: v}
	body, err := unseal("revision", text)
	if err != nil {
		r.Problem = err
		return r
	}
	meta, packed, _ := strings.Cut(body, "\n")
	var m revisionBody
	if err := json.Unmarshal([]byte(meta), &m); err != nil {
		r.Problem = ErrDamaged
		return r
	}
	r.Parent, _ = parseVersion(m.Parent)
	r.Label, r.Saved, r.packed = m.Label, m.Saved, packed
	return r
}

// Document returns the study. The error says why it cannot be opened.
func (r *Revision) Document() (*study.Document, error) {
	if r.Problem != nil {
		return nil, r.Problem
	}
	text, err := unpack(r.packed)
	if err != nil {
		return nil, ErrDamaged
	}
	return study.Decode(text)
}

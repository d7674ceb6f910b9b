package store

import (
	"encoding/json"
	"fmt"
)

// head says which revision of a study counts.
type head struct {
	Version Version
	Name    string
	Deleted bool // in the bin
}

// headBody is what is written of a head.
type headBody struct {
	Version string `json:"version"`
	Name    string `json:"name,omitzero"`
	Deleted bool   `json:"deleted,omitzero"`
}

func (h head) text() (string, error) {
	body, err := json.Marshal(headBody{h.Version.String(), h.Name, h.Deleted})
	if err != nil {
		return "", fmt.Errorf("store: head: %w", err)
	}
	return seal("head", string(body)), nil
}

func parseHead(text string) (head, error) {
	body, err := unseal("head", text)
	if err != nil {
		return head{}, err
	}
	var b headBody
	if err := json.Unmarshal([]byte(body), &b); err != nil {
		return head{}, ErrDamaged
	}
	v, ok := parseVersion(b.Version)
	if !ok {
		return head{}, ErrDamaged
	}
	return head{v, b.Name, b.Deleted}, nil
}

// head returns a study's head; ok is false where there is none.
func (s *Store) head(id ID) (h head, ok bool, err error) {
	text, ok, err := s.storage.Get(headKey(id))
	if err != nil || !ok {
		return head{}, false, err
	}
	h, err = parseHead(text)
	return h, true, err
}

func (s *Store) setHead(id ID, h head) error {
	text, err := h.text()
	if err != nil {
		return err
	}
	return s.storage.Set(headKey(id), text)
}

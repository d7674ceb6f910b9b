package api

import (
	"bytes"
	"container/list"
	"crypto/sha256"
	"encoding/hex"
	"net/http"
	"net/url"
	"sync"

	"toewright/internal/calls"
	"toewright/internal/study"
)

// digestHeader tells by which digest a study that was sent can be named.
const digestHeader = "Toewright-Study"

// jsonSpace is what JSON takes for space; other space is a mistake, which reading tells.
const jsonSpace = " \t\r\n"

// digestOf returns the digest of a study's text.
func digestOf(text []byte) string {
	sum := sha256.Sum256(text)
	return "sha256-" + hex.EncodeToString(sum[:])
}

// shelf keeps the studies that were used last, within the memory that it has. They are
// never changed.
type shelf struct {
	mu     sync.Mutex
	room   int       // bytes of texts that still fit
	used   list.List // of *keptStudy, the last used first
	byName map[string]*list.Element
}

type keptStudy struct {
	digest string
	study  *study.Document
	size   int
}

func newShelf(room int) *shelf { return &shelf{room: room, byName: map[string]*list.Element{}} }

// get returns the study of a digest, or nil.
func (s *shelf) get(digest string) *study.Document {
	s.mu.Lock()
	defer s.mu.Unlock()
	e := s.byName[digest]
	if e == nil {
		return nil
	}
	s.used.MoveToFront(e)
	return e.Value.(*keptStudy).study
}

// put keeps a study, in place of those that were not used for longest.
func (s *shelf) put(digest string, d *study.Document, size int) {
	s.mu.Lock()
	defer s.mu.Unlock()
	if s.byName[digest] != nil {
		return
	}
	s.byName[digest] = s.used.PushFront(&keptStudy{digest, d, size})
	for s.room -= size; s.room < 0 && s.used.Len() > 0; {
		old := s.used.Remove(s.used.Back()).(*keptStudy)
		delete(s.byName, old.digest)
		s.room += old.size
	}
}

// study returns the study that a call is for, within bounds: one that was sent, plain or in
// an envelope, or that of a digest. One that is kept already is not read again. The car that
// an envelope asks for becomes the request's candidate; it is refused where there is no
// request.
func (h *handler) study(request *calls.Request, query string, data []byte, header http.Header) (*study.Document, *fault) {
	text := bytes.Trim(data, jsonSpace)
	digest := digestOf(text)
	if d := h.kept.get(digest); d != nil { // which was within bounds when it came
		header.Set(digestHeader, digest)
		return d, nil
	}
	asked, err := study.DecodeAsked(data)
	if err != nil {
		return nil, studyFault(err)
	}
	d := asked.Study
	if d == nil {
		if d = h.kept.get(asked.Digest); d == nil {
			return nil, faultf(http.StatusNotFound, "study.digest", "no study of this digest is kept; send the study itself in its place, which keeps it")
		}
	}
	if asked.Set != nil {
		if request == nil {
			return nil, faultf(http.StatusBadRequest, "changes", "stand on lines of their own, after that of the study")
		}
		var name string
		d, name = d.With(asked.Set)
		if f := choose(request, query, name); f != nil {
			return nil, f
		}
	}
	if f := tooMuch(d); f != nil {
		return nil, f
	}
	if asked.Study == nil {
		return d, nil
	}
	if asked.Text != nil {
		text, digest = asked.Text, digestOf(asked.Text)
	}
	h.kept.put(digest, asked.Study, len(text))
	header.Set(digestHeader, digest)
	return d, nil
}

// choose makes a car the candidate that a request asks for, whose query names none.
func choose(request *calls.Request, query, name string) *fault {
	o := chosen(request)
	given, _ := url.ParseQuery(query) // which was read before
	switch {
	case o == nil:
		return faultf(http.StatusBadRequest, "changes", "this call asks for no single car; give the study candidates")
	case given.Has("candidate"):
		return faultf(http.StatusBadRequest, "candidate", "stands beside changes, which are of the car asked for; leave one out")
	}
	_ = o.Set(name) // which takes any text
	return nil
}

// chosen returns the option by which a request asks for one car, nil where it has none.
func chosen(request *calls.Request) *calls.Option {
	for i := range request.Options {
		if o := &request.Options[i]; o.Name == "candidate" {
			return o
		}
	}
	return nil
}

package store

import (
	"strconv"
	"strings"
)

// draft is what is being typed beside a study. Drafts are counted, so that of two the later
// one is known; one that was finished is empty, not gone.
type draft struct {
	number int
	text   string
}

func parseDraft(sealed string) (draft, error) {
	body, err := unseal("draft", sealed)
	if err != nil {
		return draft{}, err
	}
	count, text, _ := strings.Cut(body, "\n")
	number, err := strconv.Atoi(count)
	if err != nil {
		return draft{}, ErrDamaged
	}
	return draft{number, text}, nil
}

func (s *Store) draft(id ID) draft {
	text, ok, err := s.storage.Get(draftKey(id))
	if err != nil || !ok {
		return draft{}
	}
	d, err := parseDraft(text)
	if err != nil {
		return draft{} // half a row of text is no work that could be mended
	}
	return d
}

// Draft returns what was being typed beside a study, "" where that is nothing; the study
// without an ID is the one that is not kept yet.
func (s *Store) Draft(id ID) string { return s.draft(id).text }

// SetDraft keeps what is being typed beside a study, if it is not kept already.
func (s *Store) SetDraft(id ID, text string) error {
	d := s.draft(id)
	if d.text == text {
		return nil
	}
	return s.storage.Set(draftKey(id), seal("draft", strconv.Itoa(d.number+1)+"\n"+text))
}

package store

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"hash/crc32"
	"strings"

	"toewright/internal/study"
)

// backupFormat is stated by a file of all studies. Keys may be added to it; one that has to be
// read otherwise gets another number.
const backupFormat = "toewright-backup/1"

// backup is a file of all studies.
type backup struct {
	Format string `json:"format"`
	// Sum is the CRC-32 of what follows in hex: a number that was changed by accident looks
	// like any other.
	Sum     string            `json:"sum"`
	Studies []json.RawMessage `json:"studies"` // as study files
}

// sum returns the checksum of the studies, whatever stands between and around their values.
func (b *backup) sum() string {
	var all bytes.Buffer
	for _, text := range b.Studies {
		_ = json.Compact(&all, text) // It was read or written as JSON.
		all.WriteByte('\n')
	}
	return fmt.Sprintf("%08x", crc32.ChecksumIEEE(all.Bytes()))
}

// Backup returns all studies that are not in the bin as one file, each as it stands now
// without its history. Left names those that cannot be opened here, and so are not in it.
func (s *Store) Backup() (file []byte, studies int, left []string, err error) {
	b := backup{Format: backupFormat, Studies: []json.RawMessage{}}
	list, err := s.List()
	for _, e := range list {
		if e.Deleted {
			continue
		}
		text, err := s.current(e.ID)
		if err != nil {
			left = append(left, e.Name)
			continue
		}
		b.Studies = append(b.Studies, text)
	}
	if err != nil {
		return nil, 0, nil, err
	}
	b.Sum = b.sum()
	file, err = json.MarshalIndent(b, "", " ")
	return file, len(b.Studies), left, err
}

// current returns a study as the file that it would be saved as.
func (s *Store) current(id ID) ([]byte, error) {
	l, err := s.Load(id)
	if err != nil {
		return nil, err
	}
	return study.Encode(l.Document)
}

// IsBackup reports whether a file says that it is one of all studies.
func IsBackup(file []byte) bool {
	head, _, _ := strings.Cut(string(file[:min(len(file), 80)]), ",")
	return strings.Contains(head, `"format"`) && strings.Contains(head, `"toewright-backup/`)
}

// errBackup is the error for a file of all studies that is not whole.
var errBackup = errors.New("it is damaged: it breaks off, or is not as it was written")

// parseBackup returns the studies of a file, all of them or an error.
func parseBackup(file []byte) ([]*study.Document, error) {
	var b backup
	switch err := json.Unmarshal(file, &b); {
	case err != nil:
		return nil, errBackup
	case b.Format != backupFormat:
		return nil, ErrNewer
	case b.Sum != b.sum():
		return nil, errBackup
	}
	list := make([]*study.Document, len(b.Studies))
	for i, text := range b.Studies {
		d, err := study.Decode(text)
		if err != nil {
			return nil, fmt.Errorf("study %d of it cannot be read: %w", i+1, err)
		}
		list[i] = d
	}
	return list, nil
}

// Bring keeps the studies of a file as studies of their own, beside those that are kept, and
// returns how many. One that is kept already just as it is in the file is not kept twice; one
// whose name is taken gets a number after it. On an error nothing is kept of it.
func (s *Store) Bring(file []byte) (brought, there int, err error) {
	list, err := parseBackup(file)
	if err != nil {
		return 0, 0, err
	}
	texts, names, err := s.taken()
	if err != nil {
		return 0, 0, err
	}
	var made []ID
	for _, d := range list {
		text, err := study.Encode(d)
		if err == nil && texts[string(text)] {
			there++
			continue
		}
		copied := *d
		for n := 2; names[copied.Name]; n++ {
			copied.Name = fmt.Sprintf("%s %d", d.Name, n)
		}
		names[copied.Name] = true
		id, _, err := s.Create(&copied, "from a file of all studies")
		if err != nil {
			for _, id := range append(made, id) {
				err = errors.Join(err, s.erase(id))
			}
			return 0, 0, err
		}
		made = append(made, id)
	}
	return len(made), there, nil
}

// taken returns the studies that are kept outside of the bin, as files, and all names.
func (s *Store) taken() (texts, names map[string]bool, err error) {
	texts, names = map[string]bool{}, map[string]bool{}
	list, err := s.List()
	for _, e := range list {
		names[e.Name] = true
		if text, err := s.current(e.ID); err == nil && !e.Deleted {
			texts[string(text)] = true
		}
	}
	return texts, names, err
}

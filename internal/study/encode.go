package study

import "toewright/internal/strictjson"

// Encode writes a study file: readable, with each point on one line, and always
// the same bytes for the same document. Of the sources it leaves out those of
// numbers that are gone. It returns an error that names the key
// for a number that JSON cannot hold, a suspension type that does not exist or a
// point that is missing, which no decoded document has.
func Encode(d *Document) ([]byte, error) {
	n, err := strictjson.Unbind(*d, "")
	if err != nil {
		return nil, err
	}
	withoutDangling(n)
	return strictjson.Format(n), nil
}

// MarshalJSON writes a study as [Encode] does, for messages that carry one.
func (d Document) MarshalJSON() ([]byte, error) { return Encode(&d) }

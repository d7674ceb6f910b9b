package store

import (
	"errors"
	"fmt"
	"strings"

	"toewright/internal/study"
)

// linkStart is what the fragment of a link with a study begins with.
const linkStart = "study=1."

// maxLink is the longest link that is made: messengers and servers cut longer ones off,
// though browsers take more.
const maxLink = 30_000

// Link returns the fragment of a link, without #, that carries a whole study. Nothing
// of it is sent to a server.
func Link(d *study.Document) (string, error) {
	text, err := study.Encode(d)
	if err != nil {
		return "", err
	}
	link := linkStart + pack(text)
	if len(link) > maxLink {
		return "", fmt.Errorf("the study makes a link of %d letters, more than the %d that get through everywhere: send the file instead", len(link), maxLink)
	}
	return link, nil
}

// IsLink reports whether a fragment, with or without #, means to carry a study.
func IsLink(fragment string) bool {
	return strings.HasPrefix(strings.TrimPrefix(fragment, "#"), "study=")
}

// What links that cannot be read are refused with.
var (
	errLink      = errors.New("the link does not carry a whole study: it was cut off or altered on its way; ask for the file")
	errNewerLink = errors.New("the link was made by a newer version of this program: reload the page to update it")
)

// ParseLink reads the study from the fragment of a link, which may come from anyone.
func ParseLink(fragment string) (*study.Document, error) {
	fragment = strings.TrimPrefix(fragment, "#")
	packed, ok := strings.CutPrefix(fragment, linkStart)
	if !ok {
		return nil, errNewerLink
	}
	text, err := unpack(packed)
	if err != nil {
		return nil, errLink
	}
	return study.Decode(text)
}

package store

import "strings"

// ID names a study among those that are kept. It stays with the study whatever its
// name.
type ID string

// prefix keeps our keys apart from what else a site may keep.
const prefix = "toewright/"

// The keys of what is kept; see the package comment.
const (
	currentKey    = prefix + "current"
	placeKey      = prefix + "place"
	habitsKey     = prefix + "habits"
	headPrefix    = prefix + "head/"
	draftPrefix   = prefix + "draft/"
	asidePrefix   = prefix + "aside/"
	studiesPrefix = prefix + "study/"
)

func headKey(id ID) string                { return headPrefix + string(id) }
func draftKey(id ID) string               { return draftPrefix + string(id) }
func studyPrefix(id ID) string            { return studiesPrefix + string(id) + "/" }
func revisionKey(id ID, v Version) string { return studyPrefix(id) + v.String() }

// splitRevisionKey returns the study and the version that a key is of.
func splitRevisionKey(key string) (ID, Version, bool) {
	rest, ok := strings.CutPrefix(key, studiesPrefix)
	if !ok {
		return "", Version{}, false
	}
	id, version, ok := strings.Cut(rest, "/")
	v, valid := parseVersion(version)
	return ID(id), v, ok && valid && id != ""
}

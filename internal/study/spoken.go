package study

import (
	"slices"
	"strconv"
	"strings"
	"sync"
	"unicode"

	"toewright/internal/spelling"
	"toewright/solver"
)

// Spoken returns a sentence with what people call a point, a parameter or a value in the
// place of the key or path that files know it by: for "left.lowerBallJoint.z", "left lower
// ball joint, z". What stands between double quotes is somebody's own text and stays, and
// so does every word that is not a key.
func Spoken(sentence string) string {
	return spelling.OutsideQuotes(sentence, spokenText)
}

// spokenText is Spoken of a text without quotes.
func spokenText(text string) string {
	var b strings.Builder
	for text != "" {
		n := strings.IndexFunc(text, inKey)
		if n < 0 {
			n = len(text)
		}
		b.WriteString(text[:n])
		text = text[n:]
		end := strings.IndexFunc(text, func(r rune) bool { return !inKey(r) })
		if end < 0 {
			end = len(text)
		}
		word := strings.TrimRight(text[:end], ".@")
		if isKey(word) {
			b.WriteString(SpokenPath(word))
		} else {
			b.WriteString(word)
		}
		b.WriteString(text[len(word):end])
		text = text[end:]
	}
	return b.String()
}

// inKey reports whether a letter may stand in a key.
func inKey(r rune) bool { return unicode.IsLetter(r) || unicode.IsDigit(r) || r == '.' || r == '@' }

// isKey reports whether a word looks like a key or a path and not like a word of English.
func isKey(word string) bool {
	if word == "" || !unicode.IsLower(rune(word[0])) {
		return false
	}
	return strings.ContainsAny(word, ".@") || strings.ContainsFunc(word, unicode.IsUpper)
}

// SpokenPath returns what people call the value at a path: "candidate 2, name". A path of
// nothing that a study has is returned as it is.
func SpokenPath(path string) string {
	name, side, sided := strings.Cut(path, "@")
	keys := strings.Split(name, ".")
	for _, s := range sides {
		if i := slices.Index(keys, string(s)); i >= 0 && !sided && len(keys) > 1 {
			side, keys = string(s), slices.Delete(keys, i, i+1)
		}
	}
	words, known := spokenKeys(keys)
	if !known {
		return path
	}
	if side != "" {
		words[0] = side + " " + words[0]
	}
	return strings.Join(words, ", ")
}

// spokenKeys returns the words of the keys of a path, and whether any of them is known.
func spokenKeys(keys []string) (words []string, known bool) {
	names := spokenNames()
	for len(keys) > 0 {
		n, word := longestName(names, keys)
		i, err := strconv.Atoi(keys[0])
		switch {
		case n > 0:
			known = true
			if word != "" {
				words = append(words, word)
			}
		case err == nil && len(words) > 0:
			words[len(words)-1] += " " + strconv.Itoa(i+1)
		default:
			words = append(words, Words(keys[0]))
		}
		keys = keys[max(n, 1):]
	}
	if len(words) == 0 {
		words = []string{"car"}
	}
	return words, known
}

// longestName returns how many of the first keys make a known name, and the name.
func longestName(names map[string]string, keys []string) (int, string) {
	for n := len(keys); n > 0; n-- {
		if word, ok := names[strings.Join(keys[:n], ".")]; ok {
			return n, word
		}
	}
	return 0, ""
}

// Words returns a key's own words: "thread pitch" for "threadPitch", "outer ball" for
// "outer-ball".
func Words(key string) string {
	var b strings.Builder
	for i, r := range key {
		switch {
		case r == '-':
			r = ' '
		case unicode.IsUpper(r) && i > 0:
			b.WriteByte(' ')
		}
		b.WriteRune(unicode.ToLower(r))
	}
	return b.String()
}

// spokenNames are what is known of a study by its keys: hardpoints of every kind of car,
// parameters, values and lists.
var spokenNames = sync.OnceValue(func() map[string]string {
	names := solver.PartLabels()
	for _, key := range []string{"toe", "camber", "caster"} {
		names[key] = "static " + key
	}
	for key, name := range numberNames {
		names[key] = name
	}
	for key, name := range listWords {
		names[key] = name
	}
	for _, kind := range solver.Kinds() {
		for _, h := range slices.Concat(kind.SidePoints, kind.CommonPoints, solver.GearPoints) {
			names[h.Name] = h.Label
		}
	}
	return names
})

// listWords are what entries of lists are called, and keys in the words of the page. A key
// without a word only says where others stand.
var listWords = map[string]string{
	"suspension": "", "steering": "", "vehicle": "", "search": "", "changes": "", "bounds": "",
	"candidates": "candidate", "variables": "parameter", "limits": "limit", "scenarios": "set-up",
	"target": "target, point", "targetRight": "target of the right wheel, point", "targetSlope": "target's slope", "targetOf": "car of the target",
	"tolerances": "tolerance", "readings": "run", "series": "car of the series", "values": "row", "catalogue": "part", "loads": "load case",
	"priors": "prior", "excludes": "excluded part", "measured": "taped", "lengths": "length", "heights": "height", "stations": "station",
	"tieRod": "tie rod", "innerBall": "inner ball", "outerBall": "outer ball", "cone": "half angle", "stud": "stud",
	"threadPitch": "lengthening by one turn", "minEngagement": "least engagement", "maxEngagement": "most engagement",
	"plusMinus": "plus or minus", "sd": "standard deviation", "slopeSd": "gauge's slope, standard deviation", "markSd": "marks' standard deviation",
	"keepToe": "keep toe as built", "rods": "rod", "links": "link", "kingpins": "kingpin", "arm": "arm",
	"search.window": "window", "travel": "travel", "bump": "bump", "droop": "droop", "step": "step", "min": "least", "max": "most",
	"yield": "limit of the series", "advise": "advice", "display": "display", "yardstick": "reference", "sources": "source",
	"boltDiameter": "bolt diameter", "largeDiameter": "large diameter", "numberLeft": "part number, left", "numberRight": "part number, right", "drawnBy": "drawn by",
	"attitude": "attitude", "adjuster": "what takes up camber and caster", "dragLink": "drag link", "dragSide": "side of the drag link",
	"innerBallAngle": "inner ball angle", "outerBallAngle": "outer ball angle", "threadEngagement": "thread engagement", "adjusterRange": "adjuster's range",
	"steeringRatio": "steering ratio", "turningCircle": "turning circle", "toeOutOnTurns": "toe-out on turns", "engagement": "thread engagement",
	"contactLateral": "contact, outboard", "gaugeSlope": "gauge's slope", "travelZero": "zero of travel", "steerZero": "steering's centre",
}

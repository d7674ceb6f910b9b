package study

import (
	"encoding/json"
	"maps"
)

// What a key needs or excludes by what stands at another, which no type says.
const (
	// idlerOnCorners: a centre link needs its idler, unless an axle's drag link is pulled.
	idlerOnCorners = `{
		"if": {
			"properties": {
				"suspension": {"not": {"properties": {"type": {"const": "solid-axle"}}}},
				"steering": {"required": ["type"], "properties": {"type": {"const": "centre-link"}}}
			},
			"required": ["steering"]
		},
		"then": {"properties": {"steering": {"required": ["idlerPivot", "idlerAxis", "idlerBall"]}}}
	}`
	// gearParts: each gear has its own parts.
	gearParts = `{
		"if": {"properties": {"type": {"const": "centre-link"}}},
		"then": {
			"required": ["pitmanPivot", "pitmanAxis", "pitmanBall"],
			"properties": {"axis": false},
			"dependentRequired": {
				"idlerPivot": ["idlerAxis", "idlerBall"],
				"idlerAxis": ["idlerPivot", "idlerBall"],
				"idlerBall": ["idlerPivot", "idlerAxis"]
			}
		},
		"else": {
			"properties": {"pitmanPivot": false, "pitmanAxis": false, "pitmanBall": false, "idlerPivot": false, "idlerAxis": false, "idlerBall": false},
			"if": {"properties": {"type": {"const": "none"}}},
			"then": {"properties": {"axis": false}}
		}
	}`
	// studless: an inner ball states no stud.
	studless = `{"not": {"required": ["stud"]}}`
)

// schemaRules are these rules by the places they hold at.
var schemaRules = map[string]string{"study": idlerOnCorners, "steering": gearParts, "tieRod.innerBall": studless}

// ruled adds the rules of a place to its schema.
func ruled(s object, place string) object {
	if text := schemaRules[place]; text != "" {
		var rules object
		if err := json.Unmarshal([]byte(text), &rules); err != nil {
			panic(err) // Nothing here comes from a caller.
		}
		maps.Copy(s, rules)
	}
	return s
}

package api

import (
	"encoding/json"
	"fmt"
	"net/http"
	"strconv"

	"toewright/internal/calls"
	"toewright/internal/study"
)

// object is a JSON object.
type object = map[string]any

// openAPI returns the OpenAPI 3.1 document of all calls. Parameters come from the
// options and schemas from the types of the answers, so that they cannot differ
// from what is served.
func openAPI(version string) []byte {
	s := &schemas{defined: object{}}
	paths := object{}
	for _, c := range calls.Public() {
		paths[base+c.Name] = object{"post": s.operation(c)}
	}
	paths[base+"schema"] = object{"get": object{
		"operationId": "schema", "summary": "The JSON Schema of a study",
		"responses": object{"200": content("application/schema+json", "the schema", object{"type": "object"})},
	}}
	s.defined["Study"] = json.RawMessage(study.Schema())
	s.defined["Error"] = errorSchema
	s.defined["ChangeSet"] = changeSetSchema
	s.defined["Envelope"] = envelopeSchema
	document, err := json.MarshalIndent(object{
		"openapi": "3.1.0",
		"info": object{
			"title": "Toewright", "version": version,
			"description": "Toe through wheel travel, and the steering arm that holds it. Lengths are in the study's units, angles in degrees; axes and signs as ISO 8855, toe-in and bump positive. Geometry, not strength.",
		},
		"paths":      paths,
		"components": object{"schemas": s.defined},
	}, "", "  ")
	if err != nil {
		panic(err) // Nothing here comes from a caller.
	}
	return document
}

// operation describes a call.
func (s *schemas) operation(c calls.Call) object {
	var parameters []object
	for _, o := range c.New().Options {
		parameters = append(parameters, parameter(o))
	}
	responses := object{"200": s.answer(c)}
	for status, description := range refusals {
		responses[strconv.Itoa(status)] = content("application/json", description, reference("Error"))
	}
	body := object{"application/json": object{"schema": object{"oneOf": []object{reference("Study"), reference("Envelope")}}}}
	if takesLines(c) {
		body[linesType] = object{"schema": linesIn}
		responses["200"].(object)["content"].(object)[linesType] = object{"schema": linesOut}
	}
	return object{
		"operationId": c.Name, "summary": c.Summary, "parameters": parameters,
		"requestBody": object{"required": true, "content": body},
		"responses":   responses,
	}
}

// answer describes what a call returns.
func (s *schemas) answer(c calls.Call) object {
	if c.Types != nil {
		types := object{}
		for _, t := range c.Types {
			types[t] = object{"schema": object{"type": "string"}}
		}
		return object{"description": "the file", "content": types}
	}
	return content("application/json", "the answer", s.of(c.Result))
}

// The lines of a call for many change sets.
var (
	linesIn  = object{"type": "string", "description": fmt.Sprintf("JSON on lines: a Study, or an Envelope without changes, and after it up to %d ChangeSets", mostSets)}
	linesOut = object{"type": "string", "description": "JSON on lines, one for each ChangeSet in their order, sent when it is found: the answer for that car, or an Error whose line is that of the ChangeSet"}
)

// changeSetSchema describes a [study.ChangeSet].
var changeSetSchema = object{
	"type": "object", "additionalProperties": false, "description": "One car that is asked for, as a candidate of the study.",
	"properties": changeSetKeys(),
}

func changeSetKeys() object {
	return object{
		"name":    object{"type": "string", "description": "as the answer names it; " + study.ChangedName + " where not given"},
		"changes": object{"type": "object", "additionalProperties": object{"type": "number"}, "description": "parameters and their values, against the base car"},
		"hold":    object{"type": "array", "items": object{"type": "string"}, "description": "setpoints that are re-solved; all where not given"},
	}
}

// envelopeSchema describes what carries a study, as [study.Asked] does.
var envelopeSchema = func() object {
	keys := changeSetKeys()
	keys["study"] = object{"oneOf": []object{reference("Study"), {
		"type": "object", "required": []string{"digest"}, "additionalProperties": false,
		"properties": object{"digest": object{"type": "string", "description": "that of a study which came before: sha256- and the SHA-256 of its text in hexadecimal digits, as the header " + digestHeader + " of that answer told"}},
	}}}
	return object{
		"type": "object", "required": []string{"study"}, "additionalProperties": false, "properties": keys,
		"description": "A study, which is then kept a while, or the digest of one that is kept; and one car that the call is for.",
	}
}()

// refusals are the ways in which a call gets no answer.
var refusals = map[int]string{
	http.StatusBadRequest:            "the study or an option is wrong",
	http.StatusNotFound:              "no study of the digest is kept; send the study itself",
	http.StatusForbidden:             "a page of another site asks",
	http.StatusRequestEntityTooLarge: "the study is too large",
	http.StatusUnsupportedMediaType:  "the study is not said to be JSON",
	http.StatusMisdirectedRequest:    "the server does not answer to that name",
	http.StatusUnprocessableEntity:   "the linkage cannot be solved as it is asked",
	http.StatusTooManyRequests:       "too many calls wait; come again after Retry-After seconds",
	http.StatusServiceUnavailable:    "the server is stopping",
	http.StatusGatewayTimeout:        "the answer took too long",
}

var errorSchema = object{
	"type": "object", "required": []string{"error"},
	"properties": object{"error": object{
		"type": "object", "required": []string{"key", "message"},
		"properties": object{
			"key":     object{"type": "string", "description": "what is at fault in the study or among the options; may be empty"},
			"message": object{"type": "string"},
			"line":    object{"type": "integer", "description": "in the study as it was sent, from 1"},
			"column":  object{"type": "integer"},
		},
	}},
}

// types are the kinds of options in the words of JSON Schema.
var types = map[calls.Kind]string{calls.Text: "string", calls.Word: "string", calls.Whole: "integer", calls.Number: "number"}

// parameter describes an option.
func parameter(o calls.Option) object {
	schema := object{"type": types[o.Kind]}
	if o.Words != nil {
		schema["enum"] = o.Words
	}
	return object{"name": o.Name, "in": "query", "description": o.Description(), "schema": schema}
}

func content(mediaType, description string, schema object) object {
	return object{"description": description, "content": object{mediaType: object{"schema": schema}}}
}

func reference(name string) object { return object{"$ref": "#/components/schemas/" + name} }

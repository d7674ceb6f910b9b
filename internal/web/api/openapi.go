package api

import (
	"encoding/json"
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
	return object{
		"operationId": c.Name, "summary": c.Summary, "parameters": parameters,
		"requestBody": object{
			"required": true,
			"content":  object{"application/json": object{"schema": reference("Study")}},
		},
		"responses": responses,
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

// refusals are the ways in which a call gets no answer.
var refusals = map[int]string{
	http.StatusBadRequest:            "the study or an option is wrong",
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

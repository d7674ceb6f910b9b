package api

import (
	"encoding/json"
	"net/http"
	"strconv"

	"github.com/spf13/pflag"

	"toewright/internal/options"
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
	for i := range calls {
		paths[base+calls[i].name] = object{"post": calls[i].operation(s)}
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
func (c *call) operation(s *schemas) object {
	flags, _ := c.flags()
	var parameters []object
	flags.VisitAll(func(f *pflag.Flag) { parameters = append(parameters, parameter(f)) })
	responses := object{"200": c.answer(s)}
	for status, description := range refusals {
		responses[strconv.Itoa(status)] = content("application/json", description, reference("Error"))
	}
	return object{
		"operationId": c.name, "summary": c.summary, "parameters": parameters,
		"requestBody": object{
			"required": true,
			"content":  object{"application/json": object{"schema": reference("Study")}},
		},
		"responses": responses,
	}
}

// answer describes what a call returns.
func (c *call) answer(s *schemas) object {
	if _, ok := c.result.(page); ok {
		return content("text/html", "the page", object{"type": "string"})
	}
	return content("application/json", "the answer", s.of(c.result))
}

// refusals are the ways in which a call gets no answer.
var refusals = map[int]string{
	http.StatusBadRequest:            "the study or an option is wrong",
	http.StatusRequestEntityTooLarge: "the study is too large",
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

// parameter describes an option.
func parameter(f *pflag.Flag) object {
	_, usage := pflag.UnquoteUsage(f)
	schema := object{"type": "string"}
	switch words := options.Words(f); {
	case words != nil:
		schema["enum"] = words
	case f.Value.Type() == "float64":
		schema["type"] = "number"
	case f.Value.Type() == "int":
		schema["type"] = "integer"
	}
	return object{"name": f.Name, "in": "query", "description": usage, "schema": schema}
}

func content(mediaType, description string, schema object) object {
	return object{"description": description, "content": object{mediaType: object{"schema": schema}}}
}

func reference(name string) object { return object{"$ref": "#/components/schemas/" + name} }

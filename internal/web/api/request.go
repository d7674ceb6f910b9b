package api

import (
	"errors"
	"io"
	"maps"
	"mime"
	"net/http"
	"net/url"
	"slices"
	"time"

	"toewright/internal/calls"
	"toewright/internal/strictjson"
)

// checkType refuses a body that is not said to be JSON. A page of another site can send
// any other type without asking first whether it may (the Fetch standard, CORS-safelisted
// request headers).
func checkType(contentType string) *fault {
	if isType(contentType, "application/json") {
		return nil
	}
	return faultf(http.StatusUnsupportedMediaType, "Content-Type", "want application/json, got %.40q", contentType)
}

// isType reports whether a header names a media type.
func isType(contentType, want string) bool {
	kind, _, err := mime.ParseMediaType(contentType)
	return err == nil && kind == want
}

// readOptions sets the options that a query names. The fault names one that there
// is not, that stands twice or whose value it cannot take.
func readOptions(options []calls.Option, rawQuery string) *fault {
	// The query of a request leaves out what it cannot read, and says nothing of it.
	query, err := url.ParseQuery(rawQuery)
	if err != nil {
		return faultf(http.StatusBadRequest, "", "the options cannot be read: %s", shorten(err.Error()))
	}
	for _, name := range slices.Sorted(maps.Keys(query)) {
		values := query[name]
		i := slices.IndexFunc(options, func(o calls.Option) bool { return o.Name == name })
		switch {
		case i < 0:
			return faultf(http.StatusBadRequest, shorten(name), "is not an option of this call")
		case len(values) > 1:
			return faultf(http.StatusBadRequest, name, "stands %d times; give it once", len(values))
		}
		if err := options[i].Set(values[0]); err != nil {
			return faultf(http.StatusBadRequest, name, "%s", err)
		}
	}
	return nil
}

// longestEcho is the most of a caller's text that an answer repeats.
const longestEcho = 40

func shorten(text string) string {
	if r := []rune(text); len(r) > longestEcho {
		return string(r[:longestEcho]) + "..."
	}
	return text
}

// readBody reads a request's body.
func (h *handler) readBody(w http.ResponseWriter, r *http.Request) ([]byte, *fault) {
	// Not every writer has deadlines; the server's own then holds.
	_ = http.NewResponseController(w).SetReadDeadline(time.Now().Add(h.cfg.BodyTimeout))
	data, err := io.ReadAll(http.MaxBytesReader(w, r.Body, h.cfg.MaxBody))
	if err != nil {
		return nil, h.bodyFault(err)
	}
	return data, nil
}

func (h *handler) bodyFault(err error) *fault {
	var tooLarge *http.MaxBytesError
	if errors.As(err, &tooLarge) {
		return faultf(http.StatusRequestEntityTooLarge, "", "the study is larger than %d bytes", h.cfg.MaxBody)
	}
	return faultf(http.StatusBadRequest, "", "the study did not arrive whole within %s", h.cfg.BodyTimeout)
}

// studyFault returns what is wrong with a study.
func studyFault(err error) *fault {
	var file *strictjson.Error
	if !errors.As(err, &file) {
		return faultf(http.StatusBadRequest, "", "%s", err)
	}
	f := faultf(http.StatusBadRequest, file.Path, "%s", file.Message)
	f.Line, f.Column = file.Line, file.Column
	return f
}

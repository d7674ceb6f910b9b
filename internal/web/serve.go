package web

import (
	"net/http"
	"strconv"
	"strings"

	"toewright/internal/web/coding"
)

// ServeHTTP serves the file that the path value "name" names.
func (a assets) ServeHTTP(w http.ResponseWriter, r *http.Request) {
	file, ok := a[r.PathValue("name")]
	if !ok {
		http.NotFound(w, r)
		return
	}
	file.ServeHTTP(w, r)
}

// ServeHTTP serves the file in the best encoding that the client accepts. The
// client may keep it but has to ask each time whether it is still the same.
func (a *asset) ServeHTTP(w http.ResponseWriter, r *http.Request) {
	enc := coding.Choose(r.Header.Get("Accept-Encoding"), a.has)
	body := a.forms[enc]
	h := w.Header()
	h.Set("Cache-Control", "no-cache")
	h.Set("Vary", "Accept-Encoding")
	h.Set("ETag", body.etag)
	if matches(r.Header.Get("If-None-Match"), body.etag) {
		w.WriteHeader(http.StatusNotModified)
		return
	}
	h.Set("Content-Type", a.contentType)
	h.Set("Content-Length", strconv.Itoa(len(body.data)))
	if enc != coding.Identity {
		h.Set("Content-Encoding", string(enc))
	}
	w.Write(body.data) // On a HEAD request net/http leaves the body out.
}

func (a *asset) has(enc coding.Encoding) bool {
	_, ok := a.forms[enc]
	return ok
}

// matches reports whether an If-None-Match header names the tag, compared weakly
// as RFC 9110, section 13.1.2 has it.
func matches(header, etag string) bool {
	for item := range strings.SplitSeq(header, ",") {
		item = strings.TrimSpace(item)
		if item == "*" || strings.TrimPrefix(item, "W/") == etag {
			return true
		}
	}
	return false
}

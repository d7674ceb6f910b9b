package web

import (
	"net/http"
	"strings"

	"toewright/internal/version"
)

// contentPolicy lets the page load nothing from elsewhere and run no script or
// style that stands in the document itself.
var contentPolicy = documentPolicy + "; frame-ancestors 'none'"

// documentPolicy is the part of it that a document can state of itself.
var documentPolicy = strings.Join([]string{
	"default-src 'none'",
	"script-src 'self' 'wasm-unsafe-eval'",
	"style-src 'self'",
	"connect-src 'self'",
	// A picture that is saved as an image is first shown to the program as a file of
	// its own making; no such address can name anything of the network.
	"img-src 'self' blob:",
	"manifest-src 'self'",
	"worker-src 'self'",
	"base-uri 'none'",
	"form-action 'none'",
}, "; ")

// securityHeaders are on every answer, and with them the version.
var securityHeaders = map[string]string{
	"Content-Security-Policy":      contentPolicy,
	"Cross-Origin-Embedder-Policy": "require-corp",
	"Cross-Origin-Opener-Policy":   "same-origin",
	"Cross-Origin-Resource-Policy": "same-origin",
	"Permissions-Policy":           "camera=(), geolocation=(), microphone=()",
	"Referrer-Policy":              "no-referrer",
	"Server":                       "Toewright/" + version.Name(),
	"X-Content-Type-Options":       "nosniff",
}

// secured adds the security headers to every answer. Workers obey the policy of
// their own script, so the files need them as much as the page.
func secured(next http.Handler) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		for key, value := range securityHeaders {
			w.Header().Set(key, value)
		}
		next.ServeHTTP(w, r)
	})
}
